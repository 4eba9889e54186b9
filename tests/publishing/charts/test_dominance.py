"""The chart of dominance over the sip."""

from notesmith.publishing.charts.dominance import Curve, describe_dominance, dominance_chart
from notesmith.publishing.charts.paper import Shape, Words
from notesmith.publishing.charts.svg import svg

TWO = [Curve("sweet", [1.0, 0.5, 0.0]), Curve("smoky", [0.0, 0.5, 1.0])]


def test_no_sensations() -> None:
    """Nothing is drawn of nothing."""
    assert dominance_chart([], "Order", 3, 1.0, 1.0) is None


def test_each_curve_is_named() -> None:
    """Both sensations stand in the chart, and the lines of chance and of more than chance."""
    paper = dominance_chart(TWO, "Order", 6, 0.5, 0.9)
    assert paper is not None
    assert {"sweet", "smoky"} <= {item.words for item in paper.drawn if isinstance(item, Words)}
    assert sum(isinstance(item, Shape) and item.dashed for item in paper.drawn) == 2


def test_no_bound_where_no_share_would_do() -> None:
    """With too few sips there is no line of what is more than chance."""
    paper = dominance_chart(TWO, "Order", 2, 0.5, float("inf"))
    assert paper is not None
    assert sum(isinstance(item, Shape) and item.dashed for item in paper.drawn) == 1


def test_few_are_shown_of_many() -> None:
    """The eight that rise highest are drawn, and it is said."""
    many = [Curve(f"term {number}", [number / 20, 0.0]) for number in range(12)]
    paper = dominance_chart(many, "Order", 20, 1 / 12, 0.2)
    assert paper is not None
    assert "8 of 12 sensations" in svg(paper)
    assert "term 3<" not in svg(paper)


def test_in_words() -> None:
    """Peaks are told to those who cannot see them."""
    assert describe_dominance(TWO, 6) == (
        "Share of 6 sips that each sensation dominates, over the sip: sweet most at 0%, in 100%; "
        "smoky most at 100%, in 100%."
    )
