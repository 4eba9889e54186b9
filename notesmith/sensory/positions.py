"""Whether it matters when a sample was tasted: its place in the session, and what was tasted before it."""

from dataclasses import dataclass

import numpy as np
from numpy.typing import ArrayLike, NDArray
from scipy import stats

from notesmith.sensory.difference import Estimate, limits

SHUFFLES = 9999


@dataclass(frozen=True)
class Drift:
    """Whether figures grow or fall over the places of a session."""

    places: int
    correlation: float
    """Spearman's, from -1 to 1."""
    p: float


def drift(figures: ArrayLike) -> Drift:
    """Whether figures taken in the order of tasting drift, by permutation; exact up to seven of them.

    >>> drift([9, 8, 7, 5, 4]).correlation
    -1.0

    Raises:
        ValueError: there are fewer than three figures, or all are alike.
    """
    values = np.asarray(figures, dtype=np.float64)
    if values.size < 3 or np.ptp(values) == 0:
        raise ValueError("a drift shows only in three figures or more that are not all alike")
    ranks, places = stats.rankdata(values), np.arange(values.size, dtype=np.float64)

    def together(shuffled: NDArray[np.float64]) -> float:
        return float(np.corrcoef(shuffled, places)[0, 1])

    found = stats.permutation_test((ranks,), together, permutation_type="pairings", n_resamples=SHUFFLES,
                                   rng=np.random.default_rng(1))  # fmt: skip
    return Drift(values.size, round(float(found.statistic), 12), float(found.pvalue))


@dataclass(frozen=True)
class FirstFavoured:
    """Whether the cup tasted first wins more often than the order allows."""

    wins: int
    pairs: int
    share: Estimate
    p: float


def first_favoured(wins: int, pairs: int, level: float = 0.95) -> FirstFavoured:
    """Weigh how often the cup tasted first was preferred, against one half, to either side.

    >>> round(first_favoured(9, 10).p, 4)
    0.0215
    """
    p = float(stats.binomtest(wins, pairs).pvalue)
    return FirstFavoured(wins, pairs, Estimate(wins / pairs, None, *limits(wins, pairs, level, "exact")), p)
