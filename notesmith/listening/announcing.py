"""Where the opening of a talk announces the products: one after another, as many as there are samples.

`One is a keemun and the other is an assam`; a row of names; or a few sentences with that many names in them.
"""

from collections.abc import Iterable, Iterator
from itertools import pairwise

from notesmith.listening.hearing import Hearing, Word
from notesmith.listening.products import STOPS, phrase_end
from notesmith.listening.vocabulary import NOUNS

OPENING = 0.3  # of the talk
TOGETHER = 60  # words from one of the products to the next
LONGEST = 5  # words of a product
COPULAS = frozenset("is 's was are".split())
OF_THEM = frozenset("of them these those which the two three four one".split())
ONES = frozenset("one other another third fourth last".split())
ORDINALS = frozenset("first second".split())  # they count cups as well
BEFORE_NAME = frozenset("a an the my our like , uh um this that your some called actually from just only".split())
BREAKS = STOPS | frozenset(", . ! : the a my and from in at for with or that this it there 's then was is".split())
BETWEEN = frozenset(", . and the a an also then versus against or uh um i we 've have got there 's plus".split())
JOINTS = frozenset("and versus against or plus".split())
WHENCE = frozenset("to from in of at near".split())
CALLED = frozenset("the a an got have called 's".split())
SENTENCES = 3  # in which the products may be told
Stretch = tuple[int, int]


def find_places(hearing: Hearing, known: bytearray) -> list[Stretch]:
    """The words that announce the products; none where they are not as many as the samples."""
    count, end = len(hearing.sheet.samples), int(len(hearing.words) * OPENING)
    if end + LONGEST + 10 > len(hearing.words) or count < 2:
        return []
    places = _one_by_one(hearing, end, known, count) or _in_a_row(hearing.words, end, known, count)
    return places or _each_called(hearing, end, known, count)


def _one_by_one(hearing: Hearing, end: int, known: bytearray, count: int) -> list[Stretch]:
    """`One of them is X, … the other one is Y`; what names a sample (`one is the heron`) is no product."""
    samples = {i for m in hearing.mentions if m.kind == "name" for i in range(m.start, m.end)}
    slots = [slot for slot in _slots(hearing.words, end, known) if samples.isdisjoint(range(*slot))]
    for k in range(len(slots) - count + 1):
        row = slots[k : k + count]
        if _opens(hearing.words, row[0][0]) and all(b[0] - a[1] < TOGETHER for a, b in pairwise(row)):
            return row
    return []


def _opens(words: list[Word], at: int) -> bool:
    """Whether `one`, and not `the other`, leads to the product at word `at`."""
    before = {w.norm for w in words[max(0, at - 8) : at]}
    return not before.isdisjoint(("one", "first")) and "other" not in before


def _slots(words: list[Word], end: int, known: bytearray) -> Iterator[Stretch]:
    """What is said of `one` of them, or of `the other`: the words after `is`, up to a break."""
    for i in range(end):
        if words[i].norm not in ONES | ORDINALS or (i and words[i].norm == "one" and words[i - 1].norm in ONES):
            continue
        at = next((k for k in range(i + 1, end + LONGEST) if words[k].norm not in OF_THEM), i)
        slot = _slot(words, at + 1, known) if words[at].norm in COPULAS else None
        if slot and (words[i].norm in ONES or any(known[slot[0] : slot[1]])):
            yield slot


def _slot(words: list[Word], at: int, known: bytearray) -> Stretch | None:
    """The product from word `at` on, without articles before it and without what cannot end a name."""
    start = next((k for k in range(at, at + LONGEST) if words[k].norm not in BEFORE_NAME), at)
    stop = start
    while stop - start < LONGEST and (words[stop].norm not in BREAKS or known[stop]):
        stop += 1
    while stop > start and not (known[stop - 1] or words[stop - 1].tag in NOUNS):
        stop -= 1
    return (start, stop) if stop > start else None


def _in_a_row(words: list[Word], end: int, known: bytearray, count: int) -> list[Stretch]:
    """As many names as there are samples, with nothing but `and the` between them."""
    row: list[Stretch] = []
    for place in _names(words, 1, end, known):
        if words[place[0] - 1].norm in WHENCE:
            continue
        joined = row and BETWEEN.issuperset(w.norm for w in words[row[-1][1] : place[0]])
        if len(row) == count and not joined and _is_joined(words, row):
            return row
        row = [*row, place] if joined else [place]
    return row if len(row) == count and _is_joined(words, row) else []


def _is_joined(words: list[Word], row: list[Stretch]) -> bool:
    return not JOINTS.isdisjoint(w.norm for w in words[row[-2][1] : row[-1][0]])


def _names(words: list[Word], start: int, end: int, known: bytearray) -> Iterator[Stretch]:
    """The names of products in a stretch, each with the number that may follow (`Hill Lane twelve`)."""
    i = start
    while i < end:
        stop = phrase_end(words, i, end, known) if known[i] else i
        if stop > i:
            stop += words[stop].tag == "CD" and known[stop - 1] == 2
            yield i, stop
        i = max(stop, i + 1)


def _each_called(hearing: Hearing, end: int, known: bytearray, count: int) -> list[Stretch]:
    """`There's the X, which …, and there's the Y`: as many names as there are samples, and no more, told close by."""
    words, stops = hearing.words, [-1, *(i for i in range(end) if hearing.words[i].norm in (".", "?", "!"))]
    for length in range(1, SENTENCES + 1):
        for first, last in zip(stops, stops[length:], strict=False):
            found = _distinct(words, _introduced(hearing, first + 1, last, known))
            if len(found) == count:
                return found
    return []


def _introduced(hearing: Hearing, start: int, end: int, known: bytearray) -> Iterator[Stretch]:
    """The names after `the`, `a`, `got`: of products, not what the whole session is about."""
    words, whole = hearing.words, hearing.product_words
    for place in _names(words, max(start, 1), end, known):
        named = {w.norm for w in words[place[0] : place[1]]} - whole
        if named and words[place[0] - 1].norm in CALLED:
            yield place


def _distinct(words: list[Word], places: Iterable[Stretch]) -> list[Stretch]:
    """The places without those that name again what an earlier one named."""
    found: dict[tuple[str, ...], Stretch] = {}
    for place in places:
        found.setdefault(tuple(w.norm for w in words[place[0] : place[1]]), place)
    return list(found.values())
