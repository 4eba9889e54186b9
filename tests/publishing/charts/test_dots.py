"""The dot plot."""

from notesmith.publishing.charts.dots import MOST_ROWS, describe_dot_plot, dot_plot, draw_dot_plot, tabulate_dot_plot
from notesmith.publishing.charts.paper import Shape
from notesmith.publishing.charts.said import rows
from notesmith.publishing.charts.signs import PAPER, sign
from notesmith.records import Repair
from tests.publishing.charts.conftest import Make


def dots(episode_of: Make, **said: object) -> list[Shape]:
    """What is drawn of a sample with this one observation, the sign in the explanation first."""
    drawn = dot_plot(episode_of(said))
    assert drawn
    return [item for item in drawn.drawn if isinstance(item, Shape) and item.stroke == sign(0).colour]


def middle(shape: Shape) -> float:
    """Where a sign stands from left to right."""
    across = [x for x, _ in shape.points]
    return (max(across) + min(across)) / 2


def test_stronger_stands_further_right(episode_of: Make) -> None:
    """Denied, slight, unmarked, strong."""
    kinds = ({"presence": "absent"}, {"intensity": "low"}, {}, {"intensity": "high"})
    places = [middle(dots(episode_of, **kind)[1]) for kind in kinds]
    assert places == sorted(places)
    assert len(set(places)) == 4


def test_what_is_denied_is_no_slight_one(episode_of: Make) -> None:
    """A strength said of what is not there does not move it among what is."""
    denied = [middle(dots(episode_of, presence="absent", intensity=how)[1]) for how in (None, "low", "high")]
    assert len(set(denied)) == 1


def test_what_is_unsure_is_hollow(episode_of: Make) -> None:
    """So that nobody takes it for said."""
    assert dots(episode_of, presence="uncertain")[1].fill == PAPER


def test_words_of_others_are_not_drawn(episode_of: Make) -> None:
    """A label's promise is no perception."""
    assert draw_dot_plot(episode_of({"voice": "quoted"})) is None


def test_other_samples_are_not_drawn(episode_of: Make) -> None:
    """A cup of last week is none of these."""
    assert draw_dot_plot(episode_of({"sample": None})) is None


def test_one_term_of_two_samples_is_one_row(episode_of: Make) -> None:
    """That is what sets them beside each other."""
    assert len(rows(episode_of({"sample": "A"}, {"sample": "B"}))) == 1


def test_one_term_of_two_preparations_is_two_rows(episode_of: Make) -> None:
    """What was smoky cold need not be hot."""
    assert len(rows(episode_of({"preparation": "hot"}, {"preparation": "cold"}))) == 2


def test_one_concept_in_two_words_is_one_row(episode_of: Make) -> None:
    """Called by the word that was said most."""
    (row,) = rows(episode_of(*({"term": term, "concept": "smoke"} for term in ("smoky", "Smoke", "Smoke"))))
    assert row.term == "smoke"


def test_what_sets_samples_apart_is_shown_first(episode_of: Make) -> None:
    """Where there is no room for all, and the table has the rest."""
    said = [{"term": f"term {number}"} for number in range(MOST_ROWS + 5)]
    last = [{"term": "smoke", "sample": "A"}, {"term": "smoke", "sample": "B", "presence": "absent"}]
    episode = episode_of(*said, *last)
    assert "smoke (flavour): A there 5:40; B not there 5:50." in describe_dot_plot(episode)
    assert f"{MOST_ROWS} of {MOST_ROWS + 6} terms" in (draw_dot_plot(episode) or "")
    assert len(tabulate_dot_plot(episode).rows) == MOST_ROWS + 7


def test_what_was_said_after_the_reveal_is_marked(episode_of: Make) -> None:
    """It was no longer blind."""
    assert "after the reveal" in describe_dot_plot(episode_of({"after_reveal": True}))
    assert "Underlined: said after the reveal." in (draw_dot_plot(episode_of({"after_reveal": True})) or "")


def test_the_table_says_who_and_when(episode_of: Make) -> None:
    """Tasters only where there are several."""
    episode = episode_of({"taster": "Ana"}, {"taster": "Bram", "presence": "absent"})
    assert tabulate_dot_plot(episode).columns == ("Facet", "Term", "Sample", "Said to be", "At", "By")
    assert tabulate_dot_plot(episode).rows == (
        ("flavour", "plum", "A", "not there", "0:20", "Bram"),
        ("flavour", "plum", "A", "there", "0:10", "Ana"),
    )


def test_a_misheard_term_stands_mended(episode_of: Make) -> None:
    """In square brackets, as in the show notes."""
    fields = {"start": 1.0, "end": 2.0, "quote": "…", "confidence": 1.0, "why": ()}
    repair = Repair(id="r", **fields, span=(1, 2), heard="a stringent", meant="astringent")  # type: ignore[arg-type]
    (row,) = rows(episode_of({"term": "a", "term_span": (1, 2), "concept": "astringent"}, repairs=(repair,)))
    assert row.term == "[astringent]"
