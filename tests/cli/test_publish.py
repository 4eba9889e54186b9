"""`notesmith publish`: where things go, what is told, and the exit status of a fault."""

import shutil
from collections.abc import Callable
from pathlib import Path

import pytest

from tests.cli.conftest import SMALL

Command = Callable[..., int]
Capture = pytest.CaptureFixture[str]


@pytest.fixture
def taken(tmp_path: Path) -> Path:
    """Notes in the folder."""
    return Path(shutil.copy(SMALL, tmp_path / "attic.notes.json"))


def test_what_is_written_is_told(notesmith: Command, taken: Path, capsys: Capture) -> None:
    """A path a line, in a folder that is made where it is missing."""
    assert notesmith("publish", "attic.notes.json", "--to", "new/episode", "--only", "clips") == 0
    out, err = capsys.readouterr()
    assert out.splitlines() == ["new/episode/attic.clips.txt", "new/episode/attic.clips.otio"]
    assert err == "notesmith: left out clips-concat: names the recording; give it with --media\n"
    assert Path("new/episode/attic.clips.txt").read_text().startswith("0:0")


def test_the_list_says_what_there_is(notesmith: Command, capsys: Capture) -> None:
    """Name, file and meaning; without notes."""
    assert notesmith("publish", "--list") == 0
    lines = capsys.readouterr().out.splitlines()
    assert len(lines) > 20
    assert any(line.split()[:2] == ["captions", "NAME.corrected.*"] for line in lines)
    assert any(line.endswith("(needs notesmith[otio])") for line in lines)


@pytest.mark.parametrize(
    ("arguments", "status"),
    [
        ([], 2),
        (["attic.notes.json"], 2),
        (["attic.notes.json", "--to", "out", "--length", "5"], 2),
        (["none.json", "--to", "out"], 3),
        (["attic.notes.json", "--to", "out", "--captions", "none.vtt"], 3),
        (["attic.notes.json", "--to", "out", "--only", "nonsense"], 6),
        (["attic.notes.json", "--to", "attic.notes.json", "--only", "clips"], 6),
        (["attic.notes.json", "--to", "out", "--only", "captions"], 10),
        (["attic.notes.json", "--to", "out", "--only", "media"], 10),
        (["attic.notes.json", "--to", "out", "--media", "none.mp4"], 11),
    ],
)
def test_a_fault_has_its_exit_status(
    arguments: list[str], status: int, notesmith: Command, taken: Path, capsys: Capture
) -> None:
    """As documented, in one line, and nothing is written."""
    assert notesmith("publish", *arguments) == status
    out, err = capsys.readouterr()
    assert out == ""
    assert "Traceback" not in err
    assert status == 2 or len(err.splitlines()) == 1
    assert not Path("out").exists()


def test_a_file_is_replaced_only_when_asked(notesmith: Command, taken: Path) -> None:
    """As everywhere."""
    command = ("publish", "attic.notes.json", "--to", "out", "--only", "clips")
    assert [notesmith(*command), notesmith(*command), notesmith(*command, "--force")] == [0, 6, 0]


def test_help_tells_what_it_is_for(notesmith: Command, capsys: Capture) -> None:
    """With an example."""
    assert notesmith("publish", "--help") == 0
    assert "notesmith publish talk.notes.json --to episode/" in capsys.readouterr().out
