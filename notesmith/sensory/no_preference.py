"""A paired comparison in which `no preference` may be answered: how far apart, and how wide the middle is."""

from collections.abc import Callable
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray
from scipy import optimize, special, stats

from notesmith.sensory.difference import Estimate

Array = NDArray[np.float64]
FARTHEST = 8.0


@dataclass(frozen=True)
class WithNone:
    """What a paired comparison with `no preference` says."""

    first: int
    none: int
    second: int
    level: float
    distance: Estimate
    """d′, above 0 where the second is ahead; its interval is that of the likelihood."""
    middle: float
    """Half the width of what is too close to tell, in the units of d′."""
    p_second: float
    """How often the second comes out so far ahead where there is no difference."""
    p_either: float
    """The same for either side."""


def judge_pair(first: int, none: int, second: int, *, level: float = 0.95) -> WithNone:
    """Weigh who prefers the first, neither, and the second.

    Raises:
        ValueError: a count is below 0, or all are 0.
    """
    counts = np.array([first, none, second], dtype=np.float64)
    if counts.min() < 0 or counts.sum() == 0:
        raise ValueError(f"{first}, {none} and {second}: counts must not be below 0, nor all 0")
    middle, d = _fitted(counts)
    root = _root(counts, 0.0)
    return WithNone(
        first, none, second, level, Estimate(d, _error(counts, middle, d), *_limits(counts, level, d)), middle,
        p_second=float(stats.norm.sf(root)), p_either=min(1.0, 2 * float(stats.norm.sf(abs(root)))),
    )  # fmt: skip


def _fitted(counts: Array) -> tuple[float, float]:
    """The middle and d′ that fit best: where both sides were named, they fit the shares exactly."""
    low, high = np.sqrt(2) * special.ndtri(np.cumsum(counts / counts.sum())[:2])
    if counts[0] == 0 or counts[2] == 0:
        return np.nan, 0.0 if counts[0] == counts[2] else float(np.copysign(np.inf, counts[2] - counts[0]))
    return float(high - low) / 2, -float(low + high) / 2


def _shares(middle: float, d: float) -> Array:
    edges = special.ndtr(np.array([-middle - d, middle - d]) / np.sqrt(2))
    return np.array([edges[0], edges[1] - edges[0], special.ndtr((d - middle) / np.sqrt(2))])


def _misfit(counts: Array, middle: float, d: float) -> float:
    """Twice what the likelihood lacks of its most, at that middle and d′."""
    some = counts > 0
    found = counts[some] / counts.sum()
    with np.errstate(divide="ignore"):
        return float(2 * np.sum(counts[some] * (np.log(found) - np.log(_shares(middle, d)[some]))))


def _root(counts: Array, d: float) -> float:
    """Signed root of the likelihood ratio of what fits best against d′, the middle fitted to it."""
    if counts[1] == 0:
        least = _misfit(counts, 0.0, d)
    else:
        fit = optimize.minimize_scalar(lambda t: _misfit(counts, t, d), bounds=(1e-9, 12), options={"xatol": 1e-9},
                                       method="bounded")  # fmt: skip
        least = float(fit.fun)
    return float(np.copysign(np.sqrt(max(0.0, least)), _fitted(counts)[1] - d))


def _limits(counts: Array, level: float, d: float) -> tuple[float, float]:
    edge = float(stats.norm.isf((1 - level) / 2))
    at = float(np.clip(d, -FARTHEST, FARTHEST))
    low = _crossing(lambda x: _root(counts, x) - edge, -FARTHEST, at) if counts[2] else -np.inf
    high = _crossing(lambda x: _root(counts, x) + edge, at, FARTHEST) if counts[0] else np.inf
    return low, high


def _crossing(function: Callable[[float], float], low: float, high: float) -> float:
    return float(optimize.brentq(function, low, high))


def _error(counts: Array, middle: float, d: float) -> float | None:
    """Standard error of d′ by the delta method; None where a side was never named."""
    if counts[0] == 0 or counts[2] == 0:
        return None
    n, shares = counts.sum(), counts / counts.sum()
    slopes = np.sqrt(2) / stats.norm.pdf(np.array([-middle - d, middle - d]) / np.sqrt(2))
    below = np.cumsum(shares)[:2]
    spread = np.array([[below[0] * (1 - below[0]), below[0] * (1 - below[1])],
                       [below[0] * (1 - below[1]), below[1] * (1 - below[1])]]) / n  # fmt: skip
    return float(np.sqrt(slopes @ spread @ slopes) / 2)
