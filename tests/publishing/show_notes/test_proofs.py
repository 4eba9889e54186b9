"""Not one sentence of show notes lacks a time that leads to words that say it."""

import re
from collections.abc import Callable
from pathlib import Path

import pytest

from notesmith.jobs import notes_of
from notesmith.publishing.episode import Episode
from notesmith.publishing.show_notes import markdown, page, plain
from notesmith.publishing.show_notes.contents import compose
from notesmith.transcript import read_captions
from tests.publishing.show_notes import annotated, proving

TIME = re.compile(r"\b\d+:\d\d\b")
UNSAID = re.compile(r"sheet|said of all")


@pytest.mark.parametrize("name", annotated.names()[::8])
def test_every_part_is_proven(name: str) -> None:
    """Every part of every line rests on records whose words stand where they say, at their time."""
    episode = annotated.episode(name)
    assert list(proving.unproven(compose(episode), episode)) == []


@pytest.mark.slow
@pytest.mark.parametrize("name", annotated.names())
def test_every_recording_is_proven(name: str) -> None:
    """The same of every recording there is, on the page that the reader sees, too."""
    episode = annotated.episode(name)
    assert list(proving.unproven(compose(episode), episode)) == []
    assert list(proving.astray(proving.Page(page(episode)), episode)) == []


@pytest.mark.parametrize("name", ["d14", "e07"])
def test_every_time_of_the_page_leads_to_words(name: str) -> None:
    """On the page, every part has the time of each of its records and leads to their words."""
    episode = annotated.episode(name)
    assert list(proving.astray(proving.Page(page(episode)), episode)) == []


@pytest.mark.parametrize("form", [markdown, plain])
@pytest.mark.parametrize("name", ["d14", "e07"])
def test_every_line_has_a_time(name: str, form: Callable[[Episode], str]) -> None:
    """In Markdown and plain text, every line that is told from records carries a time."""
    told = form(annotated.episode(name)).split("Please note")[0].split("PLEASE NOTE")[0]
    lines = [line for line in told.splitlines() if line.startswith(("- ", "|")) or "“" in line]
    facets = [line for line in lines if not line.startswith(("|  |", "| ---"))]
    assert facets
    assert [line for line in facets if not TIME.search(line) and not UNSAID.search(line)] == []


@pytest.mark.parametrize(("was", "is_now"), [
    ("<dl>", "<p>Everybody agreed.</p><dl>"),
    ('class="time" href="#said-1', 'class="elsewhere" href="#said-1'),
    ('href="#said-1"', 'href="#said-2"'),
])  # fmt: skip
def test_the_check_itself_sees_what_is_amiss(was: str, is_now: str) -> None:
    """A sentence without a time, a time that leads nowhere and one that leads to other words are each found."""
    episode = annotated.episode("d14")
    made = page(episode)
    assert was in made
    assert list(proving.astray(proving.Page(made.replace(was, is_now)), episode))


def test_notes_of_the_program_itself_are_proven() -> None:
    """What the program hears on the demo recording is proven, too."""
    captions = Path(__file__).parents[3] / "samples" / "demo" / "pegs.vtt"
    episode = Episode(notes_of(captions), read_captions(captions))
    assert list(proving.unproven(compose(episode), episode)) == []
    assert list(proving.astray(proving.Page(page(episode)), episode)) == []
