"""Whether products differ, or are alike enough, from trials that are answered right or wrong.

All of it rests on the binomial law, so that critical counts and p-values are exact; tables are computed, never shipped.
"""

from dataclasses import dataclass
from typing import Literal

import numpy as np
from numpy.typing import ArrayLike, NDArray
from scipy import optimize, stats

from notesmith.sensory.protocols import Protocol

Method = Literal["exact", "likelihood", "score"]
Counts = NDArray[np.int64]
STEADY = 1e-12
"""What rounding may take from a tail: a level of 0.05 is meant as such."""


@dataclass(frozen=True)
class Estimate:
    """A figure with its standard error, None at the edge of what can be, and its interval."""

    value: float
    error: float | None
    low: float
    high: float


@dataclass(frozen=True)
class Verdict:
    """What right answers among trials say of a difference."""

    protocol: Protocol
    right: int
    trials: int
    method: Method
    level: float
    """How sure the intervals are, such as 0.95."""
    share: Estimate
    told_apart: Estimate
    distance: Estimate
    """d′."""
    p_difference: float
    """How often guessing alone does as well or better."""


def least_right(trials: ArrayLike, chance: float, alpha: float = 0.05) -> Counts:
    """Fewest right answers that guessing reaches with a chance of at most alpha; more than all trials where none is so.

    >>> int(least_right(24, 1 / 3))
    13
    """
    n = np.asarray(trials, dtype=np.int64)
    count = np.asarray(stats.binom.isf(alpha, n, chance), dtype=np.int64) + 1
    count = np.where(stats.binom.sf(count - 2, n, chance) <= alpha + STEADY, count - 1, count)
    return np.asarray(np.where(stats.binom.sf(count - 1, n, chance) > alpha + STEADY, count + 1, count))


def least_majority(trials: ArrayLike, alpha: float = 0.05) -> Counts:
    """Smallest majority of a paired comparison without an expected side that is reached by chance at most alpha often.

    >>> int(least_majority(20))
    15
    """
    return least_right(trials, 0.5, alpha / 2)


def most_right(trials: ArrayLike, limit: float, alpha: float = 0.05) -> Counts:
    """Most right answers at which products count as alike: where the share to expect were `limit`, so few are rare.

    -1 where no count is few enough.

    >>> int(most_right(100, 1 / 2 + 1 / 3 / 2))  # duo-trio, at most a third told apart
    58
    """
    n = np.asarray(trials, dtype=np.int64)
    count = np.asarray(stats.binom.ppf(alpha, n, limit), dtype=np.int64)
    return np.asarray(np.where(stats.binom.cdf(count, n, limit) <= alpha + STEADY, count, count - 1))


def judge(right: int, trials: int, protocol: Protocol, *, level: float = 0.95, method: Method = "exact") -> Verdict:
    """Weigh right answers among trials; estimates and limits stay where they can be, at chance or above.

    Raises:
        ValueError: there are no trials, or more right answers than trials.
    """
    _refuse(right, trials)
    share = right / trials
    low, high = (max(limit, protocol.chance) for limit in limits(right, trials, level, method))
    at = max(share, protocol.chance)
    inside = protocol.chance < share < 1
    error = float(np.sqrt(share * (1 - share) / trials)) if inside else None
    d = protocol.distance(at)
    d_error = error / protocol.slope(d) if error else None
    return Verdict(
        protocol, right, trials, method, level,
        share=Estimate(at, error, low, high),
        told_apart=Estimate(*_apart(protocol, at, error), protocol.told_apart(low), protocol.told_apart(high)),
        distance=Estimate(d, d_error, protocol.distance(low), protocol.distance(high)),
        p_difference=p_more(right, trials, protocol.chance, method),
    )  # fmt: skip


def limits(right: int, trials: int, level: float, method: Method) -> tuple[float, float]:
    """Interval of the share: Clopper and Pearson's, Wilson's with continuity correction, or the likelihood's."""
    if method == "likelihood":
        return _likely(right, trials, level)
    name = {"exact": "exact", "score": "wilsoncc"}[method]
    interval = stats.binomtest(right, trials).proportion_ci(level, name)
    return float(interval.low), float(interval.high)


def p_more(right: int, trials: int, chance: float, method: Method = "exact") -> float:
    """How often that many right answers, or more, come where the share to expect is `chance`.

    >>> round(p_more(10, 15, 1 / 3), 5), round(p_more(10, 15, 1 / 3, "score"), 6)
    (0.0085, 0.003085)
    """
    _refuse(right, trials)
    if method == "exact":
        return float(stats.binom.sf(right - 1, trials, chance))
    if method == "score":
        return float(stats.norm.sf((right - trials * chance) / np.sqrt(trials * chance * (1 - chance))))
    return float(stats.norm.sf(_root(right, trials, chance)))


def p_two_sided(one: int, other: int) -> float:
    """How often a pair without an expected side is split as unevenly or more, where neither has an edge.

    >>> round(p_two_sided(15, 5), 4)
    0.0414
    """
    _refuse(one, one + other)
    return min(1.0, 2 * float(stats.binom.sf(max(one, other) - 1, one + other, 0.5)))


def p_alike(right: int, trials: int, limit: float) -> float:
    """How often so few right answers, or fewer, come where the share to expect is `limit`: small means alike.

    >>> round(p_alike(20, 75, 1 / 3 + 0.2 * 2 / 3), 7)  # triangle, at most a fifth told apart
    0.0003061
    """
    _refuse(right, trials)
    return float(stats.binom.cdf(right, trials, limit))


def _refuse(right: int, trials: int) -> None:
    if not 0 <= right <= trials or trials == 0:
        raise ValueError(f"{right} right of {trials}: there must be trials, and no more right answers than trials")


def _apart(protocol: Protocol, share: float, error: float | None) -> tuple[float, float | None]:
    return protocol.told_apart(share), error / (1 - protocol.chance) if error else None


def _likely(right: int, trials: int, level: float) -> tuple[float, float]:
    """Shares that are no less likely than the interval's level allows."""
    at, edge = right / trials, float(stats.norm.isf((1 - level) / 2))
    low = optimize.brentq(lambda p: _root(right, trials, p) - edge, 1e-12, at) if right else 0.0
    high = optimize.brentq(lambda p: _root(right, trials, p) + edge, at, 1 - 1e-12) if right < trials else 1.0
    return float(low), float(high)


def _root(right: int, trials: int, chance: float) -> float:
    """Signed root of the likelihood ratio of the share found against `chance`; above 0 where more are right."""
    found = np.array([right, trials - right])
    expected = trials * np.array([chance, 1 - chance])
    some = found > 0
    ratio = 2 * float(np.sum(found[some] * np.log(found[some] / expected[some])))
    return float(np.sign(right - expected[0]) * np.sqrt(max(0.0, ratio)))
