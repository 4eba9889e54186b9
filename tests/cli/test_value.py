"""`notesmith value`: offers set beside each other, and what is refused."""

from collections.abc import Callable
from pathlib import Path

import pytest

Command = Callable[..., int]
Capture = pytest.CaptureFixture[str]
HEAD = "name,price,currency,pack,score,dose,infusions,drunk\n"
OFFERS = HEAD + (
    "Broken Leaf,4,EUR,125 g,4,2 g,1,200 ml\nRiver Oolong,14,EUR,100 g,7.5,5 g,6,110 ml\n"
    "Stone Roast,22,GBP,100 g,8.2,5 g,6,110 ml\nOld Tree,60,EUR,50 g,8.9,5 g,8,110 ml\n"
    "Fancy Tin,40,EUR,100 g,6,3 g,1,200 ml\n"
)
INTO_EUR = "--into", "EUR", "--rate", "GBP=1.15"


@pytest.fixture
def offers(tmp_path: Path) -> Path:
    """Offers in two currencies."""
    path = tmp_path / "offers.csv"
    path.write_text(OFFERS)
    return path


def test_prices_and_frontier(notesmith: Command, offers: Path, capsys: Capture) -> None:
    """From the cheapest, each with its price in one currency; the knee and what it rests on are told."""
    assert notesmith("value", "offers.csv", *INTO_EUR) == 0
    lines = [line.strip() for line in capsys.readouterr().out.splitlines()]
    assert lines[1] == "3.20 EUR  Broken Leaf (125 g), score 4, on the frontier"
    assert lines[2] == "14.00 EUR  River Oolong (100 g), score 7.5, on the frontier"
    assert lines[3] == "25.30 EUR  Stone Roast (100 g), score 8.2, the knee"
    assert lines[6] == "Beyond Stone Roast a higher price buys ever less (n = 5 offers)."


def test_litre_as_drunk(notesmith: Command, offers: Path, capsys: Capture) -> None:
    """Infusions make a litre cheaper than the leaf would have it."""
    assert notesmith("value", "offers.csv", *INTO_EUR, "--by", "litre drunk") == 0
    assert "1.06 EUR  River Oolong" in capsys.readouterr().out


def test_currencies_are_never_mixed(notesmith: Command, offers: Path, capsys: Capture) -> None:
    """Without a rate two currencies are refused."""
    assert notesmith("value", "offers.csv") == 2
    assert capsys.readouterr().err.startswith("notesmith: prices are in EUR and GBP; give a rate")


@pytest.mark.parametrize(
    "rows",
    ["A,x,EUR,50 g,,,,\n", "A,5,EUR,2 oz,,,,\n", "A,5,,50 g,,,,\n", "A,5,EUR,0 g,,,,\n", "A,5,EUR,50 g,,,,\n" * 2,
     "A,5,EUR,700 ml,,,,\n"],
)  # fmt: skip
def test_rows_that_will_not_do(notesmith: Command, tmp_path: Path, capsys: Capture, rows: str) -> None:
    """No number, an ounce alone, no currency, nothing in the pack, a name twice, a bottle by weight: one line."""
    (tmp_path / "offers.csv").write_text(HEAD + rows)
    assert notesmith("value", "offers.csv") == 2
    assert capsys.readouterr().err.count("\n") == 1


@pytest.mark.parametrize("text", ["", "name,price\nA,5\n"])
def test_no_table(notesmith: Command, tmp_path: Path, capsys: Capture, text: str) -> None:
    """A table without its columns is refused."""
    (tmp_path / "offers.csv").write_text(text)
    assert notesmith("value", "offers.csv") == 2
    assert "has no column" in capsys.readouterr().err


@pytest.mark.parametrize(("name", "begins"), [("v.svg", b"<svg"), ("v.png", b"\x89PNG")])
def test_chart(notesmith: Command, offers: Path, tmp_path: Path, name: str, begins: bytes) -> None:
    """Drawn as the file is called."""
    assert notesmith("value", "offers.csv", *INTO_EUR, "--chart", name) == 0
    assert (tmp_path / name).read_bytes().startswith(begins)


SHEET = """
samples = [
  { id = "A", product = "Hillside Green", price = 9, currency = "EUR", net_weight = 50 },
  { id = "B", product = "Hillside Green", price = 9, currency = "EUR", net_weight = 50 },
  { id = "C", product = "River Oolong" },
]
preparations = [{ id = "pot", dose = 3, water = 150 }, { id = "bowl", dose = 5 }]
"""


def test_offers_of_a_sheet(notesmith: Command, tmp_path: Path, capsys: Capture) -> None:
    """A product poured twice is one offer, one without a price is none; a litre takes the dose of its preparation."""
    (tmp_path / "tea.sheet.toml").write_text(SHEET)
    assert notesmith("value", "tea.sheet.toml", "--by", "litre drunk", "--preparation", "pot") == 0
    assert [line.strip() for line in capsys.readouterr().out.splitlines()[1:]] == [
        "3.60 EUR  Hillside Green (50 g), no score"
    ]


@pytest.mark.parametrize(
    "arguments", [("--by", "serving"), ("--preparation", "jug"), ("--by", "litre drunk", "--preparation", "bowl")]
)
def test_preparation_must_be_known(
    notesmith: Command, tmp_path: Path, capsys: Capture, arguments: tuple[str, ...]
) -> None:
    """Several without a choice, one that the sheet lacks, one without water: one line."""
    (tmp_path / "tea.sheet.toml").write_text(SHEET)
    assert notesmith("value", "tea.sheet.toml", *arguments) == 2
    assert capsys.readouterr().err.count("\n") == 1


def test_chart_of_another_kind(notesmith: Command, offers: Path, capsys: Capture) -> None:
    """What is neither is refused."""
    assert notesmith("value", "offers.csv", *INTO_EUR, "--chart", "v.gif") == 2
