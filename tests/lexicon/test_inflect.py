"""Which inflections follow from a label."""

import csv
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from notesmith.lexicon.inflect import inflections

CASES = Path(__file__).parents[1] / "cases" / "lexicon" / "inflections.tsv"
ROWS = list(csv.DictReader(CASES.read_text("utf-8").splitlines(), delimiter="\t"))


@pytest.mark.parametrize("row", ROWS, ids=lambda row: f"{row['label']} ({row['form']})")
def test_inflections_are_spelt_as_usual(row: dict[str, str]) -> None:
    """Plurals, comparison, -ness, -ly and verb endings follow English spelling."""
    assert "|".join(inflections(row["label"], row["form"])) == row["inflections"]


@given(st.text(st.characters(categories=["Ll"]), max_size=12), st.sampled_from(["noun", "adjective", "verb", "phrase"]))
def test_no_label_breaks_the_inflection(label: str, form: str) -> None:
    """Whatever the label, its inflections are other words than itself."""
    assert label not in inflections(label, form)
