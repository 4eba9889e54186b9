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
    """All cues of a talk with the records of some notes; made anew for each change, rendered cue by cue."""

    def __init__(self, talk: Talk, records: Iterable[Shown]) -> None:
        self._talk = talk
        self._marked: list[list[Shown]] = [[] for _ in talk.cues]
        self._headings: list[list[Shown]] = [[] for _ in talk.cues]
        for record in records:
            start, end = marked(record)
            first = talk.cue_at(start)
            if isinstance(record, Section):
                self._headings[first].append(record)
                continue
            for cue in range(first, talk.cue_at(max(start, end - 1)) + 1):
                self._marked[cue].append(record)

    def __len__(self) -> int:
        return len(self._talk.cues)

    def holds(self, number: int) -> tuple[Shown, ...]:
        """The records that are shown in a cue: while they are the same, so is the cue."""
        return (*self._headings[number], *self._marked[number])

    def cue(self, number: int) -> ShownCue:
        """One cue, cut."""
        cue, talk = self._talk.cues[number], self._talk
        before = talk.cues[number - 1].speaker if number else None
        start = cue.start_ms / 1000 if talk.timed else None
        pieces = tuple(_cut(talk.text, cue.start, cue.end, self._marked[number]))
        speaker = cue.speaker or "" if cue.speaker != before else ""
        return ShownCue(number, start, clock(start), speaker, cue.start, pieces, tuple(self._headings[number]))


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
