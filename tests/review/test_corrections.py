"""The file of corrections: nothing that was written into it is lost."""

import json
import multiprocessing
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from notesmith.errors import NotesFileError, OutputError
from notesmith.review.corrections import append, corrections_path, read_corrections, stamp, written
from notesmith.review.edits import EDITS, Alias, Edit, Redo, Teach, Undo, next_redo, next_undo, standing

from .conftest import Bench


def _alias(number: int, alias: str = "the first") -> Alias:
    return Alias(id=f"e{number}", at="2031-05-01T09:00:00+00:00", of="one", alias=alias)


def _undo(number: int, of: int) -> Undo:
    return Undo(id=f"e{number}", at="2031-05-01T09:00:00+00:00", edit=f"e{of}")


def _redo(number: int, of: int) -> Redo:
    return Redo(id=f"e{number}", at="2031-05-01T09:00:00+00:00", edit=f"e{of}")


@pytest.fixture
def path(tmp_path: Path) -> Path:
    """Where the corrections of a talk lie."""
    return corrections_path(tmp_path / "talk.vtt")


def test_where_there_is_no_file_there_are_no_corrections(path: Path) -> None:
    """And none is made by reading."""
    assert read_corrections(path) == ()
    assert not path.exists()


def test_adding_nothing_makes_no_file(path: Path) -> None:
    """There is nothing to keep."""
    assert append(path) == ()
    assert not path.exists()


def test_edits_are_kept_in_the_order_they_were_made(path: Path) -> None:
    """Each call adds at the end and answers with all."""
    append(path, _alias(1))
    assert append(path, _alias(2), _undo(3, 2)) == read_corrections(path) == (_alias(1), _alias(2), _undo(3, 2))


def test_an_edit_sent_twice_is_kept_once(path: Path) -> None:
    """As by a page that got no answer and asks again."""
    append(path, _alias(1))
    assert append(path, _alias(1)) == (_alias(1),)


def test_new_edits_have_identities_of_their_own() -> None:
    """And a time in UTC."""
    first, second = stamp(), stamp()
    assert first["id"] != second["id"]
    assert first["at"].endswith("+00:00")


def test_every_kind_of_edit_is_read_back_as_it_was(cups: Bench, path: Path) -> None:
    """Numbers, texts, names in a row, and what is null."""
    says = {"preferred": "one", "over": ["two"], "scope": "overall", "degree": "", "taster": ""}
    ranking = {"kind": "preference", "words": "I'd drink one again", "says": says}
    fact = {"kind": "fact", "words": "five grams", "says": {"kind": "dose", "value": 5.5, "unit": "gram"}}
    edits = cups.edits([
        {"do": "change", "record": "malty", "set": {"sample": None, "concept": "malty"}},
        {"do": "confirm", "record": "five grams"},
        {"do": "move", "first": "Cup two", "last": "no plum", "sample": None},
        {"do": "add", "by": [ranking, fact]},
        {"do": "mend", "heard": "guy one", "meant": "gaiwan", "words": "guy one"},
        {"do": "alias", "of": "one", "alias": "première – 一"},
        {"do": "teach", "label": "malty", "concept": "malt", "misheard": True},
        {"do": "undo"},
        {"do": "redo"},
    ])  # fmt: skip
    append(path, *edits)
    assert read_corrections(path) == edits


def test_people_can_read_it(path: Path) -> None:
    """One line a field, and no letters in codes."""
    append(path, _alias(1, "première"))
    assert path.read_text("utf-8") == (
        '[\n {\n  "id": "e1",\n  "at": "2031-05-01T09:00:00+00:00",\n  "do": "alias",\n  "of": "one",\n'
        '  "alias": "première"\n }\n]\n'
    )


@given(st.lists(st.text(st.characters(codec="utf-8"), min_size=1), max_size=4))
def test_whatever_was_typed_comes_back(texts: list[str]) -> None:
    """Quotes, brackets and breaks of lines among it."""
    edits = tuple(_alias(number, text) for number, text in enumerate(texts))
    assert EDITS.validate_json(written(edits)) == edits


@pytest.mark.parametrize(
    ("content", "says"),
    [
        ("", "holds no corrections: invalid json"),
        ("{}", "holds no corrections: input should be a valid array"),
        ('[{"id": "x", "at": "y", "do": "juggle"}]', "holds no corrections: 1: input tag 'juggle'"),
        ('[{"id": "x", "at": "y", "do": "undo"}]', "holds no corrections: 1 undo edit: field required"),
    ],
)
def test_what_holds_anything_else_is_told_and_left_alone(path: Path, content: str, says: str) -> None:
    """Nobody's work is written over."""
    path.write_text(content)
    with pytest.raises(NotesFileError, match=says):
        read_corrections(path)
    with pytest.raises(NotesFileError, match=says):
        append(path, _alias(1))
    assert path.read_text() == content


