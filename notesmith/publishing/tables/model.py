"""What a table is before any form is chosen: named columns that say what they hold, and rows of values."""

from collections.abc import Iterable
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


def joined(values: Iterable[str | float | None]) -> str:
    """The values of a list as one text on one line.

    >>> joined(("low", None, "high"))
    'low; ; high'
    """
    return JOINT.join("" if value is None else one_line(str(value)) for value in values)
