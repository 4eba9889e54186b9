"""Plain text within a length, cut at whole entries."""

import pytest

from notesmith.publishing.show_notes import plain
from notesmith.records import Sheet, SheetSample
from tests.publishing.show_notes import annotated
from tests.publishing.show_notes.telling import seen, told

SHEET = Sheet(title="Two cups", samples=(SheetSample(id="A"),))


@pytest.mark.parametrize("length", [5_000, 1_500, 400, 40, 0])
def test_it_is_never_longer_than_asked(length: int) -> None:
    """Whatever the length, the text has no more characters."""
    episode = annotated.episode("d14")
    assert len(plain(_within(episode, length))) <= length


def test_entries_are_whole() -> None:
    """Every line of a cut text stands in the uncut one."""
    episode = annotated.episode("d14")
    whole = plain(_within(episode, 10**6)).splitlines()
    cut = plain(_within(episode, 1_500)).splitlines()
    assert set(cut) < set(whole)


def test_no_heading_stands_alone() -> None:
    """A heading is left out with the last line under it."""
    lines = plain(_within(annotated.episode("d14"), 1_500)).splitlines()
    assert not [a for a, b in zip(lines, [*lines[1:], ""], strict=True) if a.isupper() and not b]


def test_the_verdict_and_the_cautions_come_first() -> None:
    """What is kept longest is the head, the verdict and the cautions."""
    episode = annotated.episode("e07")
    cut = plain(_within(episode, 1_200))
    assert "Verdict" in cut
    assert "PLEASE NOTE" in cut
    assert "PORTRAITS" not in cut


def test_captions_without_times_have_no_times() -> None:
    """Where the captions carry no times the words stand alone."""
    episode = told(["plum"], seen(0, "plum", start=None, end=None), sheet=SHEET)
    assert "“plum”\n" in plain(episode)


def _within(episode: annotated.Episode, length: int) -> annotated.Episode:
    return annotated.Episode(episode.notes, episode.captions, length=length)
