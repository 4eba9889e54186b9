"""Comma-separated values that change nothing: every text as it is, a list as JSON, nothing where there is no value.

Do not open it in a spreadsheet: a text that looks like a formula would be run. `spreadsheet_csv.py` is for that.
"""

import csv
import io
import json

from notesmith.publishing.tables.model import Table, Value


def render(table: Table) -> str:
    """Write the table; a text that holds a comma, a quotation mark or a line end is quoted (RFC 4180)."""
    lines = io.StringIO()
    # Python quotes a line end inside a text only if it is part of its own line ends.
    writer = csv.writer(lines, lineterminator="\r\n")
    writer.writerow(table.names)
    writer.writerows([_cell(value) for value in row] for row in table.rows)
    return lines.getvalue()


def _cell(value: Value) -> str | float | None:
    if isinstance(value, bool):
        return "true" if value else "false"
    return json.dumps(value, ensure_ascii=False) if isinstance(value, tuple) else value
