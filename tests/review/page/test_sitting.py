"""One recording under review: what edits make of it step by step, and what is drawn anew for each."""

from pathlib import Path

import pytest

from notesmith.errors import NoTastingError
from notesmith.records import Notes
from notesmith.review.applying import applied
from notesmith.review.changes import changes
from notesmith.review.corrections import read_corrections, stamp
from notesmith.review.edits import Alias, Edit
from notesmith.review.sitting import KEPT, Sitting
from notesmith.review.wishes import WishError, edit_of
from tests.review.conftest import Bench


def refuse(_: object) -> Notes:
    """A listener that hears no tasting."""
    raise NoTastingError("nothing is tasted in it")


@pytest.fixture
def sitting(cups: Bench, tmp_path: Path) -> Sitting:
    """The small talk, laid out."""
    return Sitting("cups", cups.notes, cups.talk, tmp_path / "cups.corrections.json", refuse)


def wish(sitting: Sitting, **form: str) -> Edit:
    """The edit that a form asks for."""
    return edit_of(sitting.state, form)


def test_step_by_step_is_what_all_at_once_is(sitting: Sitting, cups: Bench) -> None:
    """Changes, deletions, undoing and redoing: the notes are those that a new run makes of the file."""
    first, second, *_ = cups.notes.observations
    sitting.make(wish(sitting, do="change", id=first.id, field="sample", value="two"))
    sitting.make(wish(sitting, do="delete", id=second.id))
    sitting.undo()
    sitting.make(wish(sitting, do="change", id=second.id, field="facet", value="finish"))
    sitting.undo()
    sitting.redo()
    assert sitting.state.notes == applied(cups.notes, cups.talk, read_corrections(sitting.path)).notes


def test_only_what_an_edit_changed_is_drawn_anew(sitting: Sitting, cups: Bench) -> None:
    """One line goes, one comes, and the cue of the words is told again."""
    before, first = sitting.state, cups.notes.observations[0]
    other = "one" if first.sample == "two" else "two"
    sitting.make(wish(sitting, do="change", id=first.id, field="sample", value=other))
    drawn = changes(sitting, before, sitting.state)
    assert drawn.gone == (first.id,)
    assert [one.listed.line.id for one in drawn.coming] == [first.id]
    assert [cue.number for cue in drawn.cues] == [cups.talk.cue_at(first.term_span[0])]
    assert changes(sitting, sitting.state, sitting.state) == changes(sitting, before, before)


def test_a_name_that_leaves_no_notes_is_not_written_down(sitting: Sitting) -> None:
    """What is taught is listened to before it is kept."""
    with pytest.raises(NoTastingError):
        sitting.make(Alias(**stamp(), of="one", alias="the left one"))
    assert not sitting.path.exists()


@pytest.mark.parametrize(
    "form",
    [
        {}, {"do": "erase"}, {"do": "change"}, {"do": "confirm", "id": "nobody"}, {"do": "add", "kind": "observation"},
        {"do": "add", "kind": "rumour", "from": "0", "to": "3"}, {"do": "move", "from": "-1", "to": "4", "value": ""},
        {"do": "add", "kind": "fact", "from": "9" * 30, "to": "9" * 31}, {"do": "term", "from": "3", "to": "3"},
        {"do": "alias", "of": "one", "alias": " "}, {"do": "add", "kind": "fact", "from": "²", "to": "³"},
    ],
    ids=str,
)  # fmt: skip
def test_what_cannot_be_done_is_refused(form: dict[str, str], sitting: Sitting) -> None:
    """In a line, with nothing written."""
    with pytest.raises(WishError):
        wish(sitting, **form)
    assert not sitting.path.exists()


def test_states_of_long_ago_are_forgotten(sitting: Sitting, cups: Bench) -> None:
    """A page that was not looked at for so many edits loads anew."""
    for number in range(KEPT + 5):
        value = ("aroma", "finish")[number % 2]
        sitting.make(wish(sitting, do="change", id=cups.notes.observations[0].id, field="facet", value=value))
    assert len(sitting.states) <= KEPT
    assert 0 not in sitting.states
