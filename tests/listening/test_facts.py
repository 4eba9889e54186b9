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


LONG = (
    "Right, the fern first. On the nose it's fresh and grassy, a little sweet, with something of cut hay behind it. "
    "In the mouth it's smooth and light, there's a touch of bitterness at the sides and then a long clean finish. "
    "I like it a lot, I think it opens up as it cools, and the sweetness stays with you. Then the moss. It smells "
    "earthy and a bit smoky, quite heavy, with dark wood and dried plum. On the tongue it's thick, round, nearly oily, "
    "no bitterness at all, and it finishes dry. The second sip is softer, more plum, less smoke, and I get some "
    "leather too. Back to the fern and it seems thin beside it, still fresh, a bit floral now. So two very different "
    "cups, and both of them good ones. "
)
TWO = Sheet(samples=(SheetSample(id="fern", product="Ardwen green"), SheetSample(id="moss", product="Tollbeck dark")))


def test_a_long_talk_is_weighed(hear: Any) -> None:
    """In a talk long enough to weigh, prices in a row are facts, one said without its unit too."""
    talk = LONG + "The fern is nine pounds for fifty grams, the moss is twelve."
    assert [f[:2] + f[3:] for f in _said(hear(talk, TWO))] == [
        ["price", 9, "fern"],
        ["net_weight", 50, "fern"],
        ["price", 12, "moss"],
    ]


def test_money_spent_on_other_things_is_none(hear: Any) -> None:
    """A repair paid for alone in a long tasting is no price of a sample."""
    assert _said(hear(LONG + "My shoes were eighty pounds to repair. Now, the moss again.", TWO)) == []


def test_a_fine_is_no_price(hear: Any) -> None:
    """Money lost to a fine alone in a long tasting is no price of a sample."""
    assert _said(hear("I got an eighty pound parking fine last month, would you believe it. " + LONG, TWO)) == []


def test_a_name_in_the_clause_before_owns_the_fact(hear: Any) -> None:
    """What is stated right after a name is of that sample, though a new sentence begins."""
    talk = LONG + "So that was the fern. And last the Tollbeck. Twelve pounds for fifty grams."
    assert {f.sample for f in hear(talk, TWO).facts} == {"moss"}


def test_a_number_in_a_row_of_numbers_states_nothing(hear: Any) -> None:
    """Counting aloud states no fact, in a long talk either."""
    assert _said(hear(LONG + "Let me count them, one two three four five six seven.", TWO)) == []


def test_no_talk_states_nothing(hear: Any) -> None:
    """Hardly a word said, no fact."""
    assert _said(hear("Hello.", TWO)) == []
