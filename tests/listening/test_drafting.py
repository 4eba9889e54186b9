"""A sheet proposed from the talk alone, and what is done where there is none."""

import tomllib
from pathlib import Path
from time import process_time
from typing import Any

import pytest

from notesmith.errors import NoTastingError
from notesmith.lexicon import Lexicon
from notesmith.listening import draft_sheet, take_notes
from notesmith.listening.drafting import draft_from_talk
from notesmith.records import Sheet, SheetSample
from notesmith.sheet import read_sheet, sheet_to_toml
from notesmith.transcript import Captions, Talk, parse_captions

ROOT = Path(__file__).parents[2]
CASES = tomllib.loads((ROOT / "tests/cases/listening/drafting.toml").read_text("utf-8"))["case"]


def _captions(talk: str, name: str = "talk.txt") -> Captions:
    lines = [f"[{k // 12}:{5 * k % 60:02}] {line}" for k, line in enumerate(talk.strip().splitlines())]
    return parse_captions("\n".join(lines).encode(), name)


def _draft(talk: str) -> Sheet:
    return draft_from_talk(Talk.from_captions(_captions(talk)), Lexicon.load())


@pytest.mark.parametrize("case", CASES, ids=[case["why"] for case in CASES])
def test_case(case: dict[str, Any]) -> None:
    """Each case's draft says what the case file says of it."""
    sheet = _draft(case["talk"])
    drafted = {
        "samples": [sample.id for sample in sheet.samples],
        "aliases": [alias for sample in sheet.samples for alias in sample.aliases],
        "preparations": [preparation.id for preparation in sheet.preparations],
        "tasters": list(sheet.tasters),
        "category": sheet.category,
        "blind": sheet.blind,
    }
    asked = {field: value for field, value in case.items() if field in drafted}
    assert {field: drafted[field] for field in asked} == asked


def test_no_words_at_all() -> None:
    """A talk that says nothing has one sample, and nothing said of it."""
    assert _draft("Okay.") == Sheet(samples=(SheetSample(id="1"),))


@pytest.mark.parametrize("case", CASES, ids=[case["why"] for case in CASES])
def test_a_draft_is_a_sheet_that_can_be_read_back(case: dict[str, Any], tmp_path: Path) -> None:
    """What is drafted breaks no rule of sheets: it can be written, corrected and given back."""
    sheet = _draft(case["talk"])
    (tmp_path / "talk.sheet.toml").write_text(sheet_to_toml(sheet), "utf-8")
    assert read_sheet(tmp_path / "talk.sheet.toml") == sheet


def test_speakers_are_the_tasters() -> None:
    """Where captions tell who speaks these taste, but no `Speaker 1`."""
    text = "WEBVTT\n\n00:01.000 --> 00:02.000\n<v Oswin>Smoky.\n\n00:03.000 --> 00:04.000\n<v Speaker 1>Sweet.\n"
    talk = Talk.from_captions(parse_captions(text.encode(), "talk.vtt"))
    assert draft_from_talk(talk, Lexicon.load()).tasters == ("Oswin",)


def test_notes_without_a_sheet_use_the_draft() -> None:
    """The notes say that their sheet was drafted, and name its samples."""
    captions = _captions(CASES[0]["talk"])
    notes = take_notes(captions)
    assert (notes.sheet_drafted, notes.samples) == (True, ("K", "M"))
    assert draft_sheet(captions) == notes.sheet


def test_nothing_tasted() -> None:
    """A talk about something else is refused in one line that names the file."""
    talk = """
    The committee will now consider the budget. The figures went out on Monday.
    There is a long tail of old bills, which is a hard problem, and a bit harsh on the members.
    """
    with pytest.raises(NoTastingError, match="nothing is tasted") as caught:
        take_notes(_captions(talk, "budget.txt"))
    assert "budget.txt" in str(caught.value)


def test_nothing_said_of_a_sheet() -> None:
    """With a sheet too, a talk in which no sample is named and nothing perceived is refused."""
    sheet = Sheet(samples=(SheetSample(id="weasel"),))
    with pytest.raises(NoTastingError):
        take_notes(_captions("The figures went out on Monday."), sheet)


def test_a_sample_named_is_enough() -> None:
    """Where a sample is named there is something to be noted, though nothing is perceived."""
    sheet = Sheet(samples=(SheetSample(id="weasel"),))
    assert take_notes(_captions("The weasel is twelve euros."), sheet).samples == ("weasel",)


@pytest.mark.benchmark
def test_an_hour_is_drafted_at_once() -> None:
    """A draft of 11,000 words takes less than a tenth of a second."""
    talk = Talk.from_captions(_captions("\n".join(case["talk"].strip() for case in CASES * 30)[:60_000]))
    lexicon = Lexicon.load()
    assert len(talk.words) > 10_000
    assert min(_seconds(talk, lexicon) for _ in range(4)) < 0.1


def _seconds(talk: Talk, lexicon: Lexicon) -> float:
    before = process_time()
    draft_from_talk(talk, lexicon)
    return process_time() - before
