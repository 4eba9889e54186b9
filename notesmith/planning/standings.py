"""How entrants stand after the games they have played."""

from collections import Counter
from collections.abc import Iterable, Sequence
from dataclasses import dataclass

from notesmith.planning.games import Result


@dataclass(frozen=True)
class Standing:
    """How an entrant stands; a win is a point and a draw half of one, and equals share a rank."""

    rank: int
    entrant: str
    won: int
    drawn: int
    lost: int

    @property
    def points(self) -> float:
        """Points from all games."""
        return self.won + self.drawn / 2


def standings(entrants: Sequence[str], results: Iterable[Result]) -> list[Standing]:
    """Most points first; among equals whoever has most points from the games between them (common practice, no source).

    Those still equal share a rank, and are listed as the entrants are.

    >>> results = [Result(one="a", other="b", winner="b"), Result(one="b", other="c", winner=None)]
    >>> [(row.rank, row.entrant, row.points) for row in standings(["a", "b", "c"], results)]
    [(1, 'b', 1.5), (2, 'c', 0.5), (3, 'a', 0.0)]
    """
    results = list(results)
    points = _points(results)
    worth = {name: (points[name], _among_equals(name, points, results)) for name in entrants}
    ordered = sorted(entrants, key=worth.__getitem__, reverse=True)
    better = {name: sum(worth[other] > worth[name] for other in entrants) for name in entrants}
    return [_standing(name, better[name] + 1, results) for name in ordered]


def _points(results: Iterable[Result]) -> Counter[str]:
    """Points in halves, so that they add up."""
    points: Counter[str] = Counter()
    for result in results:
        for name in (result.one, result.other):
            points[name] += 1 if result.winner is None else 2 * (result.winner == name)
    return points


def _among_equals(name: str, points: Counter[str], results: Iterable[Result]) -> int:
    mine = (result for result in results if name in (result.one, result.other))
    return _points(result for result in mine if points[result.one] == points[result.other])[name]


def _standing(name: str, rank: int, results: Iterable[Result]) -> Standing:
    mine = [result.winner for result in results if name in (result.one, result.other)]
    won, drawn = mine.count(name), mine.count(None)
    return Standing(rank, name, won, drawn, len(mine) - won - drawn)
