"""Ways to go on from what was last perceived, to stay with it or to turn, and what marks make them worth."""

from collections.abc import Callable, Iterator, Mapping

import numpy as np
from numpy.typing import NDArray

Sign = tuple[str, int]  # what speaks, and for which slot


class Ways:
    """Weighs every way to go on from every slot; 0 is nobody, or none."""

    def __init__(self, ways: Callable[[int, int], Iterator[Sign]], size: int, weights: Mapping[str, float]) -> None:
        self.ways, self.size, self.weights = ways, size, weights
        self.known: dict[tuple[str, ...], NDArray[np.float64]] = {}

    def worth(self, marks: tuple[str, ...]) -> NDArray[np.float64]:
        """What some marks make every way worth; a row for every slot that is gone on from. Not to be written into."""
        if marks not in self.known:
            table = self.known[marks] = np.zeros((self.size + 1, self.size + 1))
            for last in range(self.size + 1):
                for way, slot in self.ways(last, self.size):
                    table[last, slot] += sum(self.weights.get(name, 0.0) for name in marked(way, marks))
        return self.known[marks]


def marked(way: str, marks: tuple[str, ...]) -> list[str]:
    """The names under which a way is weighed: its own, and one a mark.

    >>> marked("stay", ("gap 2",))
    ['stay', 'stay, gap 2']
    """
    return [way, *(f"{way}, {mark}" for mark in marks)]
