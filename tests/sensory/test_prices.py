"""Prices of offers. No worked example was published: figures are by hand, and the laws that they keep."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from notesmith.sensory.amounts import Amount
from notesmith.sensory.frontier import frontier, knee
from notesmith.sensory.prices import Money, Rates, Serving, drunk_price, serving_price, unit_price

TEA = Money(9, "EUR"), Amount(50, "weight")
FIGURES = st.lists(st.tuples(st.integers(1, 30), st.integers(0, 20)), min_size=1, max_size=25)


def test_unit_price() -> None:
    """50 g at 9.00 are 180.00 for a kilogram and 18.00 for 100 g."""
    assert [unit_price(*TEA, unit).value for unit in ("kg", "100 g")] == [180, 18]


def test_serving() -> None:
    """3 g of it are 0.54."""
    assert serving_price(*TEA, Serving(Amount(3, "weight"))).value == pytest.approx(0.54)


def test_litre_as_drunk() -> None:
    """Six infusions of 110 ml from 5 g: 0.90 for 660 ml, 1.36 for a litre."""
    assert drunk_price(*TEA, Serving(Amount(5, "weight"), 6, 110)).value == pytest.approx(1.3636, abs=5e-5)


def test_standard_brew_stretches() -> None:
    """At 2 g to 100 ml (ISO 3103, seen) 100 g make five litres."""
    whole = Money(10, "EUR"), Amount(100, "weight")
    assert drunk_price(*whole, Serving(Amount(2, "weight"), 1, 100)).value == pytest.approx(10 / 5)


def test_weight_and_volume_are_never_mixed() -> None:
    """Leaf has no price for a litre, nor a bottle one for 3 g."""
    with pytest.raises(ValueError, match="never mixed"):
        unit_price(*TEA, "l")
    with pytest.raises(ValueError, match="never mixed"):
        serving_price(Money(20, "EUR"), Amount(700, "volume"), Serving(Amount(3, "weight")))


def test_nothing_drunk() -> None:
    """What no water goes onto has no price for a litre as drunk."""
    with pytest.raises(ValueError, match="no litre"):
        drunk_price(*TEA, Serving(Amount(3, "weight")))


@pytest.mark.parametrize("worth", [{}, {"GBP": 0.0}, {"GBP": float("nan")}])
def test_currencies_are_never_mixed(worth: dict[str, float]) -> None:
    """Without a rate above 0 nothing is converted."""
    with pytest.raises(ValueError, match="never mixed"):
        Rates("EUR", worth).convert(Money(1, "GBP"))


def test_kneedle() -> None:
    """Satopää and others 2011, Figure 2: ten points of 5 - 1 / (x + 0.1) from 0 to 1 bend at x = 0.22. From memory."""
    at = [step / 9 for step in range(10)]
    bend = knee(at, [5 - 1 / (x + 0.1) for x in at])
    assert bend is not None
    assert at[bend] == pytest.approx(0.22, abs=0.005)


def test_no_knee() -> None:
    """Two offers have none, nor have those whose score grows as fast as their price."""
    assert [knee([1, 2], [1, 2]), knee([1, 2, 3], [1, 2, 3]), knee([], [])] == [None, None, None]


def test_equal_offers_stand_together() -> None:
    """Neither of two offers alike in price and score beats the other."""
    assert frontier([5, 5, 5], [7, 7, 6]) == [0, 1]


@given(FIGURES)
def test_nothing_on_the_frontier_is_beaten(figures: list[tuple[int, int]]) -> None:
    """Along the frontier price and score grow together, and whatever is off it is beaten by something on it."""
    prices, scores = [price for price, _ in figures], [score for _, score in figures]
    best = frontier(prices, scores)
    assert [scores[at] for at in best] == sorted(scores[at] for at in best)
    for off in set(range(len(figures))) - set(best):
        assert any(prices[on] <= prices[off] and scores[on] >= scores[off] for on in best)


def test_gap_in_the_figures() -> None:
    """An offer without a score is on no frontier."""
    with pytest.raises(ValueError, match="a price and a score"):
        frontier([1, 2], [1, float("nan")])
