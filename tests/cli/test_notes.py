"""`notesmith notes`: where the notes go, and how a fault is told."""

import json
import re
import sys
from collections.abc import Callable
from pathlib import Path

import pytest

Command = Callable[..., int]
Capture = pytest.CaptureFixture[str]


@pytest.fixture
def weather(tmp_path: Path) -> Path:
    """Captions in which nothing is tasted."""
    path = tmp_path / "weather.vtt"
    path.write_text("WEBVTT\n\n00:01.000 --> 00:04.000\nFine weather.\n")
    return path


def test_a_table_is_the_default(notesmith: Command, talk: Path, capsys: Capture) -> None:
    """Without options the notes are shown to be read."""
    assert notesmith("notes", "talk.vtt") == 0
    out, err = capsys.readouterr()
    assert "brick red 0:12 Ana" in out
    assert err == ""


def test_json_is_whole_on_the_output(notesmith: Command, talk: Path, capsys: Capture) -> None:
    """What is printed is one JSON document."""
    assert notesmith("notes", "talk.vtt", "--format", "json") == 0
    assert json.loads(capsys.readouterr().out)["samples"] == ["A", "B"]


def test_the_sheet_beside_the_captions_is_used(notesmith: Command, talk: Path, tmp_path: Path, capsys: Capture) -> None:
    """Nobody has to name it."""
    (tmp_path / "talk.sheet.toml").write_text('title = "beside"\n[[samples]]\nid = "A"\n')
    assert notesmith("notes", "talk.vtt") == 0
    assert capsys.readouterr().out.startswith("beside\n")


def test_a_named_sheet_goes_first(notesmith: Command, talk: Path, tmp_path: Path, capsys: Capture) -> None:
    """The sheet beside the captions is not even read then."""
    (tmp_path / "talk.sheet.toml").write_text("broken [")
    (tmp_path / "other.json").write_text('{"title": "named", "samples": [{"id": "A"}]}')
    assert notesmith("notes", "talk.vtt", "--sheet", "other.json") == 0
    assert capsys.readouterr().out.startswith("named\n")


@pytest.mark.parametrize(
    ("arguments", "status", "says"),
    [
        (["none.vtt"], 3, "none.vtt"),
        (["talk.vtt", "--sheet", "none.toml"], 4, "none.toml: cannot be read"),
        (["talk.vtt", "--output", "talk.vtt"], 6, "talk.vtt: is there already; give --force"),
        (["talk.vtt", "--output", "none/x.txt"], 6, "none/x.txt: cannot be written"),
        (["talk.vtt", "--output", "x", "--output-dir", "."], 6, "leave one out"),
        (["talk.vtt", "--output-dir", "weather.vtt"], 6, "the folder cannot be made"),
        (["talk.vtt", "weather.vtt", "--output", "x"], 6, "give --output-dir"),
        (["talk.vtt", "weather.vtt", "--format", "json"], 6, "give --output-dir"),
        (["talk.vtt", "talk.vtt", "--output-dir", "."], 6, "would both be"),
        (["weather.vtt"], 7, "nothing is tasted"),
    ],
)
def test_a_fault_is_one_line_and_an_exit_status(
    arguments: list[str], status: int, says: str, notesmith: Command, talk: Path, weather: Path, capsys: Capture
) -> None:
    """No traceback, nothing on the output, one line that tells what to do."""
    assert notesmith("notes", *arguments) == status
    out, err = capsys.readouterr()
    assert out == ""
    assert re.fullmatch(r"notesmith: .*\n", err)
    assert says in err


def test_a_fault_among_several_stops_none_of_the_others(
    notesmith: Command, talk: Path, weather: Path, tmp_path: Path, capsys: Capture
) -> None:
    """The first fault gives the exit status, the rest is done."""
    assert notesmith("notes", "weather.vtt", "none.vtt", "talk.vtt", "--output-dir", ".", "--format", "csv") == 7
    assert len(capsys.readouterr().err.splitlines()) == 2
    assert [path.name for path in tmp_path.glob("*.csv")] == ["talk.notes.csv"]


@pytest.mark.parametrize(("form", "name"), [("json", "json"), ("csv", "csv"), ("markdown", "md"), ("table", "txt")])
def test_a_folder_takes_notes_named_by_form(
    form: str, name: str, notesmith: Command, talk: Path, tmp_path: Path
) -> None:
    """NAME.notes and the suffix that other programs know."""
    assert notesmith("notes", "talk.vtt", "--format", form, "--output-dir", ".") == 0
    assert (tmp_path / f"talk.notes.{name}").read_text()


def test_notes_in_a_folder_are_replaced_only_with_force(notesmith: Command, talk: Path, tmp_path: Path) -> None:
    """A second run must not wipe out what was corrected by hand."""
    (tmp_path / "talk.notes.md").write_text("corrected")
    arguments = ["notes", "talk.vtt", "--format", "markdown", "--output-dir", "."]
    assert notesmith(*arguments) == 6
    assert (tmp_path / "talk.notes.md").read_text() == "corrected"
    assert notesmith(*arguments, "--force") == 0
    assert (tmp_path / "talk.notes.md").read_text().startswith("# ")


def test_a_missing_folder_is_made(notesmith: Command, talk: Path, tmp_path: Path) -> None:
    """The folder of the notes need not be there."""
    assert notesmith("notes", "talk.vtt", "--output-dir", "new/notes") == 0
    assert (tmp_path / "new" / "notes" / "talk.notes.txt").is_file()


def test_several_tables_follow_one_another(notesmith: Command, talk: Path, tmp_path: Path, capsys: Capture) -> None:
    """Tables and pages may share the terminal."""
    (tmp_path / "again.vtt").write_text(talk.read_text())
    assert notesmith("notes", "talk.vtt", "again.vtt") == 0
    assert capsys.readouterr().out.count("Two jars from the attic") == 2


def test_a_bar_is_drawn_only_beside_files(
    notesmith: Command, talk: Path, tmp_path: Path, capsys: Capture, monkeypatch: pytest.MonkeyPatch
) -> None:
    """Among printed notes it would wipe out a line of them."""
    (tmp_path / "again.vtt").write_text(talk.read_text())
    monkeypatch.setattr(sys.stderr, "isatty", lambda: True)
    assert notesmith("notes", "talk.vtt", "again.vtt") == 0
    assert capsys.readouterr().err == ""
    monkeypatch.setattr(sys.stderr, "isatty", lambda: True)
    assert notesmith("notes", "talk.vtt", "again.vtt", "--output-dir", ".") == 0
    assert "Taking notes" in capsys.readouterr().err
