"""Observations as comma-separated values."""

import csv
import io
from pathlib import Path

import pytest

from notesmith.publishing.csv_text import COLUMNS, render
from notesmith.records import Notes, Observation


def rows(notes: Notes) -> list[dict[str, str]]:
    """What a spreadsheet reads."""
    return list(csv.DictReader(io.StringIO(render(notes))))


def test_no_observations_are_a_line_of_names(empty: Notes) -> None:
    """The columns are named even where there is no row."""
    assert render(empty) == ",".join(COLUMNS) + "\n"


def test_notes_as_csv(small: Notes, cases: Path) -> None:
    """The whole file is as expected."""
    assert render(small) == (cases / "small.csv").read_text("utf-8")


def test_every_field_has_a_column() -> None:
    """A new field of an observation must not be forgotten; spans take two columns each."""
    fields = set(Observation.model_fields) - {"span", "term_span"}
    assert set(COLUMNS) == fields | {"transcript", "span_start", "span_end", "term_start", "term_end"}


@pytest.mark.parametrize("text", ["=1+1", "+1", "-1", "@cell", "\t=1"])
def test_a_spreadsheet_runs_no_formula_from_captions(text: str, small: Notes) -> None:
    """What would be a formula is marked as text."""
    odd = small.observations[0].model_copy(update={"quote": text})
    assert rows(small.model_copy(update={"observations": (odd,)}))[0]["quote"] == "'" + text.strip()


def test_a_number_below_zero_stays_a_number(small: Notes) -> None:
    """Only text is marked."""
    odd = small.observations[0].model_copy(update={"start": -1.0})
    assert rows(small.model_copy(update={"observations": (odd,)}))[0]["start"] == "-1.0"
