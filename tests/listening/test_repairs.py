"""What was meant?"""

import tomllib
from pathlib import Path
from typing import Any

import pytest

from notesmith.records import Sheet, SheetSample
from tests.listening.conftest import Hear

CASES: list[dict[str, Any]] = tomllib.loads(
    (Path(__file__).parent.parent / "cases" / "listening" / "repairs.toml").read_text("utf-8")
)["case"]
CLEAN = Path(__file__).parent.parent / "cases" / "listening" / "clean.txt"


def sheet_of(names: list[str]) -> Sheet:
    """A sheet whose samples are called by these names alone."""
    return Sheet(samples=tuple(SheetSample(id=name) for name in names))


def test_nothing_is_mended_where_nothing_tells(hear: Hear) -> None:
    """Talk without a trade word or a name comes out as it went in."""
    assert hear("Hello.", sheet_of(["first"])).mendings == []


@pytest.mark.parametrize("case", CASES, ids=lambda case: case["why"])
def test_what_is_mended(hear: Hear, case: dict[str, Any]) -> None:
    """Each case's misprints are mended, and nothing else."""
    heard = hear(case["talk"], sheet_of(case["names"]))
    assert [f"{heard.said(m.start, m.end)} -> {m.meant}" for m in heard.mendings] == case["mended"]


def test_words_read_as_meant(hear: Hear) -> None:
    """The first words of a mended stretch hold what was meant, the rest nothing."""
    heard = hear("So the marrow bee is sweet.", sheet_of(["Marrowby"]))
    mending = heard.mendings[0]
    assert [w.norm for w in heard.words[mending.start : mending.end]] == ["marrowby", ""]
    assert mending.sample == "Marrowby"


@pytest.mark.parametrize("plain", [False, True], ids=["punctuated", "unpunctuated"])
def test_right_talk_is_left_alone(hear: Hear, plain: bool) -> None:
    """Several minutes of tasting that are printed right get no repair."""
    text = CLEAN.read_text("utf-8")
    if plain:
        text = "".join(c for c in text.lower() if c not in ".,?!;:")
    names = ["Marrowby", "Thistlecombe", "otter", "silver", "copper"]
    assert [(m.meant, m.rule) for m in hear(text, sheet_of(names)).mendings] == []
