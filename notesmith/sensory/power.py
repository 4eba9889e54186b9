"""What a test can find before it is held: its power, and the trials that it needs."""

from collections.abc import Callable

import numpy as np
from numpy.typing import ArrayLike, NDArray
from scipy import stats

from notesmith.sensory.difference import least_right, most_right
from notesmith.sensory.protocols import Protocol

Array = NDArray[np.float64]
MOST_TRIALS = 20_000


def power(share: ArrayLike, trials: ArrayLike, chance: float, alpha: float = 0.05) -> Array:
    """Chance that a test finds a difference where that share of answers is right, exactly.

    >>> float(power(0.75, 20, 0.5).round(3))  # duo-trio, half of the trials truly told apart
    0.617
    """
    n = np.asarray(trials)
    return np.asarray(stats.binom.sf(least_right(n, chance, alpha) - 1, n, np.asarray(share)))


def power_of_pair(share: ArrayLike, trials: ArrayLike, alpha: float = 0.05) -> Array:
    """Chance that a paired comparison without an expected side finds a difference, to either side."""
    n, p = np.asarray(trials), np.asarray(share)
    least = least_right(n, 0.5, alpha / 2)
    return np.asarray(stats.binom.sf(least - 1, n, p) + stats.binom.cdf(n - least, n, p))


def power_alike(share: ArrayLike, trials: ArrayLike, limit: float, alpha: float = 0.05) -> Array:
    """Chance that a test shows products to be alike, where `share` of answers is right and `limit` is too many.

    >>> float(power_alike(0.5, 100, 2 / 3).round(3))  # duo-trio, nobody tells apart, a third would be too many
    0.956
    """
    n = np.asarray(trials)
    return np.asarray(stats.binom.cdf(most_right(n, limit, alpha), n, np.asarray(share)))


def power_curve(protocol: Protocol, distances: ArrayLike, trials: int, alpha: float = 0.05) -> Array:
    """Power over differences of d′."""
    return power(protocol.right(distances), trials, protocol.chance, alpha)


def trials_for(protocol: Protocol, distance: float, wanted: float = 0.9, alpha: float = 0.05) -> int | None:
    """Fewest trials that find a difference of d′ with the power wanted; None where thousands are not enough.

    >>> from notesmith.sensory.protocols import PAIR, TETRAD, TRIANGLE
    >>> [trials_for(at, 1.0) for at in (PAIR, TETRAD, TRIANGLE)]
    [30, 82, 283]
    """
    share = float(protocol.right(distance))
    return fewest(lambda n: power(share, n, protocol.chance, alpha), wanted)


def fewest(
    power_at: Callable[[Array], Array], wanted: float, *, steady: bool = False, most: int = MOST_TRIALS
) -> int | None:
    """Fewest trials whose power reaches the wanted; `steady` asks that it stays there, for power goes in a saw-tooth.

    >>> counts = [fewest(lambda n: power(0.75, n, 0.5), 0.8, steady=steady) for steady in (False, True)]
    >>> counts
    [23, 28]
    """
    upper = 64
    while upper <= most:
        n = np.arange(1, upper + 1, dtype=np.float64)
        enough = np.asarray(power_at(n)) >= wanted
        short = int(np.flatnonzero(~enough)[-1]) + 1 if not enough.all() else 0
        # Far beyond the last that is short, the saw-tooth is long over.
        if enough.any() and short * 1.5 + 20 <= upper:
            return short + 1 if steady else int(n[enough][0])
        upper *= 2
    return None
