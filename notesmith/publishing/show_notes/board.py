"""The table: samples side by side, facet by facet, each word with its times."""

from collections.abc import Iterable
from typing import get_args

from notesmith.publishing.show_notes.lines import Block, Board, Head, Part
from notesmith.publishing.show_notes.story import Story
from notesmith.records import Facet, Observation

MOST_ACROSS = 5
"""More samples than this stand below one another: no page is wide enough for them."""


def board(story: Story) -> Block | None:
    """One table for each preparation; words said again are shown once, with every time."""
    own = [seen for seen in story.notes.observations if seen.voice == "taster" and seen.sample in story.notes.samples]
    ways = dict.fromkeys([None, *(way.id for way in story.sheet.preparations), *(seen.preparation for seen in own)])
    boards = tuple(_board(story, way, [seen for seen in own if seen.preparation == way]) for way in ways)
    kept = tuple(board for board in boards if board.rows)
    return Block("board", "Side by side", boards=kept, rank=3) if kept else None


def _board(story: Story, way: str | None, seen: list[Observation]) -> Board:
    said = {one.sample for one in seen}, {one.facet for one in seen}
    samples = [Head(story.name(sample), sample, sample) for sample in story.notes.samples if sample in said[0]]
    facets = [Head(facet, facet) for facet in get_args(Facet) if facet in said[1]]
    columns, lines = (facets, samples) if len(samples) > MOST_ACROSS else (samples, facets)
    rows = ((line, tuple(_cell(story, seen, line, column) for column in columns)) for line in lines)
    return Board(f"Prepared: {way}" if way else "", tuple(columns), tuple(rows))


def _cell(story: Story, seen: Iterable[Observation], *heads: Head) -> tuple[Part, ...]:
    sample = next(head.sample for head in heads if head.sample)
    facet = next(head.short for head in heads if not head.sample)
    return tuple(_words(story, [one for one in seen if (one.sample, one.facet) == (sample, facet)]))


def _words(story: Story, seen: Iterable[Observation]) -> Iterable[Part]:
    together: dict[tuple[object, ...], Part] = {}
    for one in sorted(seen, key=lambda one: one.span):
        part = story.term(one)
        same = (one.concept or part.text.casefold(), part.style, part.marks)
        first = together.get(same)
        together[same] = Part(first.text, (*first.proofs, one), first.marks, first.style) if first else part
    return together.values()
