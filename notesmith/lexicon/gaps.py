"""What the lexicon lacks: the open descriptors of many notes, with what they may stand for."""

from collections.abc import Iterable
from dataclasses import dataclass

from notesmith.lexicon.check import CONTAINERS, LIKING
from notesmith.lexicon.index import Lexicon
from notesmith.lexicon.likeness import Likenesses, Near
from notesmith.lexicon.merge import Key
from notesmith.lexicon.words import pieces
from notesmith.records import Notes, Observation

QUOTED = 3


@dataclass(frozen=True, slots=True)
class Quote:
    """Words that were said: in which captions, at which second (None where they have no times)."""

    transcript: str
    start: float | None
    words: str


@dataclass(frozen=True, slots=True)
class Gap:
    """An open descriptor: how often it was noted, the concepts nearest to it, and where it was said."""

    term: str
    count: int
    nearest: tuple[Near, ...]
    quotes: tuple[Quote, ...]


def find_gaps(every: Iterable[Notes], lexicon: Lexicon) -> list[Gap]:
    """The open descriptors of all the notes, the most frequent first, in whatever spelling they come.

    Left out is what could be no label (`taste`, `lovely`), and what this lexicon knows by now.
    """
    said: dict[Key, list[tuple[Notes, Observation]]] = {}
    for notes in every:
        for seen in notes.observations:
            if seen.concept is None and _may_be_a_label(seen.term, lexicon):
                said.setdefault(pieces(seen.term), []).append((notes, seen))
    known = Likenesses(lexicon)
    gaps = [_gap(together, known) for together in said.values()]
    return sorted(gaps, key=lambda gap: (-gap.count, gap.term))


def _may_be_a_label(term: str, lexicon: Lexicon) -> bool:
    words = " ".join(pieces(term))
    label = lexicon.look_up(term)
    known = label and lexicon.concepts[label.concept].sort == "descriptor"
    return any(map(str.isalnum, words)) and words not in CONTAINERS | LIKING and not known


def _gap(said: list[tuple[Notes, Observation]], known: Likenesses) -> Gap:
    term = " ".join(said[0][1].term.lower().split())
    quotes = dict.fromkeys(Quote(notes.transcript, seen.start, seen.quote) for notes, seen in said)
    return Gap(term, len(said), known.nearest(term), tuple(quotes)[:QUOTED])
