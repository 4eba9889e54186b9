"""How strongly?"""

import pytest

from notesmith.listening.hearing import Hearing
from notesmith.listening.intensity import read_intensity
from notesmith.records import Sheet
from tests.listening.conftest import Case, Hear, cases, sheet_of


def graded(heard: Hearing) -> list[str]:
    """The intensity of each description, as the cases write it."""
    read = [(d, read_intensity(heard, d, heard.clauses[heard.clause_of[d.start]])[0]) for d in heard.descriptions]
    return [f"{heard.said(d.start, d.end)}: {intensity or 'unmarked'}" for d, intensity in read]


def test_nothing_is_graded_where_nothing_describes(hear: Hear) -> None:
    """A grader alone describes nothing."""
    assert graded(hear("Very, very, a bit.", Sheet())) == []


@pytest.mark.parametrize("case", cases("intensity"))
def test_intensity(case: Case, hear: Hear) -> None:
    """Each describing word is graded as the case says."""
    assert graded(hear(case["talk"], sheet_of(case))) == case["says"]


def test_the_grading_word_is_named(hear: Hear) -> None:
    """An intensity points at the word that says so."""
    heard = hear("I find it very smoky.", Sheet())
    description = heard.descriptions[0]
    intensity, at = read_intensity(heard, description, heard.clauses[heard.clause_of[description.start]])
    assert (intensity, heard.words[at].norm) == ("high", "very")


def test_what_is_absent_has_no_intensity(hear: Hear) -> None:
    """`Not a hint of smoke` is graded neither low nor high once it is denied."""
    heard = hear("On the nose not a hint of smoke, honey and plum.", Sheet())
    assert next((p.presence, p.intensity) for p in heard.perceptions) == ("absent", None)


def test_what_is_weakened_is_low(hear: Hear) -> None:
    """`Not very` grades down, though `very` alone grades up."""
    heard = hear("On the palate it's not very bitter.", Sheet())
    assert [(p.presence, p.intensity) for p in heard.perceptions] == [("present", "low")]
