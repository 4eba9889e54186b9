"""Reading the encoder's answers."""

import numpy as np
import pytest
from numpy.typing import NDArray

from notesmith.listening.hearing import Hearing
from notesmith.listening.pointers import Found, Pointing, stretches
from notesmith.listening.shown import PARTS, Cast
from notesmith.records import Sheet, SheetSample
from tests.listening.conftest import Hear

OUT, BEGIN, IN = (1.0, 0.0, 0.0), (0.0, 1.0, 0.0), (0.0, 0.0, 1.0)
SHEET = Sheet(category="tea", samples=(SheetSample(id="red"), SheetSample(id="blue"), SheetSample(id="green")))


def marks(*rows: tuple[float, float, float]) -> NDArray[np.float32]:
    """Marks, a row a word."""
    return np.array(rows, dtype=np.float32).reshape(-1, 3)


@pytest.mark.parametrize(
    ("rows", "found"),
    [
        ((), []),
        ((OUT, OUT), []),
        ((BEGIN,), [(0, 1)]),
        ((OUT, BEGIN, IN, OUT), [(1, 3)]),
        ((BEGIN, BEGIN), [(0, 1), (1, 2)]),
        ((IN, IN, OUT, BEGIN), [(0, 2), (3, 4)]),
        ((OUT, IN, OUT), [(1, 2)]),
    ],
)
def test_stretches(rows: tuple[tuple[float, float, float], ...], found: list[tuple[int, int]]) -> None:
    """A stretch begins where it is said to, or where it goes on from nothing, and ends before the next."""
    assert [(f.start, f.end) for f in stretches(marks(*rows), 0.5)] == found


def test_a_stretch_is_as_sure_as_its_words_are() -> None:
    """The score is the mean of its words."""
    (found,) = stretches(marks((0.2, 0.8, 0.0), (0.4, 0.0, 0.6)), 0.5)
    assert found.score == pytest.approx(0.7)


@pytest.fixture
def talk(hear: Hear) -> Hearing:
    """Two samples named in turn."""
    return hear("[0:00] Now the red one. It's smoky.\n[0:10] And the blue one. That's sweet.", SHEET)


def pointing(talk: Hearing, **worths: float) -> Pointing:
    """A pointing where every word gives the parts the same worths."""
    row = np.array([worths.get(part.replace(" ", "_"), 0.0) for part in PARTS], dtype=np.float32)
    parts = np.zeros((len(talk.words), len(PARTS)), dtype=np.int16)
    parts[:, PARTS.index("last")] = [1 if w.ms < 10_000 else 2 for w in talk.words]
    parts[:, PARTS.index("coming")] = [2 if w.ms < 10_000 else 0 for w in talk.words]
    since = np.full((len(talk.words), 3), -1)
    worth = np.tile(row, (len(talk.words), 1))
    return Pointing(talk, {"stated": worth, "sample": worth}, Cast(parts, since, []))


def test_the_sample_whose_part_is_worth_most_is_pointed_to(talk: Hearing) -> None:
    """Where the one named last is worth most, each stretch is about the one last named before it."""
    pointed = pointing(talk, last=5.0)
    assert [pointed.at("stated", Found(i, i + 1, 1.0)) for i in (1, len(talk.words) - 1)] == ["red", "blue"]


def test_nobody_may_be_pointed_to(talk: Hearing) -> None:
    """Where nobody is worth most, it is said of no sample."""
    assert pointing(talk, nobody=5.0, last=1.0).at("stated", Found(1, 2, 1.0)) is None


def test_a_part_that_nobody_plays_is_worth_nothing(talk: Hearing) -> None:
    """The one named next does not exist at the end."""
    assert pointing(talk, coming=9.0, last=1.0).at("stated", Found(len(talk.words) - 1, len(talk.words), 1.0)) == "blue"


def test_what_was_perceived_last_counts_more_than_what_was_named_before(talk: Hearing) -> None:
    """The next perception stays with the sample of the one before it, unless a name is worth more."""
    found = [Found(1, 2, 1.0), Found(len(talk.words) - 1, len(talk.words), 1.0)]
    stays = pointing(talk, last=20.0, perceived_last=40.0).decide(found)
    moves = pointing(talk, last=40.0).decide(found)
    assert [sample for sample, _ in stays] == ["red", "red"]
    assert [sample for sample, _ in moves] == ["red", "blue"]


def test_an_aside_about_nobody_does_not_make_forget_who_was_perceived_last(talk: Hearing) -> None:
    """After a stretch of nobody, what was perceived before it is still the last."""
    pointed = pointing(talk, last=20.0, perceived_last=40.0)
    aside = dict(pointed.answers)
    aside["sample"] = aside["sample"].copy()
    aside["sample"][4] = np.eye(len(PARTS), dtype=np.float32)[0] * 90
    pointed.answers = aside
    found = [Found(i, i + 1, 1.0) for i in (1, 4, len(talk.words) - 1)]
    assert [sample for sample, _ in pointed.decide(found)] == ["red", None, "red"]


def test_no_stretches_are_decided_as_nothing(talk: Hearing) -> None:
    """Nothing perceived, nothing decided."""
    assert pointing(talk).decide([]) == []
