"""Is it there?"""

import pytest

from notesmith.listening.hearing import Description, Hearing
from notesmith.listening.presence import Reading, read_presence
from notesmith.records import Sheet
from tests.listening.conftest import Case, Hear, cases_in_every_form, sheet_of


def readings(heard: Hearing) -> list[tuple[Description, Reading]]:
    """How every description of a talk is read."""
    return [(d, read_presence(heard, d, heard.clauses[heard.clause_of[d.start]])) for d in heard.descriptions]


def worded(heard: Hearing, description: Description, reading: Reading) -> str:
    """A reading as the cases write it."""
    presence = "none" if reading.refused else "faint" if reading.weakened else reading.presence
    return f"{heard.said(description.start, description.end)}: {presence}"


def test_nothing_is_read_where_nothing_describes(hear: Hear) -> None:
    """Talk without a sensory word has no readings."""
    assert readings(hear("No, not today.", Sheet())) == []


@pytest.mark.parametrize("case", cases_in_every_form("presence"))
def test_presence(case: Case, hear: Hear) -> None:
    """Every describing word of the talk is read as the case says."""
    heard = hear(case["talk"], sheet_of(case, "left", "right"))
    assert [worded(heard, d, reading) for d, reading in readings(heard)] == case["says"]


def test_the_deciding_word_is_named(hear: Hear) -> None:
    """A denial points at the word that denies."""
    heard = hear("I get honey and there's no smoke.", Sheet())
    assert [heard.words[r.at].norm for _, r in readings(heard) if r.presence == "absent"] == ["no"]


def test_nothing_decides_a_plain_statement(hear: Hear) -> None:
    """A plain statement rests on no other word."""
    assert [r.at for _, r in readings(hear("It's smoky.", Sheet()))] == [-1]
