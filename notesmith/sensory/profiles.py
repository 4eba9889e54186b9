"""Profiles: how often a term was found in a sample and how strongly, with intervals."""

from dataclasses import dataclass

import numpy as np
from numpy.typing import ArrayLike
from scipy import stats
from statsmodels.stats.contingency_tables import cochrans_q

from notesmith.sensory.ranking import table_of


@dataclass(frozen=True)
class Spoke:
    """One figure of a profile with its interval, None where too few tell."""

    looks: int
    value: float
    low: float | None
    high: float | None


def presence(found: int, looks: int, level: float = 0.95) -> Spoke:
    """Share of looks at a sample in which a term was found, with Wilson's interval.

    >>> spoke = presence(6, 8)
    >>> spoke.value, round(spoke.low, 3), round(spoke.high, 3)
    (0.75, 0.409, 0.929)

    Raises:
        ValueError: nobody looked, or it was found more often.
    """
    if not 0 <= found <= looks or looks == 0:
        raise ValueError(f"found {found} times in {looks} looks: there must be looks, and no more finds")
    interval = stats.binomtest(found, looks).proportion_ci(level, "wilson")
    return Spoke(looks, found / looks, float(interval.low), float(interval.high))


def intensity(strengths: ArrayLike, level: float = 0.95, *, most: float = 3.0) -> Spoke:
    """Mean of strengths from 0 to `most`, with Student's interval cut to that range; none where no two looks differ.

    >>> intensity([2.0])
    Spoke(looks=1, value=2.0, low=None, high=None)
    """
    values = np.asarray(strengths, dtype=np.float64)
    if values.size == 0 or values.min() < 0 or values.max() > most:
        raise ValueError(f"strengths must lie between 0 and {most:g}, and there must be some")
    mean = float(values.mean())
    if np.ptp(values) == 0:
        return Spoke(values.size, mean, None, None)
    reach = float(stats.t.isf((1 - level) / 2, values.size - 1) * stats.sem(values))
    return Spoke(values.size, mean, max(0.0, mean - reach), min(most, mean + reach))


def cochran(present: ArrayLike) -> tuple[float, float]:
    """Cochran's Q and its p: whether a term is found in some samples more often, tasters in rows, 1 for found."""
    table = table_of(present)
    if not ((table == 0) | (table == 1)).all():
        raise ValueError("a term is either found, 1, or not, 0")
    if (table.min(axis=1) == table.max(axis=1)).all():
        return 0.0, 1.0
    found = cochrans_q(table)
    return float(found.statistic), float(found.pvalue)
