"""What is worth its price: the frontier that nothing beats, and the knee after which more money buys little."""

import numpy as np
from numpy.typing import ArrayLike, NDArray

Array = NDArray[np.float64]


def frontier(prices: ArrayLike, scores: ArrayLike) -> list[int]:
    """Places of the offers that none beats by being as cheap and as good, and better in one; from the cheapest.

    >>> frontier([10, 20, 15, 30], [5, 8, 4, 8])
    [0, 1]

    Raises:
        ValueError: there is not a price and a score for each, or one is no number.
    """
    price, score = np.asarray(prices, dtype=np.float64), np.asarray(scores, dtype=np.float64)
    if price.shape != score.shape or price.ndim != 1 or not (np.isfinite(price).all() and np.isfinite(score).all()):
        raise ValueError("every offer needs a price and a score")
    cheaper, better = price[:, None] <= price, score[:, None] >= score
    beaten = (cheaper & better & ((price[:, None] < price) | (score[:, None] > score))).any(axis=0)
    return sorted(np.flatnonzero(~beaten).tolist(), key=lambda at: (price[at], at))


def knee(prices: ArrayLike, scores: ArrayLike) -> int | None:
    """The offer on the frontier after which a higher price buys ever less, None where there is no such.

    Prices and scores of the frontier are both stretched to run from 0 to 1; the knee is where the score is farthest
    above the price (Satopää, Albrecht, Irwin & Raghavan 2011, "Finding a Kneedle in a Haystack", offline, unsmoothed).

    >>> knee([10, 20, 30, 60], [5, 8, 8.5, 10])
    1
    """
    best = frontier(prices, scores)
    price, score = (np.asarray(figures, dtype=np.float64)[best] for figures in (prices, scores))
    if len(best) < 3 or np.ptp(price) == 0 or np.ptp(score) == 0:
        return None
    above = (score - score.min()) / np.ptp(score) - (price - price.min()) / np.ptp(price)
    above = np.round(above, 9)  # of two as far above, the cheaper
    return best[int(above.argmax())] if above.max() > 0 else None
