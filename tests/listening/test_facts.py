"""What is stated."""

import tomllib
from pathlib import Path
from typing import Any

import pytest

from notesmith.listening.hearing import Hearing
from notesmith.records import Sheet, SheetSample
from notesmith.sensory.value import dose_per_100_ml, unit_price

CASES = tomllib.loads((Path(__file__).parents[1] / "cases/listening/facts.toml").read_text())["case"]


def _marked(case: dict[str, Any]) -> Any:
    marks = [pytest.mark.xfail(reason=case["misses"], strict=True)] if "misses" in case else []
    return pytest.param(case, id=case["says"], marks=marks)


def _sheet(case: dict[str, Any]) -> Sheet:
    return Sheet(category=case.get("category", "tea"), samples=tuple(SheetSample(id=i) for i in case["samples"]))


def _said(hearing: Hearing) -> list[list[Any]]:
    return [[f.kind, f.value, f.unit or "", f.sample or ""] for f in hearing.facts]


@pytest.mark.parametrize("case", [_marked(case) for case in CASES])
def test_states_exactly(case: dict[str, Any], hear: Any) -> None:
    """The talk states these facts and no others."""
    assert _said(hear(case["talk"], _sheet(case))) == case["facts"]


def test_dose_and_water_give_the_strength(hear: Any) -> None:
    """The strength reckoned from what was heard agrees with the hand: 8.25 g in 150 ml is 5.5 g to 100 ml."""
    hearing = hear("8.25 grams of coffee in 150 ml of water.", Sheet(samples=(SheetSample(id="fern"),)))
    heard = {f.kind: f.value for f in hearing.facts}
    assert dose_per_100_ml(heard["dose"], heard["water"]) == 5.5


def test_price_and_weight_give_the_unit_price(hear: Any) -> None:
    """The price of a gram reckoned from what was heard agrees with the one that was said."""
    talk = "The fern is fifty dollars for a forty gram tin, so that's one point two five dollars a gram."
    heard = hear(talk, Sheet(samples=(SheetSample(id="fern"),))).facts
    assert unit_price(heard[0].value, heard[1].value) == heard[2].value


def test_every_fact_says_why(hear: Any) -> None:
    """Each fact carries the rule that told it and words of the talk."""
    hearing = hear("The fern is nine pounds for fifty grams.", Sheet(samples=(SheetSample(id="fern"),)))
    assert all(g.rule and g.end > g.start for f in hearing.facts for g in f.grounds)
