"""What blind samples turn out to be."""

import tomllib
from pathlib import Path
from typing import Any

import pytest

from notesmith.records import Sheet, SheetSample

CASES = tomllib.loads((Path(__file__).parents[1] / "cases/listening/reveals.toml").read_text())["case"]


def _marked(case: dict[str, Any]) -> Any:
    marks = [pytest.mark.xfail(reason=case["misses"], strict=True)] if "misses" in case else []
    return pytest.param(case, id=case["says"], marks=marks)


@pytest.mark.parametrize("case", [_marked(case) for case in CASES])
def test_reveals_exactly(case: dict[str, Any], hear: Any) -> None:
    """The talk makes these identities known and no others."""
    samples = tuple(SheetSample(id=i) for i in case["samples"])
    hearing = hear(case["talk"], Sheet(category="black tea", samples=samples, blind=case.get("blind", True)))
    assert [[r.sample, r.product] for r in hearing.reveals] == case["reveals"]
