"""The words that prove what the show notes say: each passage once, in order, the quotes marked in context."""

from collections.abc import Iterable, Iterator
from dataclasses import dataclass

from notesmith.publishing.show_notes.cautions import health_words
from notesmith.publishing.show_notes.phrases import find
from notesmith.publishing.show_notes.story import Story, time_of
from notesmith.records import Evidenced, Observation, Section

AROUND = 90
"""Most characters shown before and after a quote."""
OPENING = 30
"""Most characters marked of a section: those it opens with."""
BACK = 240
"""Most characters back to the term that a quote means without naming it."""
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
    once = {record.id: record for record in records}
    ordered = sorted(once.values(), key=lambda record: (shown_span(record), record.id))
    windows: list[_Window] = []
    for record in ordered:
        start, end = _around(story, record)
        if windows and _joins(story, windows[-1], record, start, end):
            windows[-1].end = max(windows[-1].end, end)
            windows[-1].records.append(record)
        else:
            told = windows[-1].end if windows else 0
            windows.append(_Window(max(start, min(told, shown_span(record)[0])), end, [record]))
    return tuple(_passage(story, number, window) for number, window in enumerate(windows, start=1))


def _around(story: Story, record: Evidenced) -> tuple[int, int]:
    """The quote with the words of its cues around it."""
    start, end = shown_span(record)
    if not story.talk:
        return start, end
    talk = story.talk
    first = max(talk.cues[talk.cue_at(start)].start, start - AROUND, 0)
    first = min(first, *(begin for begin, _ in spans_of(record)))
    last = min(talk.cues[talk.cue_at(end - 1)].end, end + AROUND)
    return whole_words(story, first, start, end, last)


def shown_span(record: Evidenced) -> tuple[int, int]:
    """The span of a record's quote; of a section, the words it opens with, without any health claim."""
    start, end = record.span
    if not isinstance(record, Section) or end - start <= OPENING:
        return start, end
    words = record.quote
    claims = [claim for claim in find(words[: 3 * OPENING], health_words()) if claim.start < OPENING]
    first = claims[-1].end if claims and claims[0].start == 0 else 0
    last = claims[0].start if claims and claims[0].start else first + OPENING
    space = words.rfind(" ", first, last + 1)
    return start + first, start + (space if space > first else last)


def spans_of(record: Evidenced) -> list[tuple[int, int]]:
    """The quote as it is shown; for words that only point back (`none of that`), what they point to as well."""
    spans = [shown_span(record)]
    if isinstance(record, Observation) and 0 < record.span[0] - record.term_span[0] <= BACK:
        spans.append(record.term_span)
    return spans


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
        return window.start == start and window.end == end and shown_span(window.records[0]) == (start, end)
    if any(claim.start < end and window.end <= claim.start for claim in story.healthy):
        return False
    overlap = shown_span(record)[0] < max(shown_span(one)[1] for one in window.records)
    return overlap or (start <= window.end + 1 and end - window.start <= LONGEST)


def _passage(story: Story, number: int, window: _Window) -> Passage:
    pieces = tuple(_pieces(story, window))
    return Passage(number, time_of(window.records[0]), pieces, tuple(record.id for record in window.records))


def _pieces(story: Story, window: _Window) -> Iterator[tuple[str, bool]]:
    if not story.talk:
        first = window.records[0]
        yield first.quote[window.start - first.span[0] : window.end - first.span[0]], True
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
    for start, end in sorted(span for record in records for span in spans_of(record)):
        if spans and start <= spans[-1][1]:
            spans[-1] = spans[-1][0], max(spans[-1][1], end)
        else:
            spans.append((start, end))
    return spans
