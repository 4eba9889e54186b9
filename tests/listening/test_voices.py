"""In whose voice?"""

import pytest

from notesmith.listening.hearing import Hearing
from notesmith.listening.voices import quoted_clauses
from notesmith.records import Sheet
from tests.listening.conftest import Case, Hear, cases, sheet_of


def voices(heard: Hearing) -> list[str]:
    """The voice of each description, as the cases write it."""
    quoted = quoted_clauses(heard)
    heard_in = [(d, quoted[heard.clause_of[d.start]]) for d in heard.descriptions]
    return [f"{heard.said(d.start, d.end)}: {'quoted' if other else 'taster'}" for d, other in heard_in]


def test_a_greeting_is_nobody_elses(hear: Hear) -> None:
    """Nothing is quoted where nothing is read out."""
    assert quoted_clauses(hear("Hello.", Sheet())) == [False]


@pytest.mark.parametrize("case", cases("voices"))
def test_voice(case: Case, hear: Hear) -> None:
    """Each describing word is in the voice the case says."""
    assert voices(hear(case["talk"], sheet_of(case))) == case["says"]


@pytest.mark.parametrize(
    ("talk", "taster"), [("On the nose I get smoke.", "Mo"), ("The label says notes of smoke.", None)]
)
def test_what_is_quoted_has_no_taster(talk: str, taster: str | None, hear: Hear) -> None:
    """The one taster perceived what he says himself, and nobody of the session what he reads out."""
    assert [p.taster for p in hear(talk, Sheet(tasters=("Mo",))).perceptions] == [taster]


def test_the_speaker_is_the_taster(hear: Hear) -> None:
    """Where several taste, the one who speaks perceived it; one who is no taster did not."""
    talk = "Mo: On the nose I get plum.\nAda: I get smoke on the nose.\nZed: I get tar notes."
    heard = hear(talk, Sheet(tasters=("Ada", "Mo")))
    assert [p.taster for p in heard.perceptions] == ["Mo", "Ada", None]
