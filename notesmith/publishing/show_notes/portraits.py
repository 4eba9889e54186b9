"""Each sample's portrait in its taster's words: what was said of it, facet by facet, word for word."""

import re
from collections.abc import Iterator
from typing import get_args

from notesmith.publishing.show_notes.lines import Block, Group, Line, Part
from notesmith.publishing.show_notes.phrases import unbroken
from notesmith.publishing.show_notes.story import Story
from notesmith.records import Facet, Observation

NEAR = 40
"""Most characters between two quotes that are told as one."""
LONGEST = 160
"""Most characters of a quote put together of several."""
LEAD, TAIL = 36, 20
"""Most characters before and after a quote in which its clause may begin and end."""
CLAUSE_END = re.compile(r"[.,;:?!…—]")
DENYING = frozenset("no not none never nothing without zero nor neither gone lacks lacking hardly can't cannot".split())
DOUBTING = frozenset("maybe perhaps might could possibly think guess sort kind almost sure say wonder unsure".split())


def portraits(story: Story) -> Block | None:
    """A portrait of every sample of which something was perceived."""
    groups = tuple(_portrait(story, sample) for sample in story.notes.samples)
    kept = tuple(group for group in groups if group.lines)
    return Block("portraits", "Portraits", kept, rank=1) if kept else None


def _portrait(story: Story, sample: str) -> Group:
    seen = [one for one in story.notes.observations if one.sample == sample and one.voice == "taster"]
    ways = [None, *(way.id for way in story.sheet.preparations)]
    ways = list(dict.fromkeys([*ways, *(one.preparation for one in seen)]))
    lines = tuple(
        Line(facet, tuple(_quotes(story, here)), under=way or "")
        for way in ways
        for facet in get_args(Facet)
        if (here := [one for one in seen if one.facet == facet and one.preparation == way])
    )
    return Group(story.name(sample), lines, sample)


def _quotes(story: Story, seen: list[Observation]) -> Iterator[Part]:
    for run in _runs(story, sorted(seen, key=lambda one: one.span)):
        span = _in_full(story, run)
        said = story.talk.text[slice(*span)] if story.talk else run[0].quote
        text = _trimmed(story.words(span, said))
        yield Part(text, tuple(run), story.marks(run[0], *_readings(story, run, text)), "quote")


def _in_full(story: Story, run: list[Observation]) -> tuple[int, int]:
    """The span of a run, from where its clause begins to where it ends, if that is near and says nothing else."""
    start, end = run[0].span[0], max(one.span[1] for one in run)
    if not story.talk:
        return start, end
    text = story.talk.text
    before, after = text[max(0, start - LEAD) : start], text[end : end + TAIL]
    opened, closed = CLAUSE_END.search(before[::-1]), CLAUSE_END.search(after)
    begun, over = story.turn(start, end)
    first = start - opened.start() if opened else begun
    last = over
    if closed:
        last = end + (closed.end() if closed[0] == "?" else closed.start())
    first = max(first, begun) if start - max(first, begun) <= LEAD else start
    last = min(last, over) if min(last, over) - end <= TAIL else end
    return unbroken(text, (_alone(story, first, start, run), _alone(story, last, end, run)))


def _trimmed(quote: str) -> str:
    """A quote without what only joins it to its surroundings; a mark of quotation that has no other goes, too."""
    bare = quote.strip(" ,;:—–-")
    return bare.strip('" ') if bare.count('"') % 2 else bare


def _alone(story: Story, edge: int, quoted: int, run: list[Observation]) -> int:
    """The edge of the clause, unless something else is talked of between it and the quote."""
    first, last = min(edge, quoted), max(edge, quoted)
    if first == last:
        return edge
    own = {seen.id for seen in run}
    touched = (seen for seen in story.notes.observations if seen.span[0] < last and first < seen.span[1])
    claimed = any(passage.start < last and first < passage.end for passage in story.healthy)
    return quoted if claimed or any(seen.id not in own for seen in touched) else edge


def _runs(story: Story, seen: list[Observation]) -> list[list[Observation]]:
    """Perceptions in one breath of one cup, told as one quote."""
    runs: list[list[Observation]] = []
    for one in seen:
        if runs and _joins(story, runs[-1], one):
            runs[-1].append(one)
        else:
            runs.append([one])
    return runs


def _joins(story: Story, run: list[Observation], one: Observation) -> bool:
    start, end = run[0].span[0], max(seen.span[1] for seen in run)
    same = (run[0].taster, run[0].after_reveal) == (one.taster, one.after_reveal)
    if not same or one.span[1] - start > LONGEST:
        return False
    if one.span[0] < end and one.span[1] <= end:
        return True
    between = (end, max(one.span[0], end))
    near = between[1] - between[0] <= NEAR and story.is_one_turn(start, one.span[1])
    return near and not _foreign(story, (start, one.span[1]), one)


def _foreign(story: Story, span: tuple[int, int], one: Observation) -> bool:
    """Whether something else than this cup, or a health claim, is talked of within the span."""
    others = (seen.span for seen in story.notes.observations if seen.sample != one.sample)
    claims = ((passage.start, passage.end) for passage in story.healthy)
    return any(start < span[1] and span[0] < end for start, end in (*others, *claims))


def _readings(story: Story, run: list[Observation], text: str) -> Iterator[str]:
    """How the words are to be read, where they do not say so themselves."""
    words = set(text.casefold().replace("’", "'").replace(",", " ").split())
    denies = words & DENYING or any(word.endswith("n't") for word in words)
    doubts = words & DOUBTING or "?" in text
    for one in run:
        term = story.term(one).text
        of = f": {term}" if len(run) > 1 else ""
        if term.casefold() not in text.casefold():
            yield f"of {term}"
        if one.presence == "absent" and not denies:
            yield f"not there{of}"
        if one.presence == "uncertain" and not doubts:
            yield f"unsure{of}"