@pytest.mark.parametrize("written_by_hand", ["[]", '[{"id":"h","at":"","do":"undo","edit":"x"}]\n\n', "\ufeff[ ]"])
def test_what_people_wrote_into_it_stays_as_they_wrote_it(path: Path, written_by_hand: str) -> None:
    """Edits are added after it."""
    path.write_text(written_by_hand, "utf-8")
    held = read_corrections(path)
    assert append(path, _alias(1)) == (*held, _alias(1)) == read_corrections(path)
    assert path.read_text("utf-8").startswith(written_by_hand.rstrip()[:-1] if held else "[")


def test_a_folder_that_is_missing_is_told(tmp_path: Path) -> None:
    """In a line that names the file."""
    with pytest.raises(OutputError, match=r"talk\.corrections\.json: cannot be written: No such file"):
        append(tmp_path / "away" / "talk.corrections.json", _alias(1))


def test_what_a_killed_writer_left_does_no_harm(path: Path) -> None:
    """Half a file under its provisional name."""
    append(path, _alias(1))
    path.with_name(f".{path.name}.part").write_text("[\n {")
    assert append(path, _alias(2)) == (_alias(1), _alias(2))
    assert [file.name for file in path.parent.iterdir()] == [path.name]


def test_who_may_read_it_stays_as_it_was(path: Path) -> None:
    """Though the file is a new one."""
    append(path, _alias(1))
    path.chmod(0o600)
    append(path, _alias(2))
    assert path.stat().st_mode & 0o777 == 0o600


def test_a_link_stays_a_link(path: Path, tmp_path: Path) -> None:
    """What it leads to is written."""
    (tmp_path / "kept").mkdir()
    path.symlink_to(tmp_path / "kept" / "edits.json")
    append(path, _alias(1))
    assert path.is_symlink()
    assert json.loads((tmp_path / "kept" / "edits.json").read_text())


def _write_many(path: Path, first: int) -> None:
    for number in range(first, first + 50):
        append(path, _alias(number))


def test_writers_at_the_same_time_lose_nothing_of_each_other(path: Path) -> None:
    """Four programs with fifty edits each."""
    writers = [multiprocessing.Process(target=_write_many, args=(path, first)) for first in (0, 100, 200, 300)]
    for writer in writers:
        writer.start()
    for writer in writers:
        writer.join()
    numbers = [int(edit.id[1:]) for edit in read_corrections(path)]
    assert sorted(numbers) == [first + n for first in (0, 100, 200, 300) for n in range(50)]
    assert [n for n in numbers if n < 100] == list(range(50))


HISTORIES: list[tuple[str, tuple[Edit, ...], list[str], str | None, str | None]] = [
    ("nothing", (), [], None, None),
    ("one", (_alias(1),), ["e1"], "e1", None),
    ("one undone", (_alias(1), _undo(2, 1)), [], None, "e1"),
    ("one redone", (_alias(1), _undo(2, 1), _redo(3, 1)), ["e1"], "e1", None),
    ("two undone", (_alias(1), _alias(2), _undo(3, 2), _undo(4, 1)), [], None, "e1"),
    ("one of two redone", (_alias(1), _alias(2), _undo(3, 2), _undo(4, 1), _redo(5, 1)), ["e1"], "e1", "e2"),
    ("another after undoing", (_alias(1), _undo(2, 1), _alias(3)), ["e3"], "e3", None),
    ("an earlier one undone", (_alias(1), _alias(2), _undo(3, 1)), ["e2"], "e2", "e1"),
    ("undone by two at once", (_alias(1), _undo(2, 1), _undo(3, 1)), [], None, "e1"),
    ("undone that never was", (_undo(1, 9),), [], None, None),
]


@pytest.mark.parametrize(
    ("edits", "holding", "undo", "redo"), [h[1:] for h in HISTORIES], ids=[h[0] for h in HISTORIES]
)
def test_undoing_and_redoing_are_edits_too(
    edits: tuple[Edit, ...], holding: list[str], undo: str | None, redo: str | None
) -> None:
    """What holds, and what undoing or redoing once more would touch."""
    assert [edit.id for edit in standing(edits)] == holding
    assert (next_undo(edits), next_redo(edits)) == (undo, redo)


def test_teaching_a_word_says_what_kind_of_word() -> None:
    """A phrase where nothing is said of it."""
    assert Teach(id="e1", at="", label="rained-on slate", concept="wet-stone").form == "phrase"
