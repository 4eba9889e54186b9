"""From a plan to the standings: drawn, sealed, tasted on a recording, noted, revealed, weighed and counted."""

from dataclasses import dataclass
from pathlib import Path

import pytest

from notesmith.errors import SheetError
from notesmith.evidence.results import weigh
from notesmith.jobs import notes_of
from notesmith.notes_file import read_notes
from notesmith.planning.files import draw_files, revealed, told_rounds
from notesmith.planning.key import read_key
from notesmith.publishing.json_text import render
from notesmith.records import Notes
from notesmith.sheet import read_sheet

TALK = (Path(__file__).parents[1] / "cases" / "planning" / "story.txt").read_text("utf-8")
HILL, LAKE, MOOR = "Spring oolong of the hill", "Winter oolong of the lake", "Roasted oolong of the moor"
PLAN = f"""
title = "Two oolongs"
category = "oolong tea"
tasters = ["Ana"]
products = [{{ name = "{HILL}" }}, {{ name = "{LAKE}" }}]
preparations = [{{ id = "standard", method = "iso-3103-small" }}]
"""


@dataclass(frozen=True)
class Episode:
    """A recorded tasting: its folder, and its codes and products in the order of serving."""

    folder: Path
    codes: tuple[str, ...]
    products: tuple[str, ...]
    notes: Notes
    """Taken with the sealed sheet, and written beside it."""

    def opened(self) -> Path:
        """The notes with the products filled in."""
        path = self.folder / "open.notes.json"
        path.write_text(revealed(self.folder / "tea.notes.json", self.folder / "tea.key.json"), "utf-8")
        return path


@pytest.fixture(scope="module")
def episode(tmp_path_factory: pytest.TempPathFactory) -> Episode:
    """A plan drawn into a folder, and the invented recording of its tasting."""
    folder = tmp_path_factory.mktemp("story")
    (folder / "tea.plan.toml").write_text(PLAN, "utf-8")
    draw_files(folder / "tea.plan.toml", folder, "A4", seed="a tin of buttons", after=(), force=False)
    codes = read_sheet(folder / "tea.sheet.toml").servings[0].order
    key = {sample.id: sample.product or "" for sample in read_key(folder / "tea.key.json").samples}
    products = tuple(key[code] for code in codes)
    words = TALK.format(first=codes[0], second=codes[1], first_product=products[0], second_product=products[1])
    (folder / "tea.vtt").write_text(captions(words.splitlines()), "utf-8")
    notes = notes_of(folder / "tea.vtt")
    (folder / "tea.notes.json").write_text(render(notes), "utf-8")
    return Episode(folder, codes, products, notes)


def captions(lines: list[str]) -> str:
    """The lines as WebVTT, six seconds each."""
    cues = [f"{clock(6 * number)} --> {clock(6 * number + 5)}\n{line}\n" for number, line in enumerate(lines)]
    return "WEBVTT\n\n" + "\n".join(cues)


def clock(seconds: int) -> str:
    """A time as WebVTT writes it."""
    return f"{seconds // 60:02}:{seconds % 60:02}.000"


def test_the_notes_stand_under_the_codes(episode: Episode) -> None:
    """Taken with the sealed sheet: each cup its own notes, and what was denied is noted as absent."""
    seen = {(one.sample, one.term.split()[-1], one.presence) for one in episode.notes.observations}
    first, second = episode.codes
    assert {(first, "honey", "present"), (first, "orchid", "present"), (first, "bitter", "absent")} <= seen
    assert {(second, "hazelnut", "present"), (second, "cocoa", "present"), (second, "astringent", "present")} <= seen


def test_the_recording_says_what_the_key_says(episode: Episode) -> None:
    """What is read out at the reveal is what was sealed."""
    heard = {reveal.sample: reveal.product for reveal in episode.notes.reveals}
    assert heard == dict(zip(episode.codes, episode.products, strict=True))


def test_the_reveal_is_proved_and_fills_the_products_in(episode: Episode) -> None:
    """Of the notes as of the sheet; all else in the notes stays as it was."""
    notes, opened = episode.notes, read_notes(episode.opened())
    assert {one.id: one.product for one in opened.sheet.samples} == dict(
        zip(episode.codes, episode.products, strict=True)
    )
    assert opened.model_copy(update={"sheet": notes.sheet}) == notes


def test_a_key_changed_after_the_verdict_is_found_out(episode: Episode, tmp_path: Path) -> None:
    """The names changed about so that the other tea wins."""
    text = (episode.folder / "tea.key.json").read_text("utf-8")
    swapped = text.replace(HILL, "\0").replace(LAKE, HILL).replace("\0", LAKE)
    (tmp_path / "tea.key.json").write_text(swapped, "utf-8")
    with pytest.raises(SheetError, match="not the one that was sealed"):
        revealed(episode.folder / "tea.notes.json", tmp_path / "tea.key.json")


def test_the_verdict_claims_no_more_than_one_cup_can(episode: Episode) -> None:
    """Who was preferred, with n, the weakest link, and the trials that would settle it."""
    results, left_out = weigh([read_notes(episode.opened())])
    claim = next(result.claim for result in results if result.title == "Which is preferred")
    assert not left_out
    assert all(product in claim for product in episode.products)
    for words in ("is shown to be preferred: 1 to 0", "n = 1", "Weakest link", "trials"):
        assert words in claim


def test_the_standings_count_the_verdict_before_the_reveal(episode: Episode) -> None:
    """The wish after the reveal changes nothing; two games are left, and each round somebody has a bye."""
    league = episode.folder / "league.toml"
    league.write_text(f'kind = "round-robin"\nentrants = ["{HILL}", "{LAKE}", "{MOOR}"]\n', "utf-8")
    told = told_rounds(league, [episode.opened()])
    winner = episode.products[1]
    assert f"   1. {winner}" in told
    assert f": {winner} (tea.vtt)" in told
    assert told.count("has a bye") == 3
    assert "Still to play: 2, of which now 2" in told


def test_sealed_notes_do_not_count(episode: Episode) -> None:
    """Nobody knows yet who won."""
    league = episode.folder / "league.toml"
    league.write_text(f'kind = "round-robin"\nentrants = ["{HILL}", "{LAKE}"]\n', "utf-8")
    with pytest.raises(SheetError, match="0 entrants were tasted; reveal the notes first"):
        told_rounds(league, [episode.folder / "tea.notes.json"])
