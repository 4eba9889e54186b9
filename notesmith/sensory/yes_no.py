"""A-not-A: single cups, each called A or not A; two kinds of trial set beside each other."""

from dataclasses import dataclass

import numpy as np
from numpy.typing import ArrayLike, NDArray
from scipy import special, stats

from notesmith.sensory.difference import Estimate

Array = NDArray[np.float64]


@dataclass(frozen=True)
class YesNo:
    """What calls of A and not A say of a difference."""

    hits: int
    """Cups of A that were called A."""
    of_a: int
    false_alarms: int
    """Cups of the other that were called A."""
    of_other: int
    level: float
    distance: Estimate
    """d′ with Wald's interval; without error and limits where a share is 0 or 1."""
    p_difference: float
    """Fisher's exact test: how often so many calls fall to A where there is no difference."""


def judge_calls(hits: int, of_a: int, false_alarms: int, of_other: int, *, level: float = 0.95) -> YesNo:
    """Weigh the calls of A among the cups of A and of the other.

    Raises:
        ValueError: there are no cups of one kind, or more calls than cups.
    """
    for calls, cups in ((hits, of_a), (false_alarms, of_other)):
        if not 0 <= calls <= cups or cups == 0:
            raise ValueError(f"{calls} calls among {cups} cups: there must be cups, and no more calls than cups")
    p = float(stats.hypergeom.sf(hits - 1, of_a + of_other, hits + false_alarms, of_a))
    return YesNo(hits, of_a, false_alarms, of_other, level, _distance(hits, of_a, false_alarms, of_other, level), p)


def power_of_calls(distances: ArrayLike, cups: int, alpha: float = 0.05) -> Array:
    """Chance that A-not-A finds a difference of d′ with so many cups of each kind, called A above the middle.

    >>> float(power_of_calls(1.0, 50).round(2))
    0.98
    """
    d = np.asarray(distances, dtype=np.float64)[..., None]
    calls = np.arange(cups + 1)
    hits, alarms = calls[:, None], calls[None, :]
    found = stats.hypergeom.sf(hits - 1, 2 * cups, hits + alarms, cups) <= alpha
    told = stats.binom.pmf(calls, cups, special.ndtr(d / 2))
    untold = stats.binom.pmf(calls, cups, special.ndtr(-d / 2))
    return np.asarray(np.einsum("...h,ha,...a->...", told, found.astype(float), untold))


def _distance(hits: int, of_a: int, alarms: int, of_other: int, level: float) -> Estimate:
    shares = np.array([hits / of_a, alarms / of_other])
    z = special.ndtri(shares)
    value = float(z[0] - z[1]) if shares[0] != shares[1] else 0.0
    if not (0 < shares[0] < 1 and 0 < shares[1] < 1):
        return Estimate(value, None, -np.inf, np.inf)
    spread = shares * (1 - shares) / np.array([of_a, of_other]) / stats.norm.pdf(z) ** 2
    error = float(np.sqrt(spread.sum()))
    reach = error * float(stats.norm.isf((1 - level) / 2))
    return Estimate(value, error, value - reach, value + reach)
