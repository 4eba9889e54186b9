"""Colours and width."""

import sys

import pytest

from notesmith.cli.speaking import PIPE_WIDTH, colour, width


@pytest.mark.parametrize(
    ("terminal", "environment", "coloured"),
    [
        (True, {}, True),
        (True, {"NO_COLOR": ""}, True),
        (True, {"NO_COLOR": "1"}, False),
        (True, {"TERM": "dumb"}, False),
        (False, {}, False),
    ],
)
def test_colours_are_for_terminals_that_want_them(
    terminal: bool, environment: dict[str, str], coloured: bool, monkeypatch: pytest.MonkeyPatch
) -> None:
    """NO_COLOR counts when it says anything."""
    monkeypatch.delenv("NO_COLOR", raising=False)
    monkeypatch.setenv("TERM", "xterm")
    for name, value in environment.items():
        monkeypatch.setenv(name, value)
    monkeypatch.setattr(sys.stdout, "isatty", lambda: terminal, raising=False)
    assert colour() == coloured


def test_a_file_is_as_wide_as_any_other(monkeypatch: pytest.MonkeyPatch) -> None:
    """COLUMNS tells the width; without it and without a terminal it is fixed."""
    monkeypatch.setenv("COLUMNS", "44")
    assert width() == 44
    monkeypatch.delenv("COLUMNS")
    monkeypatch.setattr(sys, "__stdout__", None)
    assert width() == PIPE_WIDTH
