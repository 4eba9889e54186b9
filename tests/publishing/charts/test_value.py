"""The chart of price and score: every offer is named, and no name lies on another."""

import random

import pytest

from notesmith.publishing.charts.letters import width
from notesmith.publishing.charts.paper import SMALL, Paper, Words
from notesmith.publishing.charts.png import png
from notesmith.publishing.charts.svg import svg
from notesmith.publishing.charts.value import Point, describe_value, value_chart
from notesmith.sensory.frontier import frontier, knee


def offers(count: int, seed: int) -> list[Point]:
    """Offers drawn at random."""
    draw = random.Random(seed)
    prices = [round(draw.uniform(3, 60), 2) for _ in range(count)]
    scores = [round(4 + 2 * draw.random() + price / 20, 1) for price in prices]
    best, bend = frontier(prices, scores), knee(prices, scores)
    return [Point(f"Offer {at}", prices[at], scores[at], at in best, at == bend) for at in range(count)]


def names(paper: Paper) -> list[Words]:
    """The names in the chart."""
    return [item for item in paper.drawn if isinstance(item, Words) and item.words.startswith("Offer ")]


def test_no_offers() -> None:
    """Nothing is drawn of nothing."""
    assert value_chart([], "Value", "EUR") is None


@pytest.mark.parametrize("count", [1, 2, 8, 40])
@pytest.mark.parametrize("page", [880, 358])
def test_every_offer_is_named_once(count: int, page: int) -> None:
    """Whole, inside the sheet, and apart from every other name, on a page and on a telephone."""
    paper = value_chart(offers(count, 3), "Value", "EUR", page)
    assert paper is not None
    written = names(paper)
    assert sorted(at.words for at in written) == sorted(f"Offer {number}" for number in range(count))
    boxes = [(at.x, at.y - 10, at.x + width(at.words, SMALL), at.y) for at in written]
    assert all(left >= 0 and right <= paper.width + 1 for left, _, right, _ in boxes)
    for number, one in enumerate(boxes):
        for other in boxes[number + 1 :]:
            assert one[2] <= other[0] or other[2] <= one[0] or one[3] <= other[1] or other[3] <= one[1]


def test_offers_alike() -> None:
    """Two offers of one price and score both have their names."""
    paper = value_chart([Point("Offer A", 5, 7, True, False), Point("Offer B", 5, 7, True, False)], "Value", "EUR")
    assert paper is not None
    assert len({(at.x, at.y) for at in names(paper)}) == 2


def test_in_words() -> None:
    """The frontier is told to those who cannot see it."""
    points = [Point("A", 5, 6, True, True), Point("B", 9, 5, False, False)]
    assert describe_value(points, "EUR by kg") == (
        "2 offers by price and score. None beats: A, 5.00 EUR by kg, score 6, the knee."
    )


def test_same_bytes() -> None:
    """The same offers make the same files."""
    drawn = [value_chart(offers(8, 1), "Value", "EUR") for _ in range(2)]
    assert drawn[0] is not None
    assert drawn[1] is not None
    assert svg(drawn[0]) == svg(drawn[1])
    assert png(drawn[0]) == png(drawn[1])
