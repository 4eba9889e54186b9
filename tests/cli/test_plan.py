"""`notesmith plan`: what is written, what is said, and with which exit status."""

from collections.abc import Callable
from pathlib import Path

import pytest

from notesmith.sheet import read_sheet

Command = Callable[..., int]
Capture = pytest.CaptureFixture[str]


@pytest.fixture
def plan(notesmith: Command) -> str:
    """A plan in the folder, as the template is."""
    assert notesmith("plan", "new", "--output", "tea.plan.toml") == 0
    return "tea.plan.toml"


@pytest.mark.parametrize("command", ["new", "methods", "draw", "reveal", "rounds"])
def test_every_command_tells_what_it_is_for(command: str, notesmith: Command, capsys: Capture) -> None:
    """--help everywhere."""
    assert notesmith("plan", command, "--help") == 0
    assert f"Usage: notesmith plan {command}" in capsys.readouterr().out


def test_a_plan_is_drawn_and_revealed(plan: str, notesmith: Command, tmp_path: Path, capsys: Capture) -> None:
    """From the template to a sheet with its products; the commitment is said, and how far the order is balanced."""
    assert notesmith("plan", "draw", plan, "--to", "out", "--paper", "letter") == 0
    told = capsys.readouterr()
    assert told.out.split() == [
        f"out/tea.{kind}" for kind in ("sheet.toml", "key.json", "pouring.html", "tasting.html")
    ]
    assert "balanced in part only" in told.err
    assert read_sheet(tmp_path / "out/tea.sheet.toml").commitment in told.err
    assert "size: letter" in (tmp_path / "out/tea.tasting.html").read_text("utf-8")
    assert notesmith("plan", "reveal", "out/tea.sheet.toml", "--key", "out/tea.key.json") == 0
    assert 'product = "the first tea"' in capsys.readouterr().out


def test_a_changed_key_is_refused(plan: str, notesmith: Command, tmp_path: Path, capsys: Capture) -> None:
    """In a line, with the exit status of sheets."""
    assert notesmith("plan", "draw", plan, "--to", ".") == 0
    key = tmp_path / "tea.key.json"
    key.write_text(key.read_text("utf-8").replace("the first", "the finest"), "utf-8")
    capsys.readouterr()
    assert notesmith("plan", "reveal", "tea.sheet.toml", "--key", "tea.key.json") == 4
    assert capsys.readouterr().err.count("\n") == 1


def test_a_drawn_plan_is_not_replaced_unasked(plan: str, notesmith: Command) -> None:
    """A key that is gone can prove nothing."""
    assert notesmith("plan", "draw", plan, "--to", ".") == 0
    assert notesmith("plan", "draw", plan, "--to", ".") == 6
    assert notesmith("plan", "draw", plan, "--to", ".", "--force") == 0


def test_methods_and_rounds_are_told(notesmith: Command, tmp_path: Path, capsys: Capture) -> None:
    """A line a method; the games of a contest."""
    assert notesmith("plan", "methods") == 0
    assert "iso-3103-large" in capsys.readouterr().out
    (tmp_path / "cup.toml").write_text('kind = "knock-out"\nentrants = ["a", "b", "c"]\n')
    assert notesmith("plan", "rounds", "cup.toml") == 0
    assert "a has a bye" in capsys.readouterr().out
