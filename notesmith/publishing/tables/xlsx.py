"""Tables as a workbook (Office Open XML): every text a text, whatever it looks like."""

import io
import re
import zipfile
from collections.abc import Mapping
from typing import TYPE_CHECKING

from notesmith.publishing.plain import one_line
from notesmith.publishing.tables.model import Table, Value, single

if TYPE_CHECKING:
    from openpyxl.cell import Cell
    from openpyxl.worksheet.worksheet import Worksheet

MOST_LETTERS, MOST_COLUMNS = 32_767, 16_384
"""What a cell and a sheet hold at most."""
FORMULA = ("=", "+", "-", "@")
"""What a text begins with that becomes a formula when somebody edits its cell; an apostrophe unseen hinders that."""
WIDEST = 48
"""Letters that a column shows at most."""

_NO_XML = re.compile("[\ufffe\uffff]")
_MODIFIED = re.compile(rb"(<dcterms:(created|modified)[^>]*>)[^<]*")
_NEVER = (1980, 1, 1, 0, 0, 0)


def render(tables: Mapping[str, Table]) -> bytes:
    """Write a workbook with a sheet for each table, the same bytes for the same tables.

    A text longer than a cell may be is cut, with an ellipsis to show it; the other forms have all of it.
    """
    from openpyxl import Workbook

    book = Workbook(write_only=True)
    for name, table in tables.items():
        _fill(book.create_sheet(name), table)
    written = io.BytesIO()
    book.save(written)
    return _timeless(written.getvalue())


def _fill(sheet: "Worksheet", table: Table) -> None:
    from openpyxl.styles import Font
    from openpyxl.utils import get_column_letter

    rows = [tuple(map(_shown, row[:MOST_COLUMNS])) for row in (table.names, *table.rows)]
    for place, column in enumerate(zip(*rows, strict=True), start=1):
        letters = max(len(str(value or "")) for value in column)
        sheet.column_dimensions[get_column_letter(place)].width = min(WIDEST, letters + 2)
    sheet.freeze_panes = "A2"
    for line, row in enumerate(rows):
        cells = [None if value is None else _cell(sheet, value) for value in row]
        for head in filter(None, cells if line == 0 else ()):
            head.font = Font(bold=True)
        sheet.append(cells)


def _cell(sheet: "Worksheet", value: str | float | None) -> "Cell":
    """A text is told to be one, for by itself `=` would begin a formula and `#N/A` be an error."""
    from openpyxl.cell import WriteOnlyCell

    cell = WriteOnlyCell(sheet, value)
    if isinstance(value, str):
        cell.data_type, cell.quotePrefix = "s", value.startswith(FORMULA)
    return cell


def _shown(value: Value) -> str | float | None:
    value = single(value)
    return _cut(one_line(value)) if isinstance(value, str) else value


def _cut(text: str) -> str:
    text = _NO_XML.sub("\ufffd", text)
    return text if len(text) <= MOST_LETTERS else text[: MOST_LETTERS - 1] + "…"


def _timeless(book: bytes) -> bytes:
    """The workbook with one fixed date in all places where the time of writing would stand."""
    written = io.BytesIO()
    with zipfile.ZipFile(io.BytesIO(book)) as old, zipfile.ZipFile(written, "w", zipfile.ZIP_DEFLATED) as new:
        for name in old.namelist():
            content = old.read(name)
            if name == "docProps/core.xml":
                content = _MODIFIED.sub(rb"\g<1>1980-01-01T00:00:00Z", content)
            new.writestr(zipfile.ZipInfo(name, _NEVER), content, zipfile.ZIP_DEFLATED)
    return written.getvalue()
