"""Plans and contests as files: what is refused, what is written, and what is told."""

import json
import tomllib
from hashlib import sha256
from pathlib import Path
from typing import Any

import pytest

from notesmith.errors import OutputError, SheetError
from notesmith.planning.files import draw_files, revealed, told_methods, told_rounds
from notesmith.planning.methods import every_method
from notesmith.planning.rounds import read_contest
from notesmith.sheet import read_sheet

CASES = tomllib.loads((Path(__file__).parents[1] / "cases" / "planning" / "refused.toml").read_text("utf-8"))
PLAN = """
title = "Two oolongs"
tasters = ["Ana"]
products = [{ name = "Hill oolong" }, { name = "Lake oolong" }]
preparations = [{ id = "standard", method = "iso-3103-small" }]
"""


def put(folder: Path, text: str, name: str = "tea.plan.toml") -> Path:
    """Write a file to be read."""
    path = folder / name
    path.write_text(text, "utf-8")
    return path


def draw_into(folder: Path, plan: Path, **more: Any) -> dict[str, Path]:
    """Draw a plan; its files by their suffix."""
    settings: dict[str, Any] = {"seed": "7", "after": (), "force": False, **more}
    written = draw_files(plan, folder, "A4", **settings).written
    return {path.name.removeprefix("tea."): path for path in written}


@pytest.mark.parametrize("case", CASES["plans"], ids=lambda case: case["says"][0])
def test_a_wrong_plan_is_refused_in_one_line(case: dict[str, Any], tmp_path: Path) -> None:
    """The message says what is wrong, and nothing is written."""
    with pytest.raises(SheetError) as caught:
        draw_into(tmp_path / "out", put(tmp_path, case["file"]))
    line = str(caught.value)
    assert "\n" not in line
    assert all(words in line for words in case["says"]), line
    assert not (tmp_path / "out").exists()


@pytest.mark.parametrize("case", CASES["contests"], ids=lambda case: case["says"][0])
def test_a_wrong_contest_is_refused_in_one_line(case: dict[str, Any], tmp_path: Path) -> None:
    """The message names the file and says what is wrong."""
    with pytest.raises(SheetError) as caught:
        read_contest(put(tmp_path, case["file"], "cup.toml"))
    line = str(caught.value)
    assert "\n" not in line
    assert line.startswith(f"{tmp_path}/")
    assert all(words in line for words in case["says"]), line


def test_a_plan_is_written_as_four_files(tmp_path: Path) -> None:
    """What may be shown and what may not lie apart, and are named like the plan."""
    files = draw_into(tmp_path / "out", put(tmp_path, PLAN))
    assert set(files) == {"sheet.toml", "key.json", "pouring.html", "tasting.html"}
    assert read_sheet(files["sheet.toml"]).title == "Two oolongs"


def test_the_same_seed_writes_the_same_bytes(tmp_path: Path) -> None:
    """All four files."""
    plan = put(tmp_path, PLAN)
    one, other = (draw_into(tmp_path / name, plan) for name in ("one", "other"))
    assert [path.read_bytes() for path in one.values()] == [path.read_bytes() for path in other.values()]


def test_nothing_is_written_where_one_file_is_there_already(tmp_path: Path) -> None:
    """A key that was sealed is not replaced unasked, nor is a sheet put beside it that it does not fit."""
    plan = put(tmp_path, PLAN)
    put(tmp_path, "mine", "tea.tasting.html")
    with pytest.raises(OutputError, match=r"tea\.tasting\.html: is there already"):
        draw_into(tmp_path, plan)
    assert not (tmp_path / "tea.sheet.toml").exists()


def test_a_written_sheet_is_revealed_with_its_key(tmp_path: Path) -> None:
    """And reads back as a sheet."""
    files = draw_into(tmp_path, put(tmp_path, PLAN))
    sheet = read_sheet(put(tmp_path, revealed(files["sheet.toml"], files["key.json"]), "open.sheet.toml"))
    assert {sample.product for sample in sheet.samples} == {"Hill oolong", "Lake oolong"}


def test_the_commitment_can_be_computed_without_us(tmp_path: Path) -> None:
    """From the key file with the standard library alone, as the README tells how."""
    plan = put(tmp_path, PLAN.replace('"Hill oolong"', '"Thé \\u2013 hill", price = 9, net_weight = 12.5'))
    files = draw_into(tmp_path, plan)
    key = json.loads(files["key.json"].read_text("utf-8"))
    text = json.dumps(key, sort_keys=True, separators=(",", ":"), ensure_ascii=False)
    assert sha256(text.encode()).hexdigest() == read_sheet(files["sheet.toml"]).commitment


