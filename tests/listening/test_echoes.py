"""Words that may call a sample."""

import tomllib
from pathlib import Path
from typing import Any

import pytest

from notesmith.listening.echoes import find_echoes
from notesmith.records import Sheet, SheetSample
from tests.listening.conftest import Hear

CASES = tomllib.loads((Path(__file__).parents[1] / "cases" / "echoes.toml").read_text("utf-8"))["case"]


@pytest.mark.parametrize("case", CASES, ids=lambda case: case["why"])
def test_echoes(case: dict[str, Any], hear: Hear) -> None:
    """A word calls the one sample that it belongs to, and none where it belongs to several."""
    samples = tuple(SheetSample(id=name, aliases=tuple(others)) for name, *others in case["samples"])
    heard = hear(f"[0:00] {case['says']}", Sheet(samples=samples))
    found = [[heard.words[echo.at].norm, echo.sample, echo.kind] for echo in find_echoes(heard)]
    assert found == case["echoes"]


def test_no_words_echo_nothing(hear: Hear) -> None:
    """A sheet without a word of it said has no echoes."""
    assert find_echoes(hear("[0:00] Hello.", Sheet(samples=(SheetSample(id="red"),)))) == []
