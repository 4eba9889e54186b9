"""What the list of published things needs of a table: a function of the episode that writes it."""

from collections.abc import Callable
from typing import TypeVar

from notesmith.publishing.episode import Episode
from notesmith.publishing.tables import xlsx
from notesmith.publishing.tables.model import Table
from notesmith.publishing.tables.records import records
from notesmith.publishing.tables.samples import samples
from notesmith.publishing.tables.terms import terms

Written = TypeVar("Written", str, bytes)


def of(table_of: Callable[[Episode], Table], render: Callable[[Table], Written]) -> Callable[[Episode], Written | None]:
    """What writes that table in that form; None where the table has no row."""

    def write(episode: Episode) -> Written | None:
        table = table_of(episode)
        return render(table) if table.rows else None

    return write


def workbook(episode: Episode) -> bytes | None:
    """Both tables in one workbook, and one to read: terms by samples; None where none has a row."""
    tables = {"Terms": terms(episode), "Samples": samples(episode), "Records": records(episode)}
    return xlsx.render(tables) if any(table.rows for table in tables.values()) else None
