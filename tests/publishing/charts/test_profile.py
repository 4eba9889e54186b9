"""The profile plot."""

import pytest

from notesmith.lexicon import Lexicon
from notesmith.publishing.charts.families import ATTRIBUTES, attribute
from notesmith.publishing.charts.profile import describe_profile, draw_profile, tabulate_profile
from tests.publishing.charts.conftest import Make, observation

THREE = ({"concept": "sweet"}, {"concept": "bitter", "intensity": "low"}, {"concept": "floral", "intensity": "high"})


def test_every_attribute_is_a_concept() -> None:
    """A spoke that the lexicon lacks would stay empty for ever."""
    assert set(ATTRIBUTES) <= set(Lexicon.load().concepts)


def test_spokes_tell_how_strong(episode_of: Make) -> None:
    """Slight, there, strong."""
    assert "A: sweet there 0:10, bitter slight 0:20, flowers strong 0:30." in describe_profile(episode_of(*THREE))


def test_a_kind_counts_for_what_it_is_a_kind_of() -> None:
    """Peach is fruit."""
    assert attribute(observation(1, {"concept": "peach"})) == "fruity"


def test_a_kind_denied_denies_nothing_else() -> None:
    """No peach may still be fruit."""
    assert attribute(observation(1, {"concept": "peach", "presence": "absent"})) is None


def test_an_attribute_denied_is_on_its_spoke() -> None:
    """No fruit is a statement about fruit."""
    assert attribute(observation(1, {"concept": "fruity", "presence": "absent"})) == "fruity"


@pytest.mark.parametrize(
    "said",
    [{"concept": None}, {"concept": "unheard-of"}, {"concept": "low-acid"}, {"concept": "gold", "facet": "appearance"}],
)
def test_what_belongs_to_no_attribute_is_left_out(said: dict[str, object]) -> None:
    """Open words, looks, and words for little of something."""
    assert attribute(observation(1, said)) is None


def test_two_spokes_make_no_profile(episode_of: Make) -> None:
    """The table has them all the same."""
    episode = episode_of(*THREE[:2])
    assert draw_profile(episode) is None
    assert len(tabulate_profile(episode).rows) == 2


def test_a_cup_of_which_little_was_said_is_named(episode_of: Make) -> None:
    """So that nobody looks for it in vain."""
    drawn = draw_profile(episode_of(*THREE, {"concept": "sweet", "sample": "B"})) or ""
    assert "Too little was said for a profile of B." in drawn


def test_what_is_unsure_does_not_make_a_spoke(episode_of: Make) -> None:
    """It is drawn hollow and joined to nothing."""
    episode = episode_of(*THREE, {"concept": "nutty", "presence": "uncertain"})
    assert "nuts" not in describe_profile(episode).split("A:")[1]
    assert "A hollow sign: they were unsure." in (draw_profile(episode) or "")


def test_preparations_have_profiles_of_their_own(episode_of: Make) -> None:
    """Hot and cold are not one cup."""
    hot = [one | {"preparation": "hot"} for one in THREE]
    cold = [one | {"preparation": "cold", "intensity": "high"} for one in THREE]
    told = describe_profile(episode_of(*hot, *cold))
    assert "A, hot: sweet there 0:10, bitter slight 0:20, flowers strong 0:30." in told
    assert "A, cold: sweet strong 0:40, bitter strong 0:50, flowers strong 1:00." in told


def test_the_table_tells_the_words_and_times(episode_of: Make) -> None:
    """Every spoke can be traced to what was said."""
    episode = episode_of({"concept": "peach", "term": "peaches"}, {"concept": "cherry", "term": "cherry"})
    assert tabulate_profile(episode).rows == (("fruit", "peaches: there 0:10; cherry: there 0:20"),)
