"""Which samples differ, once it is known that some do; a table has a row for each taster, a column for each sample."""

from dataclasses import dataclass
from itertools import combinations

import numpy as np
from numpy.typing import ArrayLike
from scipy import stats
from statsmodels.stats.multitest import multipletests

from notesmith.sensory.ranking import table_of


@dataclass(frozen=True)
class Between:
    """Two samples set apart after the test of all; samples are counted from 0."""

    one: int
    other: int
    p: float


def nemenyi(scores: ArrayLike) -> list[Between]:
    """Every pair of samples by the studentised range of mean ranks (Nemenyi 1963): careful, and blind to ties."""
    table = table_of(scores)
    tasters, samples = table.shape
    mean = stats.rankdata(table, axis=1).mean(axis=0)
    error = np.sqrt(samples * (samples + 1) / (6 * tasters))
    return [
        Between(i, j, float(stats.studentized_range.sf(abs(mean[i] - mean[j]) / error * np.sqrt(2), samples, np.inf)))
        for i, j in combinations(range(samples), 2)
    ]


def conover(scores: ArrayLike, *, holm: bool = True) -> list[Between]:
    """Every pair of samples by Conover's t of rank sums, by default with Holm's correction for so many looks."""
    table = table_of(scores)
    tasters, samples = table.shape
    ranks = stats.rankdata(table, axis=1)
    sums, freedom = ranks.sum(axis=0), (tasters - 1) * (samples - 1)
    squares, middle = float((ranks**2).sum()), tasters * samples * (samples + 1) ** 2 / 4
    statistic = (samples - 1) * float(((sums - sums.mean()) ** 2).sum()) / (squares - middle)
    left = 1 - statistic / (tasters * (samples - 1))
    error = np.sqrt(2 * tasters * (squares - middle) * left / freedom)
    pairs = list(combinations(range(samples), 2))
    apart = np.array([abs(sums[i] - sums[j]) for i, j in pairs])
    with np.errstate(divide="ignore", invalid="ignore"):
        p = np.where(apart > 0, 2 * stats.t.sf(apart / error, freedom), 1.0)
    p = multipletests(p, method="holm")[1] if holm else p
    return [Between(i, j, float(at)) for (i, j), at in zip(pairs, p, strict=True)]
