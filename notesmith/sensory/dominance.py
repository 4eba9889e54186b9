"""The order of sensations in time: which one dominates when, over sips of different lengths laid upon each other.

The share of sips in which a sensation dominates is drawn over the sip from its start, 0, to its end, 1. With k
sensations chance gives each 1/k; Pineau and others 2009 (Food Qual. Pref. 20:450-455, from memory) set the bound of
what is more by the normal law, which takes one sip of three for proof: here the bound is the binomial law's own.
"""

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from notesmith.sensory.difference import least_right

Array = NDArray[np.float64]


@dataclass(frozen=True)
class Sip:
    """One sip: when it began and ended, and each sensation with the second in which it was named."""

    start: float
    end: float
    named: tuple[tuple[float, str], ...]


@dataclass(frozen=True)
class Dominance:
    """The curves of all sensations."""

    sips: int
    times: Array
    """From 0, where sips begin, to 1, where they end."""
    curves: dict[str, Array]
    """Share of sips that each sensation dominates at these times; sensations in the order of their peaks."""
    chance: float
    significant: float
    """The least share that is hardly chance at one time, infinite where not even all sips would do."""


def dominance(sips: Sequence[Sip], steps: int = 100, alpha: float = 0.05) -> Dominance:
    """Lay the sips upon each other: a sensation dominates from when it is named until the next one is.

    >>> sips = Sip(10, 20, ((10, "sweet"), (15, "smoky"))), Sip(0, 4, ((1, "sweet"), (2, "smoky")))
    >>> found = dominance(sips, steps=4)
    >>> found.curves["sweet"].tolist()
    [0.5, 1.0, 0.0, 0.0, 0.0]

    Raises:
        ValueError: there are no sips, one ends before it begins, or a sensation lies outside of its sip.
    """
    _refuse(sips)
    times = np.linspace(0, 1, steps + 1)
    names = sorted({name for sip in sips for _, name in sip.named})
    shares = {name: np.mean([_ruling(sip, times) == name for sip in sips], axis=0) for name in names}
    curves = {name: shares[name] for name in sorted(names, key=lambda name: (int(shares[name].argmax()), name))}
    chance = 1 / len(names)
    least = int(least_right(len(sips), chance, alpha))
    return Dominance(len(sips), times, curves, chance, least / len(sips) if least <= len(sips) else np.inf)


def _ruling(sip: Sip, times: Array) -> NDArray[np.str_]:
    """What dominates the sip at each time; empty before anything is named."""
    named = sorted(sip.named)
    at = np.array([(second - sip.start) / (sip.end - sip.start) for second, _ in named])
    return np.array(["", *(name for _, name in named)])[np.searchsorted(at, times, side="right")]


def _refuse(sips: Sequence[Sip]) -> None:
    if not any(sip.named for sip in sips):
        raise ValueError("no sip in which a sensation was named")
    for sip in sips:
        if sip.end <= sip.start or any(not sip.start <= second <= sip.end for second, _ in sip.named):
            raise ValueError(f"the sip at {sip.start:g} s must end after it begins, and sensations lie in it")
