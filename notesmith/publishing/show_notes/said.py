"""The words that prove what the show notes say: each passage once, in order, the quotes marked in context."""

from collections.abc import Iterable, Iterator
from dataclasses import dataclass

from notesmith.publishing.show_notes.story import Story, time_of
from notesmith.records import Evidenced

AROUND = 90
"""Most characters shown before and after a quote."""
LONGEST = 420
"""Characters at which no further quote joins a passage."""


@dataclass(frozen=True)
class Passage:
    """Some words of the recording, in order, with those marked that records rest on."""

    number: int
    time: str
    """m:ss of its first quote; empty where the captions carry no times."""
    pieces: tuple[tuple[str, bool], ...]
    """Words, and whether a record rests on them."""
    records: tuple[str, ...]
    """Ids of the records that rest on them."""


@dataclass
class _Window:
    start: int
    end: int
    records: list[Evidenced]


def passages(story: Story, records: Iterable[Evidenced]) -> tuple[Passage, ...]:
    """The passages on which these records rest, numbered from 1."""
    ordered = sorted({record.id: record for record in records}.values(), key=lambda record: (record.span, record.id))
    windows: list[_Window] = []
    for record in ordered:
        start, end = _around(story, record)
        if windows and _joins(story, windows[-1], record, start, end):
            windows[-1].end = max(windows[-1].end, end)
            windows[-1].records.append(record)
        else:
            windows.append(_Window(start, end, [record]))
    return tuple(_passage(story, number, window) for number, window in enumerate(windows, start=1))


def _around(story: Story, record: Evidenced) -> tuple[int, int]:
    """The quote with the words of its cues around it."""
    if not story.talk:
        return record.span
    start, end = record.span
    talk = story.talk
    first = max(talk.cues[talk.cue_at(start)].start, start - AROUND)
    last = min(talk.cues[talk.cue_at(end - 1)].end, end + AROUND)
    return whole_words(story, first, start, end, last)


def whole_words(story: Story, first: int, start: int, end: int, last: int) -> tuple[int, int]:
    """The quote from `start` to `end` with what is around it from `first` to `last`, cut between words.

    It stops short of any health claim.
    """
    text = story.talk.text if story.talk else ""
    first, last = _short_of_claims(story, first, start, end, last)
    if first and text[first - 1 : first] != " ":
        space = text.find(" ", first, start)
        first = start if space < 0 else space + 1
    if last < len(text) and text[last] != " ":
        last = max(text.rfind(" ", end, last), end)
    return first, last


def _short_of_claims(story: Story, first: int, start: int, end: int, last: int) -> tuple[int, int]:
    for claim in story.healthy:
        if claim.end <= start:
            first = max(first, claim.end)
        elif claim.start >= end and claim.start < last:
            before = story.talk.text[end : claim.start] if story.talk else ""
            last = end + max(before.rfind(sign) for sign in ".,;?!") + 1
    return first, last


def _joins(story: Story, window: _Window, record: Evidenced, start: int, end: int) -> bool:
    if not story.talk:
        return window.start == start and window.end == end and window.records[0].quote == record.quote
    if any(claim.start < end and window.end <= claim.start for claim in story.healthy):
        return False
    overlap = record.span[0] < max(one.span[1] for one in window.records)
    return overlap or (start <= window.end + 1 and end - window.start <= LONGEST)


def _passage(story: Story, number: int, window: _Window) -> Passage:
    pieces = tuple(_pieces(story, window))
    return Passage(number, time_of(window.records[0]), pieces, tuple(record.id for record in window.records))


def _pieces(story: Story, window: _Window) -> Iterator[tuple[str, bool]]:
    if not story.talk:
        yield window.records[0].quote, True
        return
    at = window.start
    for start, end in _marked(window.records):
        if at < start:
            yield story.talk.text[at:start], False
        yield story.talk.text[start:end], True
        at = end
    if at < window.end:
        yield story.talk.text[at : window.end], False


def _marked(records: list[Evidenced]) -> list[tuple[int, int]]:
    """The spans of the quotes, overlapping ones as one."""
    spans: list[tuple[int, int]] = []
    for start, end in sorted(record.span for record in records):
        if spans and start <= spans[-1][1]:
            spans[-1] = spans[-1][0], max(spans[-1][1], end)
        else:
            spans.append((start, end))
    return spans
