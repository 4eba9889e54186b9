"""From sections to chapters: what is one, what it is called, and that they stand end to end."""

import tomllib
from collections.abc import Callable
from itertools import pairwise
from pathlib import Path
from typing import Any

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from notesmith.publishing.chapters.model import Chapter, at_most, chapters_of, without_short
from notesmith.publishing.chapters.stamps import stamps
from notesmith.publishing.episode import Episode

PUBLISHING = Path(__file__).parents[2] / "cases" / "publishing"
CASES = tomllib.loads((PUBLISHING / "chapters.toml").read_text("utf-8"))["case"]
Told = list[tuple[float, float, str, str | None]]
Make = Callable[[dict[str, Any]], Episode]
KINDS = ("opening", "method", "tasting", "verdict", "reveal", "sponsor")


@pytest.mark.parametrize("case", CASES, ids=lambda case: case["says"])
def test_sections_make_a_list_of_times(case: dict[str, Any], episode: Make) -> None:
    """As the cases say."""
    assert list(stamps(episode(case))) == case["chapters"]


@settings(suppress_health_check=[HealthCheck.function_scoped_fixture])
@given(
    sections=st.lists(
        st.tuples(st.floats(0, 5000), st.floats(0, 600), st.sampled_from(KINDS), st.sampled_from(["A", "B", None])),
        max_size=30,
    ),
    length=st.integers(1, 6000),
)
def test_chapters_stand_end_to_end(sections: Told, length: int, episode: Make) -> None:
    """Whatever the sections are: from 0 to the end of the recording, none without length, each title once."""
    described = [
        {"from": start, "to": start + long, "kind": kind, "sample": sample} for start, long, kind, sample in sections
    ]
    chapters = chapters_of(episode({"samples": ["A", "B"], "sections": described, "length": length}))
    if chapters:
        assert (chapters[0].start_ms, chapters[-1].end_ms) == (0, length * 1000)
        assert all(one.end_ms == two.start_ms for one, two in pairwise(chapters))
        assert all(chapter.start_ms < chapter.end_ms for chapter in chapters)
        assert len({chapter.title for chapter in chapters}) == len(chapters)
        assert all(0 < len(chapter.title) <= 100 for chapter in chapters)


def test_a_title_is_cut_where_it_is_too_long(episode: Make) -> None:
    """A name of ten thousand characters is still no wall of text."""
    case = {"samples": ["x" * 10_000], "sections": [{"from": 0, "to": 9, "kind": "tasting", "sample": "x" * 10_000}]}
    (chapter,) = chapters_of(episode(case))
    assert len(chapter.title) == 85
    assert chapter.title.endswith("…")


def long(*lengths: int) -> tuple[Chapter, ...]:
    """Chapters of these lengths in ms."""
    starts = [sum(lengths[:k]) for k in range(len(lengths))]
    return tuple(
        Chapter(start, start + length, str(k), None)
        for k, (start, length) in enumerate(zip(starts, lengths, strict=True))
    )


def test_what_is_too_short_joins_the_longer_neighbour_before_it() -> None:
    """And takes its title."""
    assert [chapter.title for chapter in without_short(long(50, 5, 40, 3), 10)] == ["0", "2"]


def test_all_too_short_is_one_chapter() -> None:
    """None is lost."""
    (chapter,) = without_short(long(1, 2, 1), 10)
    assert (chapter.start_ms, chapter.end_ms, chapter.title) == (0, 4, "1")


def test_a_form_gets_no_more_than_it_holds() -> None:
    """The shortest go first, and the whole length stays covered."""
    chapters = at_most(long(*[20, 7] * 150), 255)
    assert len(chapters) == 255
    assert chapters[-1].end_ms == 150 * 27
    assert all(one.end_ms == two.start_ms for one, two in pairwise(chapters))
