"""What speaks for staying with a sample and what for turning to another."""

import pytest

from notesmith.listening.hearing import Hearing
from notesmith.listening.shown import cast_parts
from notesmith.listening.turning import Turning
from notesmith.records import Sheet, SheetSample
from tests.listening.conftest import Hear

SHEET = Sheet(category="tea", samples=(SheetSample(id="red"), SheetSample(id="blue"), SheetSample(id="green")))
RED, BLUE, GREEN = 1, 2, 3


def place(talk: Hearing, word: str) -> int:
    """Where a word stands."""
    return talk.meant.index(word)


def lead(talk: Hearing, word: str, slot: int) -> float:
    """By how much another slot leads over staying with the red one, which was perceived as smoky."""
    at = place(talk, word)
    row = Turning(talk, cast_parts(talk)).table(at, at + 1, place(talk, "smoky") + 1)[RED]
    return float(row[slot] - row[RED])


@pytest.mark.parametrize(
    ("says", "slot"),
    [
        ("the red one is smoky. Right. Next. Oh, that is sweet", BLUE),
        ("the red one is smoky. And the green is sweet", GREEN),
    ],
)
def test_turns(says: str, slot: int, hear: Hear) -> None:
    """`Next` speaks for the next in order, a name for whoever is named, and going on for nobody else."""
    plain = hear("[0:00] the red one is smoky and it is sweet", SHEET)
    assert lead(plain, "sweet", slot) < 0
    assert lead(hear(f"[0:00] {says}", SHEET), "sweet", slot) > lead(plain, "sweet", slot) + 1


def test_what_was_said_before_the_last_perception_has_had_its_say(hear: Hear) -> None:
    """A name speaks for a turn only once."""
    turning = Turning(talk := hear("[0:00] The green is smoky and sweet", SHEET), cast_parts(talk))
    smoky, sweet = place(talk, "smoky"), place(talk, "sweet")
    assert ("called since", GREEN) in turning.standing(smoky, smoky + 1, 0)
    assert ("called since", GREEN) not in turning.standing(sweet, sweet + 1, smoky + 1)


def test_a_pause_and_a_cue_are_marked(hear: Hear) -> None:
    """The marks tell how many words and how long a silence lie between, and what was said to move on."""
    talk = hear("[0:00] It is smoky\n[0:09] okay that is sweet", SHEET)
    marks = list(Turning(talk, cast_parts(talk)).marks(place(talk, "sweet"), place(talk, "sweet") + 1, 3))
    assert "“okay”" in marks
    assert "gap 1" in marks
