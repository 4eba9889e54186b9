"""What corrections teach."""

import json
from pathlib import Path
from typing import Any

import pytest

from notesmith.cli import main
from notesmith.errors import MissingError
from notesmith.lexicon import Lexicon
from notesmith.lexicon.folders import Row, read_domain
from notesmith.records import Notes
from notesmith.review import learning
from notesmith.review.applying import corrected
from notesmith.review.corrections import append, corrections_path
from notesmith.review.edits import Confirm, Edit
from notesmith.review.learning import (
    Lesson,
    Reviewed,
    annotation,
    lessons,
    reviewed_in,
    write_annotation,
    write_lessons,
)
from notesmith.review.looks import progress
from notesmith.review.saying import FIELDS, said

from .conftest import CASES, Bench

ANNOTATION = Path(__file__).parents[1] / "test_recordings.py"
CHANGE = {"do": "change", "record": "malty", "set": {"concept": "smoky"}}


def _reviewed(cups: Bench, *told: dict[str, Any]) -> Reviewed:
    edits = cups.edits(list(told))
    notes = corrected(cups.notes, cups.talk, edits)
    return Reviewed(CASES / "cups.vtt", notes, edits, *progress(notes))


def _taught(cups: Bench, *told: dict[str, Any]) -> list[tuple[str, str, str]]:
    learned = lessons([_reviewed(cups, *told)], Lexicon.load())
    return [(lesson.row.concept, lesson.row.label, lesson.row.kind) for lesson in learned]


ADDED = {"kind": "observation", "words": "hot", "sample": "one", "concept": "smoky"}


@pytest.mark.parametrize(
    ("told", "taught"),
    [
        ([], []),
        ([{"do": "change", "record": "malty", "set": {"presence": "absent"}}], []),
        ([CHANGE], [("smoky", "malty", "synonym")]),
        ([CHANGE, {"do": "undo"}], []),
        ([{"do": "change", "record": "malty", "set": {"concept": "malt"}}], []),
        ([{"do": "change", "record": "malty", "set": {"concept": "no-such-thing"}}], []),
        ([{"do": "add", "by": [ADDED]}], [("smoky", "hot", "synonym")]),
        ([{"do": "teach", "label": "wet kerbstone", "concept": "smoky"}], [("smoky", "wet kerbstone", "synonym")]),
        ([{"do": "mend", "heard": "Drink one", "meant": "smoky", "words": "drink one"}],
         [("smoky", "drink one", "misheard")]),
        ([{"do": "mend", "heard": "drink one", "meant": "Quarry Gate", "words": "drink one"}], []),
        ([{"do": "mend", "heard": "sweet", "meant": "smoky", "words": "sweet"}], []),
        ([{"do": "change", "record": "guy one", "set": {"meant": "smoky"}}], [("smoky", "guy one", "misheard")]),
    ],
)  # fmt: skip
def test_corrections_name_what_the_lexicon_lacks(
    told: list[dict[str, Any]], taught: list[tuple[str, str, str]], cups: Bench
) -> None:
    """And only that: what it knows, or what no concept is named for, is no lesson."""
    assert _taught(cups, *told) == taught


def test_what_was_said_more_often_is_offered(cups: Bench) -> None:
    """Where the same words were said to stand for two concepts."""
    told = [{"do": "teach", "label": "wet kerbstone", "concept": concept} for concept in ("malt", "smoky", "smoky")]
    (lesson,) = lessons([_reviewed(cups, *told)], Lexicon.load())
    assert (lesson.row.concept, lesson.times) == ("smoky", 2)


def test_lessons_are_added_to_the_labels_that_are_there(tmp_path: Path) -> None:
    """None of those is lost, and none is written twice."""
    first, second = (Lesson(Row("smoky", label, "synonym", "phrase", "", 0), 1) for label in ("wet kerbstone", "tar"))
    write_lessons([first], tmp_path / "mine")
    assert write_lessons([first], tmp_path / "mine") is None
    write_lessons([first, second], tmp_path / "mine")
    assert [row.label for row in read_domain(tmp_path / "mine").rows] == ["wet kerbstone", "tar"]
    assert Lexicon.load(tmp_path / "mine").look_up("wet kerbstone")


