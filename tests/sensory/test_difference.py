"""Tests of difference and of likeness, against worked examples."""

from typing import Any

import pytest

from notesmith.sensory.difference import Estimate, judge, p_alike, p_more, p_two_sided
from notesmith.sensory.protocols import DUO_TRIO, PROTOCOLS, TRIANGLE
from tests.sensory.published import judged


def near(published: float) -> Any:
    """As near as four printed digits allow."""
    return pytest.approx(published, rel=2e-4, abs=6e-5)


@pytest.mark.parametrize("case", judged(), ids=lambda case: f"{case['right']} of {case['trials']} {case['protocol']}")
def test_worked_examples(case: dict[str, Any]) -> None:
    """Estimates, errors, limits and p are those that are printed."""
    method, level = case.get("method", "exact"), case.get("level", 0.95)
    found = judge(case["right"], case["trials"], PROTOCOLS[case["protocol"]], method=method, level=level)
    for name in ("share", "told_apart", "distance"):
        estimate: Estimate = getattr(found, name)
        if name in case:
            assert [estimate.value, estimate.error] == [near(at) for at in case[name]]
        if f"{name}_limits" in case:
            assert [estimate.low, estimate.high] == [near(at) for at in case[f"{name}_limits"]]
    if "p" in case:
        assert found.p_difference == near(case["p"]) or found.p_difference == pytest.approx(case["p"], rel=2e-4)


def test_nothing_tasted() -> None:
    """No trials say nothing."""
    with pytest.raises(ValueError, match="there must be trials"):
        judge(0, 0, TRIANGLE)


def test_more_right_than_trials() -> None:
    """More right answers than trials are refused."""
    with pytest.raises(ValueError, match="no more right answers"):
        p_more(4, 3, 0.5)


def test_chance_is_the_floor() -> None:
    """20 of 75 triangles, fewer than guessing: no d′ and no error, and an upper limit of .73949: sensR. Seen."""
    found = judge(20, 75, TRIANGLE)
    assert (found.share.value, found.distance.value, found.distance.error) == (TRIANGLE.chance, 0.0, None)
    assert found.distance.high == pytest.approx(0.73949, abs=5e-6)


def test_eleven_of_twenty_triangles() -> None:
    """Significant at 5 %; the counts are SensoMineR's example, p is computed."""
    assert p_more(11, 20, 1 / 3) == pytest.approx(0.0376, abs=5e-5)


@pytest.mark.parametrize(
    ("right", "trials", "limit", "p"),
    [(20, 75, 1 / 3 + 0.2 * 2 / 3, 0.0003061), (26, 75, 1 / 3 + 0.2 * 2 / 3, 0.02377),
     (26, 75, float(TRIANGLE.right(1.0)), 0.1274)],
)  # fmt: skip
def test_alike(right: int, trials: int, limit: float, p: float) -> None:
    """Likeness by a fifth told apart and by d′ 1: sensR's discrim example and test-discrim_pd0.R. Seen."""
    assert p_alike(right, trials, limit) == pytest.approx(p, rel=2e-3)


@pytest.mark.parametrize(("right", "p"), [(15, 0.0207), (14, 0.0577)])
def test_twenty_duo_trios(right: int, p: float) -> None:
    """15 of 20 are rare, 14 are not: sensR's methodology vignette. Seen."""
    assert p_more(right, 20, DUO_TRIO.chance) == pytest.approx(p, abs=5e-5)


@pytest.mark.parametrize(("right", "p"), [(58, 0.04337), (59, 0.06587)])
def test_share_is_not_rounded(right: int, p: float) -> None:
    """Exact where a vignette gives what 0.667 for two thirds yields, 0.042 and 0.064. Seen, and computed."""
    assert p_alike(right, 100, 2 / 3) == pytest.approx(p, abs=5e-6)


def test_an_even_pair_is_certain() -> None:
    """Two sides alike: p is 1 and never more."""
    assert p_two_sided(5, 5) == 1.0
