"""A table as JSON: a list of rows, each an object with a value for every column, null where there is none."""

import json

from notesmith.publishing.tables.model import Table


def render(table: Table) -> str:
    """Write the table, a row on a line."""
    rows = (json.dumps(dict(zip(table.names, row, strict=True)), ensure_ascii=False) for row in table.rows)
    return "[\n" + ",\n".join(rows) + "\n]\n"
