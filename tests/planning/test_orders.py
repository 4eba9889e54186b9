"""Serving orders: published designs, and what may be said of those that are drawn."""

import tomllib
from collections import Counter
from itertools import pairwise
from pathlib import Path
from random import Random
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from notesmith.planning.orders import Row, fairness_of, serving_orders, williams

CASES = tomllib.loads((Path(__file__).parents[1] / "cases" / "planning" / "williams.toml").read_text("utf-8"))


def rows_of(design: str) -> list[Row]:
    """A design as it is written, its signs numbered from 0."""
    signs = sorted(set("".join(design.split())))
    return [tuple(signs.index(sign) for sign in row) for row in design.split()]


@pytest.mark.parametrize("case", CASES["balanced"], ids=lambda case: f"{case['of']}-{case['source'][:12]}")
def test_a_published_design_is_found_balanced(case: dict[str, Any]) -> None:
    """Every sample as often at each place and directly after each other one."""
    fairness = fairness_of(rows_of(case["design"]))
    assert (fairness.place_spread, fairness.neighbour_spread, fairness.balance) == (0, 0, "full")


@pytest.mark.parametrize("case", [case for case in CASES["balanced"] if case["ours"]], ids=lambda case: case["of"])
def test_a_published_design_is_made(case: dict[str, Any]) -> None:
    """The algorithm makes the same rows in the same order."""
    assert williams(case["of"]) == rows_of(case["design"])


def test_the_first_rows_for_ten_are_the_printed_ones() -> None:
    """1 2 10 3 9 4 8 5 7 6 and the two after it, as crossdes prints them (seen)."""
    printed = "1 2 10 3 9 4 8 5 7 6 / 2 3 1 4 10 5 9 6 8 7 / 3 4 2 5 1 6 10 7 9 8"
    assert williams(10)[:3] == [tuple(int(sign) - 1 for sign in row.split()) for row in printed.split("/")]


@pytest.mark.parametrize("case", CASES["unbalanced"], ids=lambda case: case["why"])
def test_a_wrong_design_is_found_out(case: dict[str, Any]) -> None:
    """A square mistyped in one row is no longer balanced."""
    assert fairness_of(rows_of(case["design"])).balance == "partial"


def counted(orders: list[Row]) -> tuple[int, int]:
    """The spreads, counted in another way: place by place and pair by pair."""
    samples = range(len(orders[0]))
    places = [sum(order[place] == sample for order in orders) for place in samples for sample in samples]
    pairs = Counter(pair for order in orders for pair in pairwise(order))
    neighbours = [pairs[one, other] for one in samples for other in samples if one != other]
    return max(places) - min(places), max(neighbours) - min(neighbours)


@given(samples=st.integers(2, 12), tasters=st.integers(1, 30), seed=st.text(max_size=4))
def test_orders_are_balanced_as_they_claim(samples: int, tasters: int, seed: str) -> None:
    """Nobody is handed a sample twice; the claim is what is counted, and no worse than a design allows."""
    orders = serving_orders(samples, tasters, Random(seed))
    assert len(orders) == tasters
    assert all(sorted(order) == list(range(samples)) for order in orders)
    fairness = fairness_of(orders)
    assert (fairness.place_spread, fairness.neighbour_spread) == counted(orders)
    assert fairness.place_spread <= 1
    assert fairness.neighbour_spread <= 1 + samples % 2
    whole = tasters % len(williams(samples)) == 0
    assert fairness.balance == ("full" if whole else "partial")


def test_which_sample_takes_which_part_is_drawn_anew() -> None:
    """A design known from a book tells nobody what comes first."""
    firsts = {serving_orders(4, 4, Random(seed))[0] for seed in range(40)}
    assert len(firsts) > 10


def test_each_round_of_a_full_table_is_even_in_itself() -> None:
    """Three tasters, three samples, two rounds: already in the first one each sample stands once at each place."""
    for seed in range(20):
        first = serving_orders(3, 6, Random(seed))[:3]
        assert fairness_of(first).place_spread == 0
