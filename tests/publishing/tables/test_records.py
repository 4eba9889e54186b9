"""The long table: one row a record."""

import pytest

from notesmith.publishing.episode import Episode
from notesmith.publishing.tables.model import Value
from notesmith.publishing.tables.records import COLUMNS, records
from notesmith.records import (
    Comparison,
    Evidenced,
    Fact,
    Ignored,
    Notes,
    Observation,
    Preference,
    Repair,
    Reveal,
    Section,
)

KINDS = (Observation, Comparison, Preference, Fact, Reveal, Section, Repair, Ignored)
TAKEN_APART = {"span": {"span_start", "span_end"}, "term_span": {"term_start", "term_end"}}


def rows(episode: Episode) -> list[dict[str, Value]]:
    """The rows, each by the names of its columns."""
    return [dict(zip((column.name for column in COLUMNS), row, strict=True)) for row in records(episode).rows]


def test_no_record_no_row(empty: Notes) -> None:
    """The columns are there all the same."""
    table = records(Episode(empty))
    assert table.rows == ()
    assert table.columns == COLUMNS


@pytest.mark.parametrize("kind", KINDS)
def test_every_field_has_a_column(kind: type[Evidenced]) -> None:
    """A new field of a record must not be forgotten."""
    fields = {name for field in kind.model_fields for name in TAKEN_APART.get(field, {field})}
    assert fields <= {column.name for column in COLUMNS}


def test_every_column_has_a_name_of_its_own() -> None:
    """Two fields in one column would overwrite each other."""
    assert len({column.name for column in COLUMNS}) == len(COLUMNS)


def test_every_record_has_a_row(episode: Episode) -> None:
    """Of every kind, in the order of the notes."""
    notes = episode.notes
    several = (
        notes.observations, notes.comparisons, notes.preferences, notes.facts, notes.reveals, notes.sections,
        notes.repairs, notes.ignored,
    )  # fmt: skip
    assert [row["id"] for row in rows(episode)] == [record.id for kind in several for record in kind]


@pytest.mark.parametrize(
    ("value", "text", "number"), [(5, "5", 5), (2.5, "2.5", 2.5), ("9-10", "9-10", None), ("steamed", "steamed", None)]
)
def test_a_fact_has_its_value_as_said_and_as_a_number(
    value: float | str, text: str, number: float | None, small: Notes
) -> None:
    """A range has no one number."""
    fact = small.facts[0].model_copy(update={"value": value})
    (row,) = (row for row in rows(Episode(small.model_copy(update={"facts": (fact,)}))) if row["record"] == "fact")
    assert (row["value"], row["number"]) == (text, number)


def test_why_tells_rule_and_words(episode: Episode) -> None:
    """One text a reason."""
    assert rows(episode)[0]["why"] == ("named: it looks brick red",)
