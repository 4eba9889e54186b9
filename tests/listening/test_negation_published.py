"""Negation against the published examples of two algorithms for clinical notes, carried over to tasting words."""

import pytest

from tests.listening.conftest import Case, Hear, cases, cases_in_every_form, sheet_of
from tests.listening.test_presence import readings, worded

PAPERS = {"chapman", "harkema"}


@pytest.mark.parametrize("case", cases_in_every_form("negation-published"))
def test_negation_as_published(case: Case, hear: Hear) -> None:
    """The phrase does to a tasting word what the paper says it does to a finding; other words are not asked about."""
    heard = hear(case["talk"], sheet_of(case, "left", "right"))
    asked = [said.split(":")[0] for said in case["says"]]
    read = [worded(heard, d, reading) for d, reading in readings(heard) if heard.said(d.start, d.end) in asked]
    assert read == case["says"]


def test_every_row_names_its_paper_and_what_it_says() -> None:
    """No row stands without a source that the head of the file gives in full."""
    rows = [param.values[0] for param in cases("negation-published")]
    assert [row["name"] for row in rows if row["source"] not in PAPERS or not row["paper"]] == []
