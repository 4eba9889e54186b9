"""The command `review`: what it refuses, each in one line, before anything is served."""

import json
import subprocess
import sys
from pathlib import Path

import pytest

from notesmith.review.media import beside, kind_of
from notesmith.review.server import listen
from tests.review.page.conftest import Recording


def refused(*arguments: str | Path) -> tuple[int, str]:
    """The exit status and what is said."""
    command = [sys.executable, "-m", "notesmith", "review", "--no-browser", *map(str, arguments)]
    told = subprocess.run(command, check=False, capture_output=True, text=True, timeout=60)
    assert told.stdout == ""
    return told.returncode, told.stderr.strip()


def test_nothing_to_review_is_refused() -> None:
    """Either notes or a folder of them."""
    assert refused()[0] == 2


def test_notes_that_are_not_there_are_refused(tmp_path: Path) -> None:
    """The line names the file."""
    status, told = refused(tmp_path / "none.notes.json")
    assert (status, told.count("\n")) == (3, 0)
    assert "none.notes.json" in told


def test_an_empty_folder_is_refused(tmp_path: Path) -> None:
    """There is nothing in the queue."""
    assert refused("--queue", tmp_path)[0] == 10


def test_notes_without_their_captions_are_refused(recording: Recording) -> None:
    """The line tells how to name them."""
    recording.captions.unlink()
    status, told = refused(recording.notes)
    assert status == 10
    assert told.endswith("name them with --captions")


def test_captions_of_another_recording_are_refused(recording: Recording) -> None:
    """The notes quote what does not stand there."""
    text = recording.captions.read_text("utf-8")
    recording.captions.write_text(text.replace("the", "a", 1), "utf-8")
    assert refused(recording.notes)[0] == 3


def test_a_recording_that_does_not_play_is_refused(recording: Recording) -> None:
    """A text is no recording."""
    status, told = refused(recording.notes, "--media", recording.captions)
    assert (status, "no recording that a browser plays" in told) == (11, True)


def test_corrections_that_do_not_parse_are_refused(recording: Recording) -> None:
    """They are left as they are."""
    path = recording.folder / "pegs.corrections.json"
    path.write_text("[{]", "utf-8")
    assert refused(recording.notes)[0] == 3
    assert path.read_text("utf-8") == "[{]"


def test_a_port_that_is_taken_is_refused(recording: Recording) -> None:
    """The line says which."""
    with listen() as taken:
        taken.listen()
        port = taken.getsockname()[1]
        status, told = refused(recording.notes, "--port", str(port))
    assert (status, str(port) in told) == (6, True)


def test_notes_that_hold_corrections_are_listened_to_anew(recording: Recording) -> None:
    """Corrections are made to what was heard, so that undoing one brings back what was there before."""
    from notesmith.review.opening import open_notes
    from notesmith.review.wishes import edit_of

    sitting = open_notes(recording.notes)
    first = sitting.state.notes.observations[0]
    sitting.make(edit_of(sitting.state, {"do": "change", "id": first.id, "field": "sample", "value": "white"}))
    recording.notes.write_text(sitting.state.notes.model_dump_json(), "utf-8")
    again = open_notes(recording.notes)
    assert again.state.notes.observations[0].sample == "white"
    assert again.undo()
    assert again.state.notes.observations[0].sample == first.sample


@pytest.mark.parametrize("ending", [".mp3", ".MP4", ".webm", ".opus", ".wav", ".mkv"])
def test_what_browsers_play_is_known_by_its_ending(ending: str, tmp_path: Path) -> None:
    """Whatever the case of its letters."""
    (tmp_path / f"talk{ending}").touch()
    assert kind_of(tmp_path / f"talk{ending}").split("/")[0] in ("audio", "video")


def test_of_two_recordings_beside_the_captions_none_is_taken(tmp_path: Path) -> None:
    """Which one is meant has to be said."""
    (tmp_path / "talk.mp3").touch()
    assert beside(tmp_path / "talk.vtt") == tmp_path / "talk.mp3"
    (tmp_path / "talk.mp4").touch()
    assert beside(tmp_path / "talk.vtt") is None


def test_help_is_there_without_the_server() -> None:
    """The command line imports no web package before a page is asked for."""
    script = (
        "import sys, notesmith.cli.app as a; import json;"
        "print(json.dumps([m for m in ('starlette', 'uvicorn', 'jinja2', 'spacy') if m in sys.modules]))"
    )
    told = subprocess.run([sys.executable, "-c", script], check=True, capture_output=True, text=True)
    assert json.loads(told.stdout) == []
