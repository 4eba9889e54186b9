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
from notesmith.listening.suspects import LOOSE, is_english
from notesmith.listening.vocabulary import NOUNS

OPENING = 0.3  # of the talk
REVEALING = 150  # words from the reveal's start in which names not announced are told
TELLS = frozenset("says called is 's was".split())
TOGETHER = 60  # words from one of the products to the next
LONGEST = 5  # words of a product
COPULAS = frozenset("is 's was are".split())
OF_THEM = frozenset("of them these those which the two three four".split())
ONES = frozenset("one other another third fourth last".split())
ORDINALS = frozenset("first second".split())  # they count cups as well
BEFORE_NAME = frozenset("a an the my our like , uh um this that your some called actually from".split())
BREAKS = STOPS | frozenset(", . ! : the a my and from in at for with or that this it there 's then was is".split())
BETWEEN = frozenset(", . and the a an also then versus against or uh um".split())
JOINTS = frozenset("and versus against or".split())
MEASURES = frozenset("year years old the and".split())
APPOSED = frozenset(", one it that 's is called named the".split())
GENERIC = LOOSE | NO_NAME | CARRIERS | frozenset("black green white red dark tea teas harvest pick picking".split())


@dataclass(frozen=True, slots=True)
class Candidate:
    """A product told in the opening, in the words from `start` to `end`, and the words that only it goes by."""

    start: int
    end: int
    product: str
    words: frozenset[str]


def find_announced(hearing: Hearing, known: bytearray) -> list[Candidate]:
    """The products, as many as there are samples; none where fewer are told."""
    count, end = len(hearing.sheet.samples), int(len(hearing.words) * OPENING)
    places = _one_by_one(hearing, end, known, count) or _in_a_row(hearing, end, known, count)
    places = places or _each_called(hearing.words, end, known, count)
    return _candidates(hearing, places, known)


def find_named_later(hearing: Hearing, known: bytearray, start: int) -> list[Candidate]:
    """Where none was announced: the names that are told after word `start`, if they are as many as the samples."""
    words, end = hearing.words, min(len(hearing.words), start + REVEALING)
    found: dict[str, tuple[int, int]] = {}
    for i in range(start + 1, end):
        if known[i] == 2 and not known[i - 1] and not TELLS.isdisjoint(w.norm for w in words[i - 3 : i]):
            found.setdefault(words[i].norm, (i, phrase_end(words, i, end, known)))
    places = list(found.values())
    return _candidates(hearing, places, known) if len(places) == len(hearing.sheet.samples) else []


def _candidates(hearing: Hearing, places: list[tuple[int, int]], known: bytearray) -> list[Candidate]:
    """The products told at some places, each with the words that only it goes by; none where one has no such words."""
    reaches = list(_reaches(hearing, places))
    places = [_called(hearing.words, *p, after, known) for p, (_, after) in zip(places, reaches, strict=True)]
    owned = [_words(hearing.words, start, after, known) for start, after in reaches]
    counts = Counter(word for words in owned for word in words)
    alone = [frozenset(w for w in words if counts[w] == 1) for words in owned]
    found = [
        Candidate(*reach, product := _product(hearing, *place, known), words | _odd(product))
        for reach, place, words in zip(reaches, places, alone, strict=True)
    ]
    return found if all(c.words for c in found) else []


def _called(words: list[Word], start: int, end: int, after: int, known: bytearray) -> tuple[int, int]:
    """Where a product has a proper name beside what it is (`the corner shop's, Tanner's Gold`): that."""
    if any(known[start:end]):
        return start, end
    named = next((i for i in range(end, after) if known[i] == 2 and words[i].tag in ("NNP", "NNPS")), None)
    beside = named is not None and APPOSED.issuperset(w.norm for w in words[end:named])
    return (named, phrase_end(words, named, after, known)) if named and beside else (start, end)


def _odd(product: str) -> set[str]:
    """The words of a name that are not everyday ones, as it was meant."""
    return {word for word in product.lower().split() if not is_english(word)}


def _product(hearing: Hearing, start: int, end: int, known: bytearray) -> str:
    """The product by the name that was meant."""
    heard = tuple(w.norm for w in hearing.words[start:end])
    meant = None if any(known[start:end]) else meant_name(hearing.lexicon, heard)
    return meant or as_meant(hearing, start, end)


def _one_by_one(hearing: Hearing, end: int, known: bytearray, count: int) -> list[tuple[int, int]]:
    """`One of them is X, … the other one is Y`; what names a sample (`one is the heron`) is no product."""
    words, samples = hearing.words, {i for m in hearing.mentions if m.kind == "name" for i in range(m.start, m.end)}
    slots = [slot for slot in _slots(words, end, known) if samples.isdisjoint(range(*slot))]
    for k in range(len(slots) - count + 1):
        row = slots[k : k + count]
        near = all(b[0] - a[1] < TOGETHER for a, b in pairwise(row))
        if near and _opens(words, row[0][0]):
            return row
    return []


def _opens(words: list[Word], at: int) -> bool:
    """Whether `one`, and not `the other`, leads to the product at word `at`."""
    before = [w.norm for w in words[max(0, at - 8) : at]]
    return bool({"one", "first"} & set(before)) and "other" not in before


def _slots(words: list[Word], end: int, known: bytearray) -> Iterator[tuple[int, int]]:
    """What is said of `one` of them, or of `the other`: the words after `is`, up to a break."""
    for i in range(end):
        if words[i].norm not in ONES | ORDINALS or (i and words[i].norm == "one" and words[i - 1].norm in ONES):
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
            if stop > start and (words[i].norm in ONES or any(known[start:stop])):
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


def _each_called(words: list[Word], end: int, known: bytearray, count: int) -> list[tuple[int, int]]:
    """`There's the X, which …, and there's the Y`: as many names after `the` as there are samples, and no more."""
    found: dict[str, tuple[int, int]] = {}
    for i in range(2, end):
        called = words[i - 1].norm == "the" or (words[i - 2].norm, words[i - 1].norm) == ("there", "'s")
        if known[i] == 2 and called:
            found.setdefault(words[i].norm, (i, phrase_end(words, i, end, known)))
    return list(found.values()) if len(found) == count else []


def _reaches(hearing: Hearing, places: list[tuple[int, int]]) -> Iterator[tuple[int, int]]:
    """From each product to the next, or to the end of its sentence: by all names there it goes too."""
    for k, (start, end) in enumerate(places):
        limit = places[k + 1][0] if k + 1 < len(places) else end + TOGETHER // 2
        stops = (i for i in range(end, limit) if hearing.words[i].norm in (".", "?", "!"))
        yield start, next(stops, limit if k + 1 < len(places) else end)


def _words(words: list[Word], start: int, end: int, known: bytearray) -> set[str]:
    """Names among some words; where none is known, all that are not everyday."""
    named = {words[i].norm for i in range(start, end) if known[i] and len(words[i].norm) > 2} - GENERIC
    spoken = {w.norm for w in words[start:end] if len(w.norm) > 2} - MEASURES
    return named or spoken - LOOSE or spoken - STOPS - BREAKS  # the eight-year-old goes by its number
