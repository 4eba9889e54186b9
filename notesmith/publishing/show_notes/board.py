"""The table: samples side by side, facet by facet, each word with its times."""

from collections.abc import Iterable
from typing import get_args

from notesmith.publishing.show_notes.lines import Block, Board, Part
from notesmith.publishing.show_notes.story import Story
from notesmith.records import Facet, Observation


def board(story: Story) -> Block | None:
    """One table for each preparation; words said again are shown once, with every time."""
    own = [seen for seen in story.notes.observations if seen.voice == "taster" and seen.sample in story.notes.samples]
    ways = dict.fromkeys([None, *(way.id for way in story.sheet.preparations), *(seen.preparation for seen in own)])
    boards = tuple(_board(story, way, [seen for seen in own if seen.preparation == way]) for way in ways)
    kept = tuple(board for board in boards if board.rows)
    return Block("board", "Side by side", boards=kept, rank=3) if kept else None


def _board(story: Story, way: str | None, seen: list[Observation]) -> Board:
    samples = [sample for sample in story.notes.samples if any(one.sample == sample for one in seen)]
    rows = []
    for facet in get_args(Facet):
        here = [one for one in seen if one.facet == facet]
        cells = tuple(tuple(_words(story, [one for one in here if one.sample == sample])) for sample in samples)
        rows.append((facet, cells))
    caption = f"Prepared: {way}" if way else ""
    return Board(caption, tuple(map(story.name, samples)), tuple(samples), tuple(row for row in rows if any(row[1])))


def _words(story: Story, seen: Iterable[Observation]) -> Iterable[Part]:
    together: dict[tuple[object, ...], Part] = {}
    for one in sorted(seen, key=lambda one: one.span):
        part = story.term(one)
        same = (one.concept or part.text.casefold(), part.style, part.marks)
        first = together.get(same)
        together[same] = Part(first.text, (*first.proofs, one), first.marks, first.style) if first else part
    return together.values()
