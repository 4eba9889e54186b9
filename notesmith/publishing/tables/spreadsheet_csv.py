"""Comma-separated values that a spreadsheet may open: no text in them is taken for a formula."""

import csv
import io
import re
from collections.abc import Iterable, Sequence

from notesmith.publishing.plain import one_line
from notesmith.publishing.tables.model import Table, Value, single

# At the start of a cell, or after a semicolon, which is where some spreadsheets part cells; wide forms count, too.
_FORMULA = re.compile(r"(?:^|(?<=;)|(?<=; ))(?=[=+\-@＝＋－＠])")
MARK = "\ufeff"
"""Tells a spreadsheet that the letters are UTF-8."""


def render(table: Table) -> str:
    """Write the table, a list as one text, for a spreadsheet."""
    return MARK + write(table.names, table.rows)


def write(names: Sequence[str], rows: Iterable[Iterable[Value]]) -> str:
    """Write names and rows; a text that would be taken for a formula gets an apostrophe before it.

    Numbers stay numbers, also those below zero.
    """
    lines = io.StringIO()
    writer = csv.writer(lines, lineterminator="\n")
    writer.writerow(map(cell, names))
    writer.writerows([cell(value) for value in row] for row in rows)
    return lines.getvalue()


def cell(value: Value) -> str | float | None:
    """The value as a cell that is no formula.

    >>> cell("=1+1"), cell(-2.5), cell(("low", None)), cell("a;@b")
    ("'=1+1", -2.5, 'low;', "a;'@b")
    """
    if isinstance(value, bool):
        return "true" if value else "false"
    value = single(value)
    return _FORMULA.sub("'", one_line(value)) if isinstance(value, str) else value
