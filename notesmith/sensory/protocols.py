"""The protocols of difference testing: what guessing alone gives, and how often a difference of d′ is told right.

d′ is the distance between two products in standard deviations of what is perceived of one of them (Thurstone). The
functions are the published ones: Ennis 1993 (J. Sens. Stud. 8:353-370) for pair, duo-trio, triangle and 3-AFC; Ennis,
Ennis, Palen & O'Mahony 1998 for the tetrad; for two-out-of-five, the middle of the five goes with its nearer neighbour.
All citations are from memory.
"""

from collections.abc import Callable
from dataclasses import dataclass
from functools import cache

import numpy as np
from numpy.polynomial.legendre import leggauss
from numpy.typing import ArrayLike, NDArray
from scipy import optimize, special

Array = NDArray[np.float64]
FARTHEST = 12.0
"""The largest d′ that is told from a larger one."""


@dataclass(frozen=True)
class Protocol:
    """A test in which every trial is answered right or wrong."""

    name: str
    title: str
    chance: float
    """The share of right answers that guessing gives."""
    law: Callable[[Array], Array]
    tasted: int
    """Cups in one trial."""

    def right(self, d: ArrayLike) -> Array:
        """Share of right answers to expect where products differ by d′, 0 or more.

        >>> float(TRIANGLE.right(1.0).round(4))
        0.418
        """
        return self.law(np.asarray(d, dtype=np.float64))

    def slope(self, d: float) -> float:
        """How fast the share of right answers grows with d′."""
        step = 1e-4
        apart = self.right(np.array([d - 2 * step, d - step, d + step, d + 2 * step]))
        return float((apart[0] - 8 * apart[1] + 8 * apart[2] - apart[3]) / (12 * step))

    def distance(self, share: float) -> float:
        """d′ behind a share of right answers: 0 at chance or below, infinite where all are right.

        >>> round(TETRAD.distance(2 / 3), 4)
        1.5878
        """
        if share <= self.chance:
            return 0.0
        if share >= float(self.right(FARTHEST)):
            return np.inf
        return float(optimize.brentq(lambda d: float(self.right(d)) - share, 0, FARTHEST, xtol=1e-12))

    def share(self, discriminating: float) -> float:
        """Share of right answers where that share of trials is truly told apart and the rest guessed."""
        return self.chance + discriminating * (1 - self.chance)

    def told_apart(self, share: float) -> float:
        """Share of trials truly told apart behind a share of right answers, never below 0."""
        return max(0.0, (share - self.chance) / (1 - self.chance))


def _pair(d: Array) -> Array:
    return np.asarray(special.ndtr(d / np.sqrt(2)))


def _duo_trio(d: Array) -> Array:
    near, far = special.ndtr(d / np.sqrt(2)), special.ndtr(d / np.sqrt(6))
    return np.asarray(1 - near - far + 2 * near * far)


def _triangle(d: Array) -> Array:
    z, weight = _normal(0.0, 9.0)
    shift = d[..., None] * np.sqrt(2 / 3)
    beyond = special.ndtr(shift - z * np.sqrt(3)) + special.ndtr(-shift - z * np.sqrt(3))
    return np.asarray(2 * beyond @ weight)


def _three_afc(d: Array) -> Array:
    z, weight = _normal(-9.0, 9.0)
    return np.asarray(special.ndtr(z + d[..., None]) ** 2 @ weight)


def _tetrad(d: Array) -> Array:
    x, weight = _normal(-9.0, 9.0)
    below = special.ndtr(x - d[..., None])
    return np.asarray(1 - 2 * (2 * special.ndtr(x) * below - below**2) @ weight)


def _two_out_of_five(d: Array) -> Array:
    gap, weight = _two_highest()
    shift = d[..., None]
    return np.asarray((special.ndtr(shift - gap) ** 2 + special.ndtr(-shift - gap) ** 2) @ weight)


@cache
def _normal(low: float, high: float) -> tuple[Array, Array]:
    """Points from `low` to `high`, and weights that make a sum over them an expectation under the normal law."""
    node, weight = leggauss(120)
    z = (high - low) / 2 * node + (high + low) / 2
    return z, (high - low) / 2 * weight * np.exp(-(z**2) / 2) / np.sqrt(2 * np.pi)


@cache
def _two_highest() -> tuple[Array, Array]:
    """How high the lower of two odd cups must be: farther from the highest of three others than that from the next."""
    node, weight = leggauss(64)
    highest, gap = 8 * node[:, None], 6 * (node[None, :] + 1)
    second = highest - gap
    density = 6 * np.exp(-(highest**2 + second**2) / 2) / (2 * np.pi) * special.ndtr(second)
    return (highest + gap).ravel(), (density * np.outer(8 * weight, 6 * weight)).ravel()


TRIANGLE = Protocol("triangle", "triangle test", 1 / 3, _triangle, 3)
DUO_TRIO = Protocol("duo-trio", "duo-trio test", 1 / 2, _duo_trio, 3)
PAIR = Protocol("pair", "paired comparison", 1 / 2, _pair, 2)
TETRAD = Protocol("tetrad", "tetrad test", 1 / 3, _tetrad, 4)
THREE_AFC = Protocol("3-afc", "three-alternative forced choice", 1 / 3, _three_afc, 3)
TWO_OUT_OF_FIVE = Protocol("two-out-of-five", "two-out-of-five test", 1 / 10, _two_out_of_five, 5)
PROTOCOLS = {at.name: at for at in (TRIANGLE, DUO_TRIO, PAIR, TETRAD, THREE_AFC, TWO_OUT_OF_FIVE)}
"""The protocols by name; A-not-A, in which two kinds of trial are set beside each other, stands in `yes_no.py`."""
