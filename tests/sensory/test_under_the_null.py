"""Where nothing differs, p-values are what they promise: simulated with a fixed seed."""

import numpy as np
import pytest
from scipy import stats

from notesmith.sensory.difference import p_more
from notesmith.sensory.no_preference import judge_pair
from notesmith.sensory.protocols import PROTOCOLS, Protocol
from notesmith.sensory.ranking import concordance
from notesmith.sensory.replicated import judge_replicated
from notesmith.sensory.yes_no import judge_calls

DRAWS = 4000
TOLERANCE = 0.03
"""How far the shares of p-values may lie from the diagonal: 1.95 / √4000, which chance exceeds once in a thousand."""


@pytest.mark.parametrize("protocol", PROTOCOLS.values(), ids=lambda at: at.name)
def test_difference_is_uniform(protocol: Protocol) -> None:
    """p, spread evenly over the steps that counts make it jump by, is uniform in every protocol."""
    draw = np.random.default_rng(7)
    p = np.array([[p_more(right, 60, protocol.chance), p_more(right + 1, 60, protocol.chance) if right < 60 else 0.0]
                  for right in draw.binomial(60, protocol.chance, DRAWS)])  # fmt: skip
    spread = p[:, 1] + draw.uniform(size=DRAWS) * (p[:, 0] - p[:, 1])
    assert stats.kstest(spread, "uniform").statistic < TOLERANCE


def test_calls_are_never_too_sure() -> None:
    """A-not-A errs at each level at most as often as it promises, and Fisher's test a good deal less often."""
    draw = np.random.default_rng(8)
    calls = draw.binomial(30, 0.4, (DRAWS // 2, 2))
    p = np.array([judge_calls(hits, 30, alarms, 30).p_difference for hits, alarms in calls])
    assert all((p <= level).mean() <= level + 0.01 for level in (0.01, 0.05, 0.1, 0.2))


def test_no_preference_is_nearly_uniform() -> None:
    """The likelihood's p of 80 pairs with a middle of a third lies within 0.05 of its promise at each level."""
    draw = np.random.default_rng(9)
    p = np.array([judge_pair(*counts).p_either for counts in draw.multinomial(80, [1 / 3] * 3, 500)])
    assert all(abs((p <= level).mean() - level) < 0.05 for level in (0.05, 0.1, 0.2, 0.5))


def test_ranking_is_nearly_uniform() -> None:
    """Friedman's p of 20 tasters and 5 samples lies within 0.03 of its promise at each level."""
    draw = np.random.default_rng(10)
    p = np.array([concordance(draw.normal(size=(20, 5))).p for _ in range(1000)])
    assert all(abs((p <= level).mean() - level) < 0.03 for level in (0.01, 0.05, 0.1, 0.5))


@pytest.mark.slow
def test_repeated_trials_are_never_too_sure() -> None:
    """Ten tasters who guess eight triangles each: the beta-binomial errs no oftener than 5 in 100, give or take 4."""
    draw = np.random.default_rng(11)
    p = [judge_replicated(draw.binomial(8, 1 / 3, 10).tolist(), [8] * 10, 1 / 3).p_difference for _ in range(100)]
    assert np.mean([at is not None and at <= 0.05 for at in p]) <= 0.09
