"""Which captions belong to which notes."""

from pathlib import Path

import pytest

from notesmith.errors import CaptionError, MediaError, NotesFileError
from notesmith.publishing import gather
from notesmith.publishing.json_text import render
from notesmith.records import Notes, Repair

VTT = "WEBVTT\n\n00:01.000 --> 00:04.000\nThe guy one is hot.\n"


@pytest.fixture
def notes(empty: Notes, tmp_path: Path) -> Path:
    """Notes of a talk, in a folder."""
    repair = Repair(id="r", start=1.0, end=4.0, quote="guy one", span=(4, 11), confidence=1, why=(), heard="guy one",
                    meant="gaiwan")  # fmt: skip
    path = tmp_path / "talk.notes.json"
    path.write_text(render(empty.model_copy(update={"transcript": "talk.vtt", "repairs": (repair,)})))
    return path


def test_captions_beside_the_notes_are_found(notes: Path) -> None:
    """By the name that the notes tell."""
    (notes.parent / "talk.vtt").write_text(VTT)
    episode = gather(notes)
    assert episode.captions
    assert episode.source == VTT.encode()


def test_captions_in_this_folder_are_found(notes: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """Where none lie beside the notes."""
    (tmp_path / "here").mkdir()
    monkeypatch.chdir(tmp_path / "here")
    (tmp_path / "here" / "talk.vtt").write_text(VTT)
    assert gather(notes).captions


def test_without_captions_the_notes_are_enough(notes: Path) -> None:
    """Most of what is published needs no more."""
    assert gather(notes).captions is None


def test_captions_of_another_talk_do_not_count(notes: Path) -> None:
    """Though they have the right name."""
    (notes.parent / "talk.vtt").write_text(VTT.replace("The guy", "A guy"))
    assert gather(notes).captions is None


def test_captions_of_another_talk_are_refused_where_they_are_named(notes: Path, tmp_path: Path) -> None:
    """In one line that says why."""
    (tmp_path / "other.vtt").write_text(VTT.replace("The guy", "A guy"))
    with pytest.raises(CaptionError, match=r"other\.vtt: the notes of talk\.vtt quote what does not stand there; name"):
        gather(notes, captions=tmp_path / "other.vtt")


def test_what_holds_no_notes_is_refused(tmp_path: Path) -> None:
    """As everywhere."""
    (tmp_path / "a.json").write_text("{}")
    with pytest.raises(NotesFileError, match="holds no notes"):
        gather(tmp_path / "a.json")


def test_a_recording_that_is_not_there_is_refused(notes: Path) -> None:
    """Before anything is made."""
    with pytest.raises(MediaError, match=r"none\.mp4: is no file; check the name"):
        gather(notes, media=notes.parent / "none.mp4")
