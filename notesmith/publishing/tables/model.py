"""What a table is before any form is chosen: named columns that say what they hold, and rows of values."""

from dataclasses import dataclass
from typing import Literal

from notesmith.publishing.plain import one_line

Sort = Literal["text", "number", "whole", "truth", "texts", "numbers"]
Value = str | float | int | bool | tuple[str | None, ...] | tuple[float | None, ...] | None
JOINT = "; "
"""Stands between the values of a list where a form has room for one text only."""


@dataclass(frozen=True)
class Column:
    """One column: its name, what sort of values it holds, and what they mean."""

    name: str
    sort: Sort
    says: str


@dataclass(frozen=True)
class Table:
    """Columns and rows; a row has a value for each column, None where there is none."""

    columns: tuple[Column, ...]
    rows: tuple[tuple[Value, ...], ...]

    @property
    def names(self) -> tuple[str, ...]:
        """The names of the columns."""
        return tuple(column.name for column in self.columns)


def single(value: Value) -> str | float | None:
    """The value for a form that has no lists: several values as one text on one line, one alone as itself.

    >>> single(("low", None, "high")), single((2.5,)), single((None,))
    ('low; ; high', 2.5, None)
    """
    if not isinstance(value, tuple):
        return value
    if len(value) == 1:
        return value[0]
    return JOINT.join("" if one is None else one_line(str(one)) for one in value) or None
