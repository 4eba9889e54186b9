"""Serving orders: each sample as often at each place, and each directly after each other one, as can be."""

from collections import Counter
from collections.abc import Sequence
from dataclasses import dataclass
from itertools import pairwise
from random import Random

from notesmith.records import Balance

Row = tuple[int, ...]

DRAWS = 50
"""How many choices of the orders left over are compared, where they do not fill a whole design."""


def williams(count: int) -> list[Row]:
    """The orders of a Williams design for so many samples: as many as samples, or twice that where they are odd.

    Williams 1949, Aust. J. Sci. Res. A 2:149-168; Wakeling & MacFie 1995, Food Qual. Pref. 6:299-308. The first order
    is 1 2 n 3 n-1 4 …, each next one goes a step further, and an odd square is followed by its mirror.

    >>> [tuple(sample + 1 for sample in row) for row in williams(4)]
    [(1, 2, 4, 3), (2, 3, 1, 4), (3, 4, 2, 1), (4, 1, 3, 2)]
    """
    first = [(place + 1) // 2 if place % 2 else -(place // 2) for place in range(count)]
    square = [tuple((sample + step) % count for sample in first) for step in range(count)]
    return square + [row[::-1] for row in square] if count % 2 else square


def serving_orders(count: int, rows: int, random: Random) -> list[Row]:
    """So many orders of so many samples: whole Williams designs, then the fairest of some choices of a part of one.

    Which sample takes which part in the design is drawn anew, and so is who gets which order.
    """
    design = williams(count)
    whole, left = divmod(rows, len(design))
    orders = [order for _ in range(whole) for order in _part(design, count, len(design), random)]
    if left:
        parts = [_part(design, count, left, random) for _ in range(DRAWS)]
        fairest = min(parts, key=_unfairness)
        orders += fairest
    names = random.sample(range(count), count)
    return [tuple(names[sample] for sample in order) for order in orders]


def _part(design: Sequence[Row], count: int, rows: int, random: Random) -> list[Row]:
    """A part of a design: a square is used up before its mirror is begun, so that places soon are even."""
    squares = [random.sample(design[start : start + count], count) for start in range(0, len(design), count)]
    random.shuffle(squares)
    return [order for square in squares for order in square][:rows]


def _unfairness(orders: Sequence[Row]) -> tuple[int, int]:
    fairness = fairness_of(orders)
    return fairness.place_spread, fairness.neighbour_spread


@dataclass(frozen=True)
class Fairness:
    """How far orders are balanced: between the most and the least often, how much lies for places and neighbours."""

    place_spread: int
    neighbour_spread: int

    @property
    def balance(self) -> Balance:
        """Whether nothing comes more often than another."""
        return "partial" if self.place_spread or self.neighbour_spread else "full"


def fairness_of(orders: Sequence[Row]) -> Fairness:
    """Count in these orders how often each sample stands at each place, and directly after each other one.

    >>> fairness_of([(0, 1, 2, 3), (1, 3, 0, 2), (2, 0, 3, 1), (3, 2, 1, 0)]).balance
    'full'
    >>> fairness_of([(0, 1, 2), (1, 2, 0), (2, 0, 1)])  # a Latin square evens places only
    Fairness(place_spread=0, neighbour_spread=2)
    """
    count = len(orders[0])
    places = Counter((place, sample) for order in orders for place, sample in enumerate(order))
    neighbours = Counter(pair for order in orders for pair in pairwise(order))
    return Fairness(_spread(places, count * count), _spread(neighbours, count * (count - 1)))


def _spread(counts: Counter[tuple[int, int]], possible: int) -> int:
    """Between the most and the least often, of all that could have come."""
    least = min(counts.values()) if len(counts) == possible else 0
    return max(counts.values(), default=0) - least
