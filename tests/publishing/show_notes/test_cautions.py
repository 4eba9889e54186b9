"""Cautions: what the products call for, what sounds like a health claim, what suggests a connection."""

import tomllib
from pathlib import Path
from typing import Any

import pytest

from notesmith.publishing.show_notes import for_the_author, markdown, page, plain
from notesmith.publishing.show_notes.cautions import called_for, connection_words, health_words, read_cautions
from notesmith.publishing.show_notes.phrases import find
from notesmith.records import Sheet, SheetSample
from tests.publishing.show_notes.telling import record, seen, told

CASES = tomllib.loads((Path(__file__).parents[2] / "cases" / "publishing" / "cautions.toml").read_text("utf-8"))
SHEET = Sheet(samples=(SheetSample(id="A"),))
CLAIMING = ["it is plummy and full of antioxidants", "and dry"]


@pytest.mark.parametrize("case", CASES["products"], ids=lambda case: case["category"] or "nothing")
def test_products_call_for_cautions(case: dict[str, Any]) -> None:
    """A caution is called for by what is tasted, never by what it tastes of."""
    samples = tuple(SheetSample(id=f"s{k}", product=name) for k, name in enumerate(case.get("samples", [])))
    facts = [record("facts", 0, "made", kind="process", value=how) for how in case.get("process", [])]
    sheet = Sheet(category=case["category"], samples=samples)
    episode = told(["made somehow, of honey and wine and raw milk"], *facts, sheet=sheet)
    assert [caution.id for caution in called_for(episode) if not caution.always] == case["cautions"]


@pytest.mark.parametrize("words", CASES["health"]["yes"])
def test_health_claims_are_heard(words: str) -> None:
    """What sounds like a health claim is found."""
    assert find(words, health_words())


@pytest.mark.parametrize("words", CASES["health"]["no"])
def test_other_words_are_no_health_claims(words: str) -> None:
    """Words for smells, and everyday turns of speech, are no health claims."""
    assert not find(words, health_words())


@pytest.mark.parametrize("words", CASES["connection"]["yes"])
def test_connections_are_heard(words: str) -> None:
    """What suggests a connection to a seller is found."""
    assert find(words, connection_words())


@pytest.mark.parametrize("words", CASES["connection"]["no"])
def test_other_words_are_no_connections(words: str) -> None:
    """A connection that is denied, and talk of friends and boxes, is left alone."""
    assert not find(words, connection_words())


@pytest.mark.parametrize("form", [page, markdown, plain])
def test_health_claims_are_left_out(form: Any) -> None:
    """A record that sounds like a health claim is in no form of the show notes, nor are its words."""
    episode = told(CLAIMING, seen(0, "plummy"), seen(0, "full", quote="full of antioxidants"), sheet=SHEET)
    assert "plummy" in form(episode)
    assert "antioxidants" not in form(episode)


def test_health_claims_are_kept_on_purpose() -> None:
    """A record that the author keeps by its id is told."""
    records = seen(0, "full", quote="full of antioxidants"), seen(1, "dry")
    assert "antioxidants" in markdown(told(CLAIMING, *records, sheet=SHEET, keep=frozenset({"observations-0"})))


def test_the_author_is_told_of_claims_with_their_fate() -> None:
    """The author's list names the record, its time and whether it was left out."""
    found = for_the_author(told(CLAIMING, seen(0, "full", quote="full of antioxidants"), sheet=SHEET))
    assert found
    assert "- 0:00 “full of antioxidants”: left out of the show notes: observations-0" in found


def test_the_author_is_told_of_claims_in_no_record() -> None:
    """A claim that no record holds is listed with what surrounds it."""
    found = for_the_author(told(CLAIMING, seen(1, "dry"), sheet=SHEET))
    assert found
    assert "in no record" in found


def test_the_author_is_reminded_of_disclosure() -> None:
    """A connection to a seller is listed with its time and a reminder that local rules apply."""
    found = for_the_author(told(["dry", "they sent me these for free"], seen(0, "dry"), sheet=SHEET))
    assert found
    assert "- 0:10 “dry they sent me these for free”" in found
    assert "local rules" in found


def test_a_claim_of_the_maker_is_left_out() -> None:
    """Words of health in the sheet's description are no claim to be shown, but are listed for the author."""
    sheet = Sheet(samples=(SheetSample(id="A", description="Plum and smoke. Helps digestion."),))
    episode = told(["plum"], seen(0, "plum", concept="plum"), sheet=sheet)
    assert "igestion" not in markdown(episode)
    assert "igestion" in (for_the_author(episode) or "")


def test_nothing_for_the_author() -> None:
    """Where there is nothing to look at there is no list."""
    assert for_the_author(told(["plum"], seen(0, "plum"), sheet=SHEET)) is None


def test_cautions_are_dated_and_sourced() -> None:
    """Every caution names its source; all bear one date and defer to local rules."""
    listed = read_cautions()
    assert all(caution.source for caution in listed.caution)
    assert "local" in listed.defers
    assert "As of " in markdown(told(["plum"], seen(0, "plum"), sheet=SHEET))
