"""Observations as comma-separated values, one row each, for a spreadsheet or a statistics program."""

from notesmith.publishing.tables.model import Value
from notesmith.publishing.tables.records import row_of
from notesmith.publishing.tables.spreadsheet_csv import write
from notesmith.records import Notes, Observation

COLUMNS = (
    "transcript", "id", "start", "end", "sample", "preparation", "taster", "facet", "term", "concept", "presence",
    "intensity", "voice", "after_reveal", "confidence", "quote", "span_start", "span_end", "term_start", "term_end",
    "why",
)  # fmt: skip


def render(notes: Notes) -> str:
    """Write all observations; times are seconds, spans are characters, what is null is empty.

    A text that a spreadsheet would take for a formula gets an apostrophe before it.
    """
    return write(COLUMNS, (_row(notes, seen) for seen in notes.observations))


def _row(notes: Notes, seen: Observation) -> list[Value]:
    row = row_of(notes, "observation", seen)
    return [row[name] for name in COLUMNS]
