"""The talk as it is shown: cue by cue, cut into pieces where the words of a record begin and end."""

from bisect import bisect_left, bisect_right
from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from itertools import pairwise

from notesmith.records import Observation, Section
from notesmith.review.fields import Shown
from notesmith.review.lines import clock, line_of
from notesmith.transcript import Talk


@dataclass(frozen=True)
class Piece:
    """Some words, and the records that are told by them."""

    text: str
    notes: str = ""
    """Ids of the records, the shortest one's first, with spaces between; empty for words of none."""
    look: str = ""
    """How the words are marked: the kind of record, and of an observation its presence."""
    tag: str = ""


@dataclass(frozen=True)
class ShownCue:
    """A cue with its words cut into pieces."""

    number: int
    start: float | None
    time: str
    speaker: str
    """Who speaks; empty where it is the one before."""
    first: int
    """Where its words begin in the talk, in characters."""
    pieces: tuple[Piece, ...]
    headings: tuple[Shown, ...]
    """The sections that begin here."""


def marked(record: Shown) -> tuple[int, int]:
    """The characters that are marked: an observation's term, else the whole quote."""
    return record.term_span if isinstance(record, Observation) else record.span


class Telling:
    """All cues of a talk with the records of some notes. After an edit only a few cues are told anew."""

    def __init__(self, talk: Talk, records: Sequence[Shown]) -> None:
        self._talk, self._records = talk, records

    def cues(self) -> list[ShownCue]:
        """Every cue."""
        held: list[list[Shown]] = [[] for _ in self._talk.cues]
        for record in self._records:
            for number in cues_of(self._talk, record):
                held[number].append(record)
        return [self._cue(number, records) for number, records in enumerate(held)]

    def cue(self, number: int) -> ShownCue:
        """One cue."""
        first, last = self._talk.cues[number].start, self._talk.cues[number].end
        near = [r for r in self._records if r.span[0] < last and (r.span[1] > first or r.span[0] >= first)]
        return self._cue(number, [record for record in near if number in cues_of(self._talk, record)])

    def _cue(self, number: int, records: Sequence[Shown]) -> ShownCue:
        cue, talk = self._talk.cues[number], self._talk
        before = talk.cues[number - 1].speaker if number else None
        start = cue.start_ms / 1000 if talk.timed else None
        headings = tuple(record for record in records if isinstance(record, Section))
        pieces = tuple(_cut(talk.text, cue.start, cue.end, [r for r in records if not isinstance(r, Section)]))
        speaker = cue.speaker or "" if cue.speaker != before else ""
        return ShownCue(number, start, clock(start), speaker, cue.start, pieces, headings)


def cues_of(talk: Talk, record: Shown) -> range:
    """The cues in which a record is shown: a section where it begins, others wherever their words stand."""
    start, end = marked(record)
    first = talk.cue_at(start)
    return range(first, first + 1 if isinstance(record, Section) else talk.cue_at(max(start, end - 1)) + 1)


def _cut(text: str, start: int, end: int, records: Sequence[Shown]) -> Iterable[Piece]:
    spans = [(max(start, first), min(end, last)) for first, last in map(marked, records)]
    edges = sorted({start, end, *(edge for span in spans for edge in span)})
    for first, last in pairwise(edges):
        here = [record for record, (begin, stop) in zip(records, spans, strict=True) if begin <= first and last <= stop]
        yield _piece(text[first:last], first, here) if here else Piece(text[first:last])


def _piece(words: str, first: int, records: list[Shown]) -> Piece:
    records.sort(key=lambda record: marked(record)[1] - marked(record)[0])
    inner = records[0]
    look = type(inner).__name__.lower() + (f" {inner.presence}" if isinstance(inner, Observation) else "")
    tags = [line_of(record).tag for record in records if marked(record)[0] == first]
    return Piece(words, " ".join(record.id for record in records), look, " ".join(filter(None, tags)))


def around(talk: Talk, span: tuple[int, int], reach: int = 110) -> tuple[str, str]:
    """The words before and after a stretch, cut where a word ends; at most `reach` characters of each."""
    starts = [word.start for word in talk.words]
    first = starts[bisect_left(starts, max(0, span[0] - reach))] if span[0] > reach else 0
    last_word = talk.words[bisect_right(starts, min(len(talk.text) - 1, span[1] + reach)) - 1]
    last = max(span[1], last_word.end if span[1] + reach >= len(talk.text) else last_word.start - 1)
    return talk.text[min(first, span[0]) : span[0]], talk.text[span[1] : last]