def test_corrected_notes_are_an_annotation(cups: Bench, tmp_path: Path) -> None:
    """With the guidelines' fields and no others, beside their captions and sheet."""
    import importlib.util

    spec = importlib.util.spec_from_file_location("recordings", ANNOTATION)
    assert spec
    assert spec.loader
    recordings = importlib.util.module_from_spec(spec)
    spec.loader.exec_module(recordings)
    written = write_annotation(_reviewed(cups, {"do": "delete", "records": ["malty"]}), tmp_path / "learnt")
    assert [path.name for path in written] == ["cups.vtt", "cups.sheet.json", "cups.gold.json"]
    gold = recordings.Annotation.model_validate_json(written[2].read_text("utf-8"))
    assert "malty" not in [o.term for o in gold.observations]


def test_every_record_has_its_fields_in_an_annotation(small: Notes) -> None:
    """One of every kind."""
    plain = annotation(small)
    assert {name: sorted(plain[name][0]) for name in ("sections", "repairs")} == {
        "sections": ["end", "kind", "sample", "start"], "repairs": ["end", "heard", "meant", "start"],
    }  # fmt: skip


@pytest.fixture
def small() -> Notes:
    """Notes with one of every record."""
    return Notes.model_validate_json((CASES.parent / "notes" / "small.notes.json").read_text("utf-8"))


@pytest.fixture
def shelf(tmp_path: Path, cups: Bench, monkeypatch: pytest.MonkeyPatch) -> Path:
    """A folder with a talk and a correction; listening answers the notes of the cases."""

    def listened(captions: object, sheet: object, edits: tuple[Edit, ...]) -> Notes:
        return corrected(cups.notes, cups.talk, edits)

    monkeypatch.setattr(learning, "listened", listened)
    (tmp_path / "cups.vtt").write_bytes((CASES / "cups.vtt").read_bytes())
    (tmp_path / "cups.mp3").write_bytes(b"no captions")
    (tmp_path / "cups.notes.json").write_text("{}")
    append(corrections_path(tmp_path / "cups.vtt"), *cups.edits([CHANGE]))
    return tmp_path


def _run(monkeypatch: pytest.MonkeyPatch, *arguments: str) -> int:
    monkeypatch.setattr("sys.argv", ["notesmith", "learn", *arguments])
    with pytest.raises(SystemExit) as left:
        main()
    return int(left.value.code or 0)


def test_a_folder_without_corrections_is_told(tmp_path: Path) -> None:
    """With what to do."""
    with pytest.raises(MissingError, match=r"no corrections \(\*\.corrections\.json\) lie there; make some in review"):
        reviewed_in(tmp_path)


def test_corrections_without_captions_are_told(shelf: Path) -> None:
    """A recording is no captions."""
    (shelf / "cups.vtt").unlink()
    with pytest.raises(MissingError, match=r"cups\.corrections\.json: its captions do not lie beside it"):
        reviewed_in(shelf)


def test_what_there_is_to_learn_is_shown_and_nothing_written(
    shelf: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    """Until a folder is named for it."""
    before = sorted(shelf.iterdir())
    assert _run(monkeypatch, str(shelf)) == 0
    shown = capsys.readouterr().out
    assert '1 x "malty" stands for smoky, now for malt' in shown
    assert "1 of 14 looked at, not yet looked through" in shown
    assert sorted(shelf.iterdir()) == before


def test_only_what_was_looked_through_becomes_an_annotation(
    shelf: Path, cups: Bench, monkeypatch: pytest.MonkeyPatch, tmp_path: Path
) -> None:
    """The words are written at once."""
    assert _run(monkeypatch, str(shelf), "--to", str(tmp_path / "learnt")) == 0
    assert [p.name for p in (tmp_path / "learnt").rglob("*.*")] == ["labels.tsv"]
    records = [r for name in FIELDS.values() for r in getattr(cups.notes, name)]
    confirmed = [Confirm(id=f"c{n}", at="", record=said(cups.notes, cups.talk, r)) for n, r in enumerate(records)]
    append(corrections_path(shelf / "cups.vtt"), *confirmed)
    assert _run(monkeypatch, str(shelf), "--to", str(tmp_path / "learnt")) == 0
    gold = json.loads((tmp_path / "learnt" / "recordings" / "cups.gold.json").read_text())
    assert len(gold["observations"]) == len(cups.notes.observations)
