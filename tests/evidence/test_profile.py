"""Recordings read as profiles, rankings, sips and places."""

from pathlib import Path

import pytest

from notesmith.evidence.curves import draw_curves
from notesmith.evidence.profile import profiles, rankings, sips, terms_by_place
from notesmith.evidence.results import weigh
from notesmith.evidence.sessions import Session
from notesmith.sensory.dominance import Sip
from tests.evidence.conftest import Told

THREE = {"A": "P", "B": "Q", "C": "R"}


def test_a_look_counts_once() -> None:
    """A term said twice of one cup by one taster is found once, at its strongest."""
    told = Told({"A": "P"}, tasters=("Ada", "Ben"))
    told.perceives("A", "sweet").perceives("A", "sweet", intensity="high").perceives("A", "malty", taster="Ben")
    found = profiles([Session(told.notes())], least=1)
    assert [(at.term, at.found.value, at.found.looks, at.strength.value) for at in found] == [
        ("malty", 0.5, 2, 2.0), ("sweet", 0.5, 2, 3.0),
    ]  # fmt: skip


def test_denied_is_looked_at_and_not_found() -> None:
    """What is denied counts as strength 0 and not as found."""
    told = Told({"A": "P"}, tasters=("Ada", "Ben"))
    told.perceives("A", "sweet").perceives("A", "sweet", taster="Ben", presence="absent")
    assert [(at.found.value, at.strength.value) for at in profiles([Session(told.notes())], least=1)] == [(0.5, 1.0)]


def test_quoted_and_later_words_make_no_profile() -> None:
    """What is perceived after the reveal is left out."""
    told = Told({"A": "P"}).perceives("A", "sweet", after_reveal=True)
    assert profiles([Session(told.notes())], least=1) == []


def test_whole_rankings_only() -> None:
    """A ranking that leaves out a sample is none."""
    told = Told(THREE, tasters=("Ada", "Ben", "Cleo"))
    told.prefers("A", "B", "C").prefers("A", "B", taster="Ben").prefers("B", "A", "C", taster="Cleo")
    found = rankings([Session(told.notes())])
    assert found is not None
    assert (found.products, found.scores) == (("P", "Q", "R"), ((3, 2, 1), (2, 3, 1)))


def test_no_rankings() -> None:
    """One ranking alone agrees with nobody."""
    assert rankings([Session(Told(THREE).prefers("A", "B", "C").notes())]) is None


def test_rankings_are_claimed() -> None:
    """Six tasters of one mind rank the samples apart."""
    names = tuple("abcdef")
    told = Told(THREE, tasters=names)
    for name in names:
        told.prefers("B", "A", "C", taster=name)
    result = next(at for at in weigh([told.notes()])[0] if at.title == "The ranking")
    assert result.figures[0] == "Q: rank sum 18"
    assert result.claim.startswith(
        "The samples are ranked apart, Q first (n = 6 rankings of 3 samples, p = 0.002, agreement W 1.00)."
    )


def test_sips_end_with_their_section() -> None:
    """A sip is what was named in the mouth within one stretch of tasting; its end is a breath after the last word."""
    told = Told({"A": "P", "B": "Q"}).tastes("A").perceives("A", "sweet").perceives("A", "smoky", facet="aroma")
    told.perceives("A", "bitter").tastes("B").perceives("A", "malty")
    assert sips([Session(told.notes())]) == {"P": [Sip(2, 5, ((2, "sweet"), (4, "bitter")))]}


def test_order_of_sensations_is_claimed() -> None:
    """Five sips that go from sweet to bitter say so."""
    told = Told({"A": "P"}, tasters=("Ada",))
    for _ in range(5):
        told.tastes("A").perceives("A", "sweet").perceives("A", "bitter")
    result = next(at for at in weigh([told.notes()])[0] if at.title.startswith("The order"))
    assert "in turn sweet, then bitter (n = 5 sips" in result.claim


def test_places_are_told_apart() -> None:
    """Fewer terms with every cup: the order of tasting shows."""
    told = Told({"A": "P", "B": "Q", "C": "R"})
    for sample, count in (("B", 4), ("A", 3), ("C", 1)):
        for number in range(count):
            told.perceives(sample, f"term {number}")
    session = Session(told.notes())
    assert (session.order, terms_by_place(session)) == (("B", "A", "C"), [4, 3, 1])


def test_places_of_several_sessions() -> None:
    """Five sessions that each find most in the first cup and least in the last: the place matters."""
    notes = []
    for number in range(5):
        told = Told({"A": "P", "B": "Q", "C": "R"})
        for sample, count in (("B", 3), ("A", 2), ("C", 1)):
            for term in range(count):
                told.perceives(sample, f"term {term}")
        notes.append(told.notes(f"{number}.vtt"))
    result = next(at for at in weigh(notes)[0] if at.title == "Places in a session")
    assert result.figures[0] == "place 1: 3.0 terms"
    assert result.claim.startswith("How many terms are found depends on the place in a session (n = 5 sessions")


@pytest.mark.parametrize("reading", [profiles, sips])
def test_silence(reading: object) -> None:
    """Nothing said, nothing read."""
    assert not reading([])  # type: ignore[operator]


def test_curves_are_drawn(tmp_path: Path) -> None:
    """A chart for each product of which there are two sips."""
    told = Told({"A": "Hillside Green", "B": "River Oolong"})
    for _ in range(2):
        told.tastes("A").perceives("A", "sweet").perceives("A", "bitter")
    told.tastes("B").perceives("B", "sweet").perceives("B", "malty")
    written = draw_curves([told.notes()], tmp_path / "curves", force=False)
    assert [path.name for path in written] == ["01-hillside-green.order.svg"]
    assert "Hillside Green" in written[0].read_text("utf-8")
