"""A table as Parquet, for statistics programs: typed columns, lists as lists; needs the package pyarrow."""

import io

from notesmith.publishing.tables.model import Table


def render(table: Table) -> bytes:
    """Write the table; what a column holds is told in the field's metadata, under `says`."""
    import pyarrow as pa
    from pyarrow import parquet

    sorts = {
        "text": pa.string(), "number": pa.float64(), "whole": pa.int64(), "truth": pa.bool_(),
        "texts": pa.list_(pa.string()), "numbers": pa.list_(pa.float64()),
    }  # fmt: skip
    fields = [pa.field(at.name, sorts[at.sort], metadata={"says": at.says}) for at in table.columns]
    columns = [pa.array([row[place] for row in table.rows], type=field.type) for place, field in enumerate(fields)]
    written = io.BytesIO()
    parquet.write_table(pa.Table.from_arrays(columns, schema=pa.schema(fields)), written)
    return written.getvalue()
