"""Which words describe?"""

from itertools import pairwise

import pytest

from notesmith.listening.hearing import Description, Hearing
from notesmith.records import Sheet
from tests.listening.conftest import Case, Hear, cases, sheet_of


def worded(heard: Hearing, d: Description) -> str:
    """A description as the cases write it."""
    said = heard.said(d.start, d.end)
    carried = f" < {heard.words[d.head].norm}" if d.head >= 0 else ""
    return (said if d.label else f"{{{said}}}") + carried


def test_talk_of_nothing_describes_nothing(hear: Hear) -> None:
    """Greetings hold no description."""
    assert hear("Hello and welcome.", Sheet()).descriptions == []


@pytest.mark.parametrize("case", cases("descriptions"))
def test_descriptions(case: Case, hear: Hear) -> None:
    """These words describe, and no others."""
    heard = hear(case["talk"], sheet_of(case))
    assert [worded(heard, d) for d in heard.descriptions] == case["says"]


def test_descriptions_do_not_overlap(hear: Hear) -> None:
    """No word is part of two descriptions, and they stand in the order of the talk."""
    talk = "I'm getting burnt sugar and green apple notes. A hint of wet slate. A vanilla candle."
    found = hear(talk, Sheet()).descriptions
    assert len(found) == 4
    assert all(a.end <= b.start for a, b in pairwise(found))
