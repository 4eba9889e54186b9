"""The smaller commands."""

import json
from collections.abc import Callable
from pathlib import Path

import pytest

from notesmith import __version__
from notesmith.sheet import read_sheet

Command = Callable[..., int]
Capture = pytest.CaptureFixture[str]


def test_the_version_is_told(notesmith: Command, capsys: Capture) -> None:
    """One line, for a report of a fault."""
    assert notesmith("--version") == 0
    assert capsys.readouterr().out == f"notesmith {__version__}\n"


@pytest.mark.parametrize("command", [[], ["notes"], ["sheet", "new"], ["sheet", "draft"], ["lexicon"], ["schema"]])
def test_every_command_tells_what_it_is_for(command: list[str], notesmith: Command, capsys: Capture) -> None:
    """--help everywhere."""
    assert notesmith(*command, "--help") == 0
    assert "Usage: notesmith" in capsys.readouterr().out


def test_a_new_sheet_can_be_read(notesmith: Command, tmp_path: Path) -> None:
    """The template is a sheet."""
    assert notesmith("sheet", "new", "--output", "a.sheet.toml") == 0
    assert read_sheet(tmp_path / "a.sheet.toml").samples


def test_a_sheet_is_not_replaced_unasked(notesmith: Command, tmp_path: Path) -> None:
    """A sheet filled in is work."""
    (tmp_path / "a.sheet.toml").write_text("mine")
    assert notesmith("sheet", "new", "--output", "a.sheet.toml") == 6
    assert (tmp_path / "a.sheet.toml").read_text() == "mine"


def test_a_draft_is_a_sheet(notesmith: Command, talk: Path, tmp_path: Path) -> None:
    """What is drafted from the talk can be corrected and given back."""
    assert notesmith("sheet", "draft", "talk.vtt", "--output", "talk.sheet.toml") == 0
    assert [sample.id for sample in read_sheet(tmp_path / "talk.sheet.toml").samples] == ["A"]


def test_the_schema_is_json(notesmith: Command, capsys: Capture) -> None:
    """Printed whole."""
    assert notesmith("schema") == 0
    assert json.loads(capsys.readouterr().out)["title"] == "Notes"
