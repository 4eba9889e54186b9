"""Who meets whom over many episodes: the games of a round robin and of a knock-out, with their byes and results."""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass

from pydantic import Field

from notesmith.errors import SheetError
from notesmith.records import Record


class Result(Record):
    """How two entrants compared in an episode."""

    one: str = Field(description="One of the two that met.")
    other: str = Field(description="The other one.")
    winner: str | None = Field(None, description="Which of the two was better; left out where neither was.")
    episode: str = Field("", description="The episode in which they met.")


@dataclass(frozen=True)
class Game:
    """Two that meet, once both are known; one alone has a bye."""

    one: str | None
    other: str | None
    bye: bool = False
    result: Result | None = None

    @property
    def winner(self) -> str | None:
        """Who goes on: the better one, or whoever has a bye."""
        return self.one if self.bye else self.result.winner if self.result else None

    @property
    def ready(self) -> bool:
        """Whether it can be played now."""
        return bool(self.one and self.other) and self.result is None


def round_robin(entrants: Sequence[str], results: Iterable[Result] = ()) -> list[list[Game]]:
    """The rounds in which everybody meets everybody else once; where their number is odd, one has a bye in each.

    One stays in place and the others walk round the table (the circle method, from memory).

    >>> [[(game.one, game.other) for game in games] for games in round_robin(["a", "b", "c"])]
    [[('c', None), ('a', 'b')], [('a', None), ('b', 'c')], [('b', None), ('c', 'a')]]
    """
    met = _by_pair(results)
    empty = [""] * (len(entrants) % 2)
    still, walking = (empty or [entrants[0]])[0], list(entrants if empty else entrants[1:])
    rounds = []
    for _ in range(len(walking)):
        table = [still, *walking]
        half = len(table) // 2
        rounds.append([_game(one, other, met) for one, other in zip(table[:half], reversed(table[half:]), strict=True)])
        walking = [*walking[1:], walking[0]]
    return rounds


def knock_out(entrants: Sequence[str], results: Iterable[Result] = ()) -> list[list[Game]]:
    """The rounds of a knock-out, strongest first: the strongest have the byes, and the first two can meet only at last.

    Raises:
        SheetError: a result is of two that do not meet, or has no winner.

    >>> [[(game.one, game.other) for game in games] for games in knock_out(["a", "b", "c"])]
    [[('a', None), ('b', 'c')], [('a', None)]]
    """
    met = _by_pair(results)
    going_on: list[str | None] = [entrants[seed] if seed < len(entrants) else "" for seed in _places(len(entrants))]
    rounds = []
    while len(going_on) > 1:
        games = [_game(one, other, met) for one, other in zip(going_on[::2], going_on[1::2], strict=True)]
        rounds.append(games)
        going_on = [game.winner for game in games]
    _refuse_strange(rounds, met.values())
    return rounds


def _places(entrants: int) -> list[int]:
    """Seeds in the order of the board, the first of all being 0, with empty ones up to a power of two.

    >>> _places(7)
    [0, 7, 3, 4, 1, 6, 2, 5]
    """
    seeds = [0]
    while len(seeds) < entrants:
        seeds = [seed for one in seeds for seed in (one, 2 * len(seeds) - 1 - one)]
    return seeds


def _by_pair(results: Iterable[Result]) -> dict[frozenset[str], Result]:
    met: dict[frozenset[str], Result] = {}
    for result in results:
        pair = frozenset((result.one, result.other))
        if len(pair) < 2:
            raise SheetError(f"`{result.one}` meets itself", mend="name two entrants")
        if result.winner not in (None, *pair):
            raise SheetError(f"`{result.winner}` won where {result.one} met {result.other}", mend="name one of the two")
        if pair in met:
            raise SheetError(f"{result.one} and {result.other} met twice", mend="keep the result that counts")
        met[pair] = result
    return met


def _game(one: str | None, other: str | None, met: dict[frozenset[str], Result]) -> Game:
    """A game; nobody is an empty name, and None is somebody not known yet."""
    if one == "" or other == "":
        return Game(one or other, None, bye=True)
    return Game(one, other, result=met.get(frozenset((one or "", other or ""))))


def _refuse_strange(rounds: list[list[Game]], results: Iterable[Result]) -> None:
    due = [game.result for games in rounds for game in games]
    for result in results:
        if result not in due:
            raise SheetError(
                f"{result.one} and {result.other} do not meet in this knock-out", mend="take the result out"
            )
        if result.winner is None:
            raise SheetError(
                f"neither {result.one} nor {result.other} won", mend="a knock-out needs a winner: play again"
            )
