"""Samples ranked or scored by several tasters: do they differ, do the tasters agree.

A table has a row for each taster (or session) and a column for each sample; where scores are alike, ranks are shared.
"""

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np
from numpy.typing import ArrayLike, NDArray
from scipy import stats

Array = NDArray[np.float64]


@dataclass(frozen=True)
class Concordance:
    """Whether samples differ (Friedman 1937) and how far tasters agree on it (Kendall's W), corrected for ties."""

    tasters: int
    samples: int
    statistic: float
    """Friedman's, to be set against the chi-squared law."""
    p: float
    w: float
    """Kendall's W: 0 where tasters do not agree at all, 1 where all rank alike."""
    rank_sums: tuple[float, ...]
    """The higher the score, the higher the rank."""


@dataclass(frozen=True)
class Trend:
    """Whether samples come in an order that was foreseen (Page 1963)."""

    tasters: int
    samples: int
    statistic: float
    """Page's L."""
    p: float


def concordance(scores: ArrayLike) -> Concordance:
    """Friedman's test and Kendall's W of tasters (rows) over samples (columns).

    >>> from numpy import array
    >>> found = concordance(array([[1, 2, 3], [1, 2, 3], [1, 3, 2]]))
    >>> round(found.w, 3), found.rank_sums
    (0.778, (3.0, 7.0, 8.0))

    Raises:
        ValueError: there are fewer than two tasters or three samples, or every taster puts all samples alike.
    """
    table = table_of(scores)
    tasters, samples = table.shape
    ranks = stats.rankdata(table, axis=1)
    if np.ptp(ranks) == 0:
        raise ValueError("every taster puts all samples alike: there is nothing to rank")
    statistic, p = stats.friedmanchisquare(*table.T)
    w = float(statistic) / (tasters * (samples - 1))
    return Concordance(tasters, samples, float(statistic), float(p), w, tuple(map(float, ranks.sum(axis=0))))


def trend(scores: ArrayLike) -> Trend:
    """Page's L: whether scores grow over the columns, left to right, as was foreseen before the tasting."""
    table = table_of(scores)
    found = stats.page_trend_test(table)
    return Trend(table.shape[0], table.shape[1], float(found.statistic), float(found.pvalue))


def table_of(scores: ArrayLike | Sequence[Sequence[float]]) -> Array:
    """A table of scores, checked: two tasters or more, three samples or more, no gaps."""
    table = np.asarray(scores, dtype=np.float64)
    if table.ndim != 2 or table.shape[0] < 2 or table.shape[1] < 3:
        raise ValueError("a ranking needs two tasters or more, and three samples or more")
    if not np.isfinite(table).all():
        raise ValueError("every taster must have a score for every sample")
    return table
