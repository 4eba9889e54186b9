"""Products that everybody knows are on the table, only not in which cup: told in the opening, one after another.

`One is a keemun and the other is an assam`; or a row of names, as many as there are samples.
"""

from collections import Counter
from collections.abc import Iterator
from dataclasses import dataclass
from itertools import pairwise

from notesmith.listening.hearing import Hearing, Word
from notesmith.listening.mishearing import meant_name
from notesmith.listening.names import CARRIERS
from notesmith.listening.products import NO_NAME, STOPS, as_meant, phrase_end
from notesmith.listening.suspects import LOOSE
from notesmith.listening.vocabulary import NOUNS

OPENING = 0.3  # of the talk
TOGETHER = 60  # words from one of the products to the next
LONGEST = 5  # words of a product
COPULAS = frozenset("is 's was are".split())
OF_THEM = frozenset("of them these those which the two three four".split())
ONES = frozenset("one other another third fourth last".split())
BEFORE_NAME = frozenset("a an the my our like , uh um this that your some called actually".split())
BREAKS = STOPS | frozenset(", . ! : and from in at for with or that this it there 's then was is".split())
BETWEEN = frozenset(", . and the a an also then versus against or uh um".split())
JOINTS = frozenset("and versus against or".split())
GENERIC = LOOSE | NO_NAME | CARRIERS | frozenset("black green white red dark tea teas harvest pick picking".split())


@dataclass(frozen=True, slots=True)
class Candidate:
    """A product told in the opening: the words from `start` to `end`, and the words that only it goes by."""

    start: int
    end: int
    product: str
    words: frozenset[str]


def find_announced(hearing: Hearing, known: bytearray) -> list[Candidate]:
    """The products, as many as there are samples; none where fewer are told."""
    count, end = len(hearing.sheet.samples), int(len(hearing.words) * OPENING)
    places = _one_by_one(hearing.words, end, known, count) or _in_a_row(hearing, end, known, count)
    owned = [_words(hearing.words, start, after, known) for start, after in _reaches(hearing, places)]
    counts = Counter(word for words in owned for word in words)
    alone = [frozenset(w for w in words if counts[w] == 1) for words in owned]
    found = [_candidate(hearing, *p, words, known) for p, words in zip(places, alone, strict=True)]
    return found if all(c.words for c in found) else []


def _candidate(hearing: Hearing, start: int, end: int, words: frozenset[str], known: bytearray) -> Candidate:
    """The product by the name that was meant."""
    heard = tuple(w.norm for w in hearing.words[start:end])
    meant = None if any(known[start:end]) else meant_name(hearing.lexicon, heard)
    return Candidate(start, end, meant or as_meant(hearing, start, end), words | set((meant or "").split()))


def _one_by_one(words: list[Word], end: int, known: bytearray, count: int) -> list[tuple[int, int]]:
    """`One of them is X, … the other one is Y`."""
    slots = list(_slots(words, end, known))
    for k in range(len(slots) - count + 1):
        row = slots[k : k + count]
        near = all(b[0] - a[1] < TOGETHER for a, b in pairwise(row))
        if near and _opens(words, row[0][0]):
            return row
    return []


def _opens(words: list[Word], at: int) -> bool:
    """Whether `one`, and not `the other`, leads to the product at word `at`."""
    before = [w.norm for w in words[max(0, at - 8) : at]]
    return "one" in before and "other" not in before


def _slots(words: list[Word], end: int, known: bytearray) -> Iterator[tuple[int, int]]:
    """What is said of `one` of them, or of `the other`: the words after `is`, up to a break."""
    for i in range(end):
        if words[i].norm not in ONES or (i and words[i].norm == "one" and words[i - 1].norm in ONES):
            continue
        at = i + 1
        while words[at].norm in OF_THEM or (words[at].norm == "one" and at == i + 1):
            at += 1
        if words[at].norm in COPULAS:
            start = next(k for k in range(at + 1, at + 9) if words[k].norm not in BEFORE_NAME)
            stop = start
            while stop - start < LONGEST and (words[stop].norm not in BREAKS or known[stop]):
                stop += 1
            while stop > start and not (known[stop - 1] or words[stop - 1].tag in NOUNS):
                stop -= 1
            if stop > start:
                yield start, stop


def _in_a_row(hearing: Hearing, end: int, known: bytearray, count: int) -> list[tuple[int, int]]:
    """As many names as there are samples, with nothing but `and the` between them."""
    row: list[tuple[int, int]] = []
    i = 0
    while i < end:
        stop = phrase_end(hearing.words, i, end, known) if known[i] else i
        if stop > i:
            joined = row and BETWEEN.issuperset(w.norm for w in hearing.words[row[-1][1] : i])
            row = [*row, (i, stop)] if joined else [(i, stop)]
        elif len(row) == count > 1 and hearing.words[i].norm not in BETWEEN:
            last = {w.norm for w in hearing.words[row[-2][1] : row[-1][0]]}
            if not JOINTS.isdisjoint(last):
                return row
            row = []
        i = max(stop, i + 1)
    return []


def _reaches(hearing: Hearing, places: list[tuple[int, int]]) -> Iterator[tuple[int, int]]:
    """From each product to the next, or to the end of its sentence: by all names there it goes too."""
    for k, (start, end) in enumerate(places):
        limit = places[k + 1][0] if k + 1 < len(places) else end + TOGETHER // 2
        stops = (i for i in range(end, limit) if hearing.words[i].norm in (".", "?", "!"))
        yield start, next(stops, limit if k + 1 < len(places) else end)


def _words(words: list[Word], start: int, end: int, known: bytearray) -> set[str]:
    """Names among some words; where none is known, all that are not everyday."""
    named = {words[i].norm for i in range(start, end) if known[i] and len(words[i].norm) > 2} - GENERIC
    return named or {w.norm for w in words[start:end] if len(w.norm) > 2} - LOOSE
