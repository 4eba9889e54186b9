"""The presence matrix."""

from notesmith.publishing.charts.frame import PAGE
from notesmith.publishing.charts.presence import (
    describe_presence_matrix,
    draw_presence_matrix,
    presence_matrix,
    tabulate_presence_matrix,
)
from notesmith.publishing.episode import Episode
from notesmith.records import Notes
from tests.publishing.charts.conftest import Make


def test_found_denied_and_unsure_are_told_apart(episode_of: Make) -> None:
    """In words as by shape: a full dot, a struck one, a question mark."""
    episode = episode_of(
        {"term": "plum"}, {"term": "smoke", "presence": "absent"}, {"term": "clove", "presence": "uncertain"}
    )
    told = "A: Flavour: plum there 0:10, smoke not there 0:20, clove unsure 0:30. B: nothing was said."
    assert told in describe_presence_matrix(episode)


def test_a_term_found_and_denied_shows_both(episode_of: Make) -> None:
    """Tasters may disagree, and nobody decides for them."""
    episode = episode_of({}, {"presence": "absent"})
    assert "A: Flavour: plum not there 0:20; there 0:10." in describe_presence_matrix(episode)
    assert "A: not there 0:20; there 0:10" in (draw_presence_matrix(episode) or "")


def test_an_empty_field_stays_empty(episode_of: Make) -> None:
    """Of what nothing was said, nothing is known."""
    assert tabulate_presence_matrix(episode_of({})).rows == (("Flavour", "plum", "there 0:10", ""),)


def test_every_sample_has_its_column(episode_of: Make) -> None:
    """Also one of which nothing was said."""
    assert tabulate_presence_matrix(episode_of({}, samples=("A", "B", "C"))).columns[2:] == ("A", "B", "C")


def test_few_samples_stand_in_several_blocks(episode_of: Make) -> None:
    """A page is wide: terms go on beside each other rather than far down."""
    episode = episode_of(*({"term": f"term {number}"} for number in range(60)))
    narrow, wide = presence_matrix(episode, 358), presence_matrix(episode, PAGE)
    assert narrow
    assert wide
    assert wide.height < narrow.height / 1.5


def test_a_sealed_sample_keeps_its_code(small: Notes) -> None:
    """What was never revealed is not told by a chart."""
    sheet = small.sheet.model_copy(update={"blind": True})
    sealed = Episode(small.model_copy(update={"sheet": sheet, "reveals": ()}))
    products = {sample.product for sample in sheet.samples if sample.product}
    assert products
    assert not any(product in (draw_presence_matrix(sealed) or "") for product in products)
