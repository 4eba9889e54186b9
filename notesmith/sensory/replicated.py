"""Trials repeated by the same tasters: the beta-binomial law, which lets some tell better than others.

Answers of one taster are alike for a reason: counted as if each came from somebody else, they prove too much. The share
of trials told apart follows a beta law over tasters with mean `mean` and heterogeneity `gamma` between 0 (all alike)
and 1 (some always, others never); Brockhoff 2003, Food Qual. Pref. 14:405-417, from memory.
"""

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray
from scipy import optimize, special, stats

Array = NDArray[np.float64]
BEYOND = 9.0
"""Logits beyond which a share is 0 or 1."""


@dataclass(frozen=True)
class Replicated:
    """What repeated trials of several tasters say."""

    tasters: int
    trials: int
    mean: float
    """Share of trials: told apart where a chance was given, right otherwise."""
    gamma: float
    """Heterogeneity of the tasters, from 0 to 1."""
    likelihood: float
    """Logarithm of the likelihood."""
    p_difference: float | None
    """How often guessing does as well: both the mean and the heterogeneity stand against chance, if one was given."""
    p_alike: float
    """How often tasters who are all alike seem to differ so much."""

    @property
    def effective(self) -> float:
        """How many trials, each by another taster, would tell as much.

        >>> Replicated(4, 40, 0.5, 0.5, 0.0, 1.0, 1.0).effective  # ten trials each, half of it repetition
        7.2727272727272725
        """
        return self.trials / (1 + (self.trials / self.tasters - 1) * self.gamma)


def judge_replicated(right: Sequence[int], trials: Sequence[int], chance: float | None = None) -> Replicated:
    """Weigh the right answers of each taster among the trials of each.

    Raises:
        ValueError: there are fewer than two tasters, no taster has more than one trial, or counts do not fit.
    """
    x, n = np.asarray(right, dtype=np.int64), np.asarray(trials, dtype=np.int64)
    _refuse(x, n)
    floor = chance or 0.0
    best, mean, gamma = _fit(x, n, floor)
    alike = max(x.sum() / n.sum(), floor)
    one = float(stats.binom.logpmf(x, n, alike).sum())
    best, mean, gamma = max((best, mean, gamma), (one, (alike - floor) / (1 - floor), 0.0))
    p_difference = _p(best - float(stats.binom.logpmf(x, n, floor).sum()), 2) if chance else None
    return Replicated(len(x), int(n.sum()), mean, gamma, best, p_difference, _p(best - one, 1))


def _refuse(x: NDArray[np.int64], n: NDArray[np.int64]) -> None:
    if len(x) != len(n) or (x < 0).any() or (x > n).any():
        raise ValueError("each taster needs trials, and no more right answers than trials")
    if len(x) < 2 or n.max() < 2:
        raise ValueError("how tasters differ shows only in repeated trials of two or more of them")


def _fit(x: NDArray[np.int64], n: NDArray[np.int64], floor: float) -> tuple[float, float, float]:
    def lacking(logits: Array) -> float:
        mean, gamma = special.expit(np.clip(logits, -BEYOND, BEYOND))
        return -likelihood(x, n, float(mean), float(gamma), floor)

    told = min(max((x.sum() / n.sum() - floor) / (1 - floor), 0.1), 0.9)
    starts = [(special.logit(told), spread) for spread in (-2.0, 0.0)]
    options = {"xatol": 1e-7, "fatol": 1e-10, "maxiter": 2000}
    fits = [optimize.minimize(lacking, start, method="Nelder-Mead", options=options) for start in starts]
    found = min(fits, key=lambda fit: fit.fun)
    mean, gamma = special.expit(np.clip(found.x, -BEYOND, BEYOND))
    return -float(found.fun), float(mean), float(gamma)


def likelihood(x: NDArray[np.int64], n: NDArray[np.int64], mean: float, gamma: float, floor: float) -> float:
    """Logarithm of the likelihood, summed over tasters; `floor` is what guessing gives.

    The right answers are those told apart and those guessed among the rest: a sum over how many were told apart.
    """
    weight = (1 - gamma) / gamma
    a, b = mean * weight, (1 - mean) * weight
    if floor == 0:
        return float(stats.betabinom.logpmf(x, n, a, b).sum())
    told = np.arange(int(n.max()) + 1)[None, :]
    x, n = x[:, None], n[:, None]
    some = told <= x
    guessed = stats.binom.logpmf(x - told, np.where(some, n - told, 0), floor)
    terms = np.where(some, stats.betabinom.logpmf(told, n, a, b) + guessed, -np.inf)
    return float(special.logsumexp(terms, axis=1).sum())


def _p(gain: float, parameters: int) -> float:
    """Likelihood-ratio test; at the edge of what can be, half of the chi-squared law falls to each lower degree."""
    ratio = max(0.0, 2 * gain)
    if ratio == 0:
        return 1.0
    upper, lower = stats.chi2.sf(ratio, parameters), stats.chi2.sf(ratio, parameters - 1) if parameters > 1 else 0.0
    return float((upper + lower) / 2)
