"""Where does one thought end?"""

import pytest

from notesmith.listening.clauses import LONGEST
from notesmith.records import Sheet
from tests.listening.conftest import Case, Hear, cases


def test_one_word_is_one_thought(hear: Hear) -> None:
    """The shortest talk there is holds one thought."""
    assert [(c.start, c.end) for c in hear("Hm", Sheet()).clauses] == [(0, 1)]


@pytest.mark.parametrize("case", cases("clauses"))
def test_thoughts(case: Case, hear: Hear) -> None:
    """The talk is cut where the case says."""
    heard = hear(case["talk"], Sheet())
    assert [heard.said(c.start, c.end) + " (asks)" * c.asks for c in heard.clauses] == case["says"]


def test_every_word_has_one_thought(hear: Hear) -> None:
    """Thoughts follow each other without gap or overlap, and each word knows its own."""
    heard = hear("It's sweet, but dry. Do you get smoke? I get honey and it's tart.", Sheet())
    cut = [k for k, clause in enumerate(heard.clauses) for _ in range(clause.start, clause.end)]
    assert cut == heard.clause_of
    assert len(cut) == len(heard.words)


def test_no_thought_is_endless(hear: Hear) -> None:
    """A row of words that nothing ends is cut, so that no negation reaches far."""
    heard = hear(" ".join(["honey"] * (2 * LONGEST + 3)), Sheet())
    assert [c.end - c.start for c in heard.clauses] == [LONGEST, LONGEST, 3]


def test_a_thought_knows_its_speaker(hear: Hear) -> None:
    """Each thought has one speaker."""
    heard = hear("Mo: It's smoky.\nAda: Not to me.", Sheet())
    assert [c.speaker for c in heard.clauses] == ["Mo", "Ada"]
