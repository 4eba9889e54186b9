"""The timeline of the recording."""

import itertools

import pytest

from notesmith.publishing.charts.frame import PAGE, PHONE
from notesmith.publishing.charts.paper import SMALL, Words
from notesmith.publishing.charts.timeline import describe_timeline, draw_timeline, tabulate_timeline, timeline
from notesmith.publishing.episode import Episode
from notesmith.records import Notes
from tests.publishing.charts.conftest import Make
from tests.publishing.charts.test_every_chart import section


def test_untimed_captions_have_no_timeline(episode_of: Make) -> None:
    """A transcript without times says nothing of when."""
    untimed = section(0, "tasting", "A").model_copy(update={"start": None, "end": None})
    assert draw_timeline(episode_of({"start": None, "end": None}, sections=(untimed,))) is None


def test_the_table_counts_by_facet(episode_of: Make) -> None:
    """How many perceptions fall into each section."""
    episode = episode_of({}, {"facet": "aroma"}, {"facet": "aroma"}, sections=(section(0, "tasting", "A"),))
    assert tabulate_timeline(episode).rows == (("0:00", "1:00", "Tasting A", "", "2", "1", "", "", ""),)


def test_reveals_are_told(small: Notes) -> None:
    """In words as in the picture."""
    told = describe_timeline(Episode(small))
    assert "Revealed at 1:00:00: A." in told
    assert "A: Attic oolong" in (draw_timeline(Episode(small)) or "")


@pytest.mark.parametrize("width", [PAGE, PHONE])
def test_many_short_sections_keep_their_labels_apart(width: int, episode_of: Make) -> None:
    """Forty sections of a second each are still forty lines that can be read."""
    sections = tuple(section(float(number), "tasting", "AB"[number % 2]) for number in range(40))
    drawn = timeline(episode_of({}, sections=sections), width)
    assert drawn
    lines = sorted(item.y for item in drawn.drawn if isinstance(item, Words) and item.words.startswith("Tasting"))
    assert len(lines) == 40
    assert min(b - a for a, b in itertools.pairwise(lines)) >= SMALL


def test_denied_and_unsure_are_hollow(episode_of: Make) -> None:
    """And the tip says which."""
    drawn = draw_timeline(episode_of({"presence": "absent"}, sections=(section(0, "tasting", "A"),))) or ""
    assert "0:10 A: no plum" in drawn
