"""Round robins and knock-outs: everybody meets whom they should, and results find their games."""

from collections import Counter
from itertools import combinations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from notesmith.errors import SheetError
from notesmith.planning.games import Game, Result, knock_out, round_robin
from notesmith.planning.standings import standings

MANY = st.integers(2, 33)


def names(count: int) -> list[str]:
    """Entrants, strongest first."""
    return [f"tea {number}" for number in range(count)]


def played(*results: tuple[str, str, str | None]) -> list[Result]:
    """Results: one, other, winner."""
    return [Result(one=one, other=other, winner=winner) for one, other, winner in results]


@given(count=MANY)
def test_in_a_round_robin_everybody_meets_everybody_once(count: int) -> None:
    """Nobody meets twice in a round, and of odd numbers everybody has one bye."""
    rounds = round_robin(names(count))
    games = [game for games in rounds for game in games]
    met = [frozenset((game.one, game.other)) for game in games if not game.bye]
    assert sorted(map(sorted, met)) == sorted(map(list, combinations(sorted(names(count)), 2)))
    assert all(len(here) == len(set(here)) for here in map(everybody, rounds))
    assert Counter(game.one for game in games if game.bye) == Counter(names(count) if count % 2 else [])


def everybody(games: list[Game]) -> list[str]:
    """All who are named in these games."""
    return [name for game in games for name in (game.one, game.other) if name]


@given(count=MANY)
def test_a_knock_out_takes_one_game_less_than_entrants(count: int) -> None:
    """The strongest have the byes of the first round, and there are none later."""
    rounds = knock_out(names(count))
    assert sum(not game.bye for games in rounds for game in games) == count - 1
    byes = [game.one for game in rounds[0] if game.bye]
    assert sorted(byes) == sorted(names(count)[: len(byes)])
    assert not [game for games in rounds[1:] for game in games if game.bye]


@given(count=MANY)
def test_where_the_stronger_always_wins_the_first_two_meet_at_last(count: int) -> None:
    """Seeding keeps them apart until then, and in each round the strongest that are left meet the weakest."""
    entrants, results = names(count), list[Result]()
    for _ in range(count - 1):
        ready = [game for games in knock_out(entrants, results) for game in games if game.ready]
        one, other = sorted((ready[0].one or "", ready[0].other or ""), key=entrants.index)
        results.append(Result(one=one, other=other, winner=one))
    last = knock_out(entrants, results)[-1][0]
    assert {last.one, last.other} == set(entrants[:2])
    assert last.winner == entrants[0]


def test_of_eight_the_first_round_pairs_as_is_common() -> None:
    """1-8, 4-5, 2-7, 3-6 (common practice, no source)."""
    pairs = [(game.one, game.other) for game in knock_out([str(seed) for seed in range(1, 9)])[0]]
    assert pairs == [("1", "8"), ("4", "5"), ("2", "7"), ("3", "6")]


def test_a_result_finds_its_game_whoever_is_named_first() -> None:
    """Written the other way round."""
    games = round_robin(["a", "b", "c", "d"], played(("d", "a", "d")))
    assert [game.winner for round_ in games for game in round_ if game.result] == ["d"]


@pytest.mark.parametrize(
    ("results", "says"),
    [
        ([("a", "a", "a")], "`a` meets itself"),
        ([("a", "d", "b")], "`b` won where a met d"),
        ([("a", "d", "a"), ("d", "a", "d")], "a|d and a|d met twice"),
        ([("a", "b", "a")], "a and b do not meet in this knock-out"),
        ([("a", "d", None)], "neither a nor d won"),
    ],
)
def test_a_result_that_cannot_be_is_refused(results: list[tuple[str, str, str | None]], says: str) -> None:
    """A knock-out of four: a meets d, b meets c."""
    with pytest.raises(SheetError, match=says):
        knock_out(["a", "b", "c", "d"], played(*results))


def test_nobody_has_played_yet() -> None:
    """All share the first rank, in the order they are listed."""
    assert [(row.rank, row.entrant) for row in standings(["a", "b"], [])] == [(1, "a"), (1, "b")]


def test_equals_are_parted_by_the_game_between_them() -> None:
    """Two have a point each, and the one has beaten the other."""
    table = standings(["a", "b", "c"], played(("a", "b", "b"), ("a", "c", "a")))
    assert [(row.rank, row.entrant) for row in table] == [(1, "b"), (2, "a"), (3, "c")]


def test_a_circle_of_wins_stays_equal() -> None:
    """Where each has beaten the next nobody is better, and nobody is made so."""
    table = standings(["a", "b", "c"], played(("a", "b", "a"), ("b", "c", "b"), ("c", "a", "c")))
    assert [row.rank for row in table] == [1, 1, 1]


def test_a_draw_is_half_a_point_each() -> None:
    """No winner was named."""
    assert [row.points for row in standings(["a", "b"], played(("a", "b", None)))] == [0.5, 0.5]
