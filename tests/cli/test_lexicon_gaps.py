"""`notesmith lexicon gaps`: which files it reads, where the answer goes, and how a fault is told."""

import shutil
from collections.abc import Callable
from pathlib import Path

import pytest

from tests.cli.conftest import SMALL

Command = Callable[..., int]
Capture = pytest.CaptureFixture[str]


@pytest.fixture
def taken(tmp_path: Path) -> Path:
    """Notes in the folder, with one open descriptor."""
    return Path(shutil.copy(SMALL, tmp_path / "attic.notes.json"))


def test_a_table_is_the_default(notesmith: Command, taken: Path, capsys: Capture) -> None:
    """Over all files."""
    assert notesmith("lexicon", "gaps", "attic.notes.json", "attic.notes.json") == 0
    out, err = capsys.readouterr()
    assert " ".join(out.splitlines()[2].split()) == "2 wet | slate slate 1.00 attic.vtt 1:02:05 like a wet | slate"
    assert err == ""


def test_rows_go_into_a_folder_of_ones_own(notesmith: Command, taken: Path, tmp_path: Path, capsys: Capture) -> None:
    """They pass the check, and with them nothing is open."""
    (tmp_path / "mine").mkdir()
    assert notesmith("lexicon", "gaps", "attic.notes.json", "--format", "tsv", "--output", "mine/labels.tsv") == 0
    assert notesmith("lexicon", "check", "mine") == 0
    assert capsys.readouterr().out == "0 errors, 0 warnings\n"
    assert notesmith("lexicon", "gaps", "attic.notes.json", "--lexicon", "mine") == 0
    assert capsys.readouterr().out == "No open descriptors.\n"


def test_a_label_file_is_not_replaced_unasked(notesmith: Command, taken: Path, tmp_path: Path) -> None:
    """A lexicon is work."""
    (tmp_path / "labels.tsv").write_text("mine")
    assert notesmith("lexicon", "gaps", "attic.notes.json", "--format", "tsv", "--output", "labels.tsv") == 6
    assert (tmp_path / "labels.tsv").read_text() == "mine"


def test_one_bad_file_is_told_and_the_others_are_read(notesmith: Command, taken: Path, capsys: Capture) -> None:
    """One line each; the exit status tells that the list is not whole."""
    assert notesmith("lexicon", "gaps", "none.json", "attic.notes.json", ".") == 3
    out, err = capsys.readouterr()
    assert "wet | slate" in out
    assert [line.split(": ")[:3] for line in err.splitlines()] == [
        ["notesmith", "none.json", "cannot be read"],
        ["notesmith", ".", "cannot be read"],
    ]


@pytest.mark.parametrize(
    ("arguments", "status"),
    [
        ([], 2),
        (["attic.notes.json", "--format", "csv"], 2),
        (["talk.vtt"], 3),
        (["attic.notes.json", "--lexicon", "none"], 5),
        (["attic.notes.json", "--output", "none/labels.tsv"], 6),
    ],
)
def test_a_fault_has_its_exit_status(
    arguments: list[str], status: int, notesmith: Command, taken: Path, talk: Path, capsys: Capture
) -> None:
    """As documented, with nothing printed but the fault."""
    assert notesmith("lexicon", "gaps", *arguments) == status
    out, err = capsys.readouterr()
    assert out == ""
    assert "Traceback" not in err


def test_help_tells_what_it_is_for(notesmith: Command, capsys: Capture) -> None:
    """With an example."""
    assert notesmith("lexicon", "gaps", "--help") == 0
    assert "notesmith lexicon gaps notes/*.notes.json" in capsys.readouterr().out
