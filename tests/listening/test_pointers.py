"""Reading the encoder's answers."""

import numpy as np
import pytest
from numpy.typing import NDArray

from notesmith.listening.hearing import Hearing
from notesmith.listening.pointers import Found, Pointing, stretches
from notesmith.listening.shown import PARTS
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
    return Pointing(
        talk, {"stated": np.tile(row, (len(talk.words), 1)), "sample": np.tile(row, (len(talk.words), 1))}, parts
    )


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


def test_the_chain_stays_where_nothing_else_speaks(talk: Hearing) -> None:
    """What was perceived last draws the next perception to the same sample."""
    found = [Found(1, 2, 1.0), Found(len(talk.words) - 1, len(talk.words), 1.0)]
    stays = pointing(talk, last=4.0, perceived_last=20.0).decide(found)
    moves = pointing(talk, last=4.0).decide(found)
    assert [sample for sample, _ in stays] == ["red", "red"]
    assert [sample for sample, _ in moves] == ["red", "blue"]


def test_no_stretches_are_no_chain(talk: Hearing) -> None:
    """Nothing perceived, nothing decided."""
    assert pointing(talk).decide([]) == []