def test_the_key_of_another_plan_is_refused(tmp_path: Path) -> None:
    """The message names the sheet."""
    plan = put(tmp_path, PLAN)
    one, other = draw_into(tmp_path / "one", plan), draw_into(tmp_path / "other", plan, seed="8")
    with pytest.raises(SheetError, match=r"tea\.sheet\.toml: the key is not the one that was sealed"):
        revealed(one["sheet.toml"], other["key.json"])


def test_codes_of_earlier_sheets_are_not_used_again(tmp_path: Path) -> None:
    """The same seed, and yet other codes."""
    plan = put(tmp_path, PLAN)
    first = draw_into(tmp_path / "one", plan)["sheet.toml"]
    second = draw_into(tmp_path / "other", plan, after=(first,))["sheet.toml"]
    one, other = ({sample.id for sample in read_sheet(path).samples} for path in (first, second))
    assert not one & other


def test_every_method_is_told_with_its_source() -> None:
    """A line each."""
    lines = told_methods().splitlines()
    assert len(lines) == len(every_method())
    assert all("(" in line for line in lines)


LEAGUE = """
title = "Oolongs of the hills"
kind = "round-robin"
entrants = ["Hill", "Lake", "Moor"]
[[played]]
one = "Hill"
other = "Lake"
winner = "Lake"
episode = "12"
[[played]]
one = "Hill"
other = "Moor"
winner = "Moor"
"""
DECIDED = LEAGUE + '[[played]]\none = "Lake"\nother = "Moor"\nwinner = "Moor"\n'


def test_a_round_robin_is_told_with_what_is_still_to_play(tmp_path: Path) -> None:
    """Standings, rounds, byes, results with their episode, and what is left."""
    assert told_rounds(put(tmp_path, LEAGUE, "league.toml"), ()) == (
        "Oolongs of the hills\n"
        "Standings\n"
        "   1. Lake     1 pt  1 won, 0 drawn, 0 lost\n"
        "   1. Moor     1 pt  1 won, 0 drawn, 0 lost\n"
        "   3. Hill     0 pt  0 won, 0 drawn, 2 lost\n"
        "Round 1\n  Moor has a bye\n  Hill – Lake: Lake (12)\n"
        "Round 2\n  Hill has a bye\n  Lake – Moor\n"
        "Round 3\n  Lake has a bye\n  Moor – Hill: Moor\n"
        "Still to play: 1, of which now 1\n  Lake – Moor\n"
    )


def test_a_knock_out_is_seeded_by_standings(tmp_path: Path) -> None:
    """The best two of the league meet."""
    put(tmp_path, DECIDED, "league.toml")
    cup = put(tmp_path, 'kind = "knock-out"\nafter = "league.toml"\nbest = 2\n', "cup.toml")
    assert told_rounds(cup, ()) == "Round 1\n  Moor – Lake\nStill to play: 1, of which now 1\n  Moor – Lake\n"


@pytest.mark.parametrize(
    ("league", "best", "says"),
    [
        (LEAGUE, 2, "not played to its end"),
        (LEAGUE + '[[played]]\none = "Lake"\nother = "Moor"\n', 2, ""),
        (DECIDED.replace('winner = "Lake"\n', ""), 2, "Hill and Lake stand equal"),
        ('kind = "round-robin"\nentrants = ["a", "b", "c"]\n' + "".join(
            f'[[played]]\none = "{one}"\nother = "{other}"\n' for one, other in ("ab", "bc", "ca")
        ), 2, "b and c stand equal"),
        ('kind = "knock-out"\nentrants = ["a", "b"]\n', 2, "is no round robin"),
    ],
)  # fmt: skip
def test_a_knock_out_waits_for_standings_that_are_certain(league: str, best: int, says: str, tmp_path: Path) -> None:
    """Unfinished, or equal at the line: nobody is put through by the order of a list."""
    put(tmp_path, league, "league.toml")
    cup = put(tmp_path, f'kind = "knock-out"\nafter = "league.toml"\nbest = {best}\n', "cup.toml")
    if not says:
        assert len(read_contest(cup).entrants) == best
        return
    with pytest.raises(SheetError, match=says):
        read_contest(cup)


def test_all_played_is_said(tmp_path: Path) -> None:
    """Nothing is left."""
    assert told_rounds(put(tmp_path, DECIDED, "league.toml"), ()).endswith("Everything is played\n")
