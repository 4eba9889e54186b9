"""What is set beside what, and which is liked better."""

import tomllib
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest

from notesmith.listening.hearing import Compared, Hearing, Preferred
from notesmith.records import Sheet, SheetPreparation, SheetSample

Hear = Callable[[str, Sheet], Hearing]
CASES = Path(__file__).parents[1] / "cases" / "listening"


def cases(name: str) -> list[Any]:
    """The cases of one file, each a test of its own name."""
    loaded = tomllib.loads((CASES / f"{name}.toml").read_text("utf-8"))["case"]
    return [pytest.param(case, id=case["name"]) for case in loaded]


def sheet_of(*ids: str) -> Sheet:
    """A sheet with these samples, one taster and two preparations."""
    preparations = (SheetPreparation(id="neat"), SheetPreparation(id="iced"))
    return Sheet(
        category="tea", samples=tuple(SheetSample(id=i) for i in ids), tasters=("Mo",), preparations=preparations
    )  # fmt: skip


def compared(c: Compared) -> str:
    """A comparison as the cases write it."""
    sides = " = ".join(sorted(c.equal)) if c.equal else f"{c.more} > {c.less}"
    return f"{sides}: {c.attribute}" + (f" ({c.degree})" if c.degree else "")


def preferred(p: Preferred) -> str:
    """A preference as the cases write it."""
    return f"{p.scope}: {', '.join((p.preferred, *p.over))}"


def test_silence_compares_nothing(hear: Hear) -> None:
    """Talk of nothing holds neither comparisons nor preferences."""
    heard = hear("Hello.", sheet_of("red", "blue"))
    assert (heard.comparisons, heard.preferences) == ([], [])


def test_no_samples_compare_nothing(hear: Hear) -> None:
    """A sheet without samples leaves nothing to compare."""
    heard = hear("It's sweeter than the other one, it's my favourite.", sheet_of())
    assert (heard.comparisons, heard.preferences) == ([], [])


@pytest.mark.parametrize("case", cases("comparisons"))
def test_comparison(case: dict[str, Any], hear: Hear) -> None:
    """Each case's comparisons are heard, and no others."""
    heard = hear(case["talk"], sheet_of(*case.get("samples", ("red", "blue", "gold"))))
    assert [compared(c) for c in heard.comparisons] == case["says"]


@pytest.mark.parametrize("case", cases("preferences"))
def test_preference(case: dict[str, Any], hear: Hear) -> None:
    """Each case's preferences are heard, and no others."""
    heard = hear(case["talk"], sheet_of("red", "blue", "gold"))
    assert [preferred(p) for p in heard.preferences] == case["says"]


def test_compared_property_is_no_perception(hear: Hear) -> None:
    """The property of a comparison is left out of the perceptions, with its reason."""
    heard = hear("On the palate I get honey, and the taste is a lot sweeter than red.", sheet_of("red", "blue"))
    assert "sweeter" not in [heard.said(p.description.start, p.description.end) for p in heard.perceptions]
    assert "sweeter" in [heard.said(o.description.start, o.description.end) for o in heard.left_out]


def test_positive_form_stays_a_perception(hear: Hear) -> None:
    """What is asserted beside its comparison stays a perception."""
    heard = hear("Blue is creamier than red, I get really creamy notes.", sheet_of("red", "blue"))
    assert [heard.said(p.description.start, p.description.end) for p in heard.perceptions] == ["creamy"]
