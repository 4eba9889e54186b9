"""What was taken back, or said of the wrong cup?"""

import pytest

from notesmith.listening.hearing import Hearing, Perception
from notesmith.records import Sheet, SheetSample
from tests.listening.conftest import Case, Hear, cases, sheet_of


def worded(heard: Hearing, p: Perception) -> str:
    """A perception as the cases write it."""
    presence = "" if p.presence == "present" else f", {p.presence}"
    return f"{heard.said(p.description.start, p.description.end)}: {p.sample}{presence}"


def test_nothing_said_is_nothing_taken_back(hear: Hear) -> None:
    """A correction of nothing changes nothing."""
    sheet = Sheet(samples=(SheetSample(id="left"), SheetSample(id="right")))
    talk = "Sorry, that was the right. I've swapped them, I called them wrong. Cancel that."
    assert hear(talk, sheet).perceptions == []


@pytest.mark.parametrize("case", cases("retractions"))
def test_retraction(case: Case, hear: Hear) -> None:
    """What is perceived in the end is what the case says."""
    heard = hear(case["talk"], sheet_of(case, "left", "right"))
    assert [worded(heard, p) for p in heard.perceptions] == case["says"]


def test_what_was_moved_says_why(hear: Hear) -> None:
    """A moved perception rests on the words that moved it."""
    sheet = Sheet(samples=(SheetSample(id="left"), SheetSample(id="right")))
    heard = hear("The left is smoky on the nose.\nSorry, that was the right.", sheet)
    grounds = heard.perceptions[0].grounds[-1]
    assert heard.said(grounds.start, grounds.end) == "Sorry, that was the right"
