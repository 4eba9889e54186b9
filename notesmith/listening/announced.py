"""Products that everybody knows are on the table, only not in which cup, and the words that each alone goes by."""

from collections import Counter
from collections.abc import Iterator
from dataclasses import dataclass

from notesmith.listening.announcing import TOGETHER, find_places
from notesmith.listening.hearing import Hearing, Word
from notesmith.listening.mishearing import meant_name
from notesmith.listening.names import CARRIERS
from notesmith.listening.products import NO_NAME, as_meant, phrase_end
from notesmith.listening.suspects import LOOSE, is_english

REVEALING = 150  # words from the reveal's start in which names not announced are told
TELLS = frozenset("says called is 's was".split())
IDLE = frozenset("year years old the and from in of for with a an it that is was , .".split())
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
    """The products told in the opening, as many as there are samples; none where fewer are told."""
    return _candidates(hearing, find_places(hearing, known), known)


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
    alone = _alone([_words(hearing.words, start, after, known) for start, after in reaches])
    if not all(alone):  # `Hill Lane twelve, Hill Lane eighteen`
        alone = _alone([_spoken(hearing.words, *place) for place in places])
    found = [
        Candidate(*reach, product := _product(hearing, *place, known), words | _odd(product))
        for reach, place, words in zip(reaches, places, alone, strict=True)
    ]
    return found if all(c.words for c in found) else []


def _alone(owned: list[set[str]]) -> list[frozenset[str]]:
    """The words that only one of the products goes by, of each."""
    counts = Counter(word for words in owned for word in words)
    return [frozenset(w for w in words if counts[w] == 1) for words in owned]


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


def _reaches(hearing: Hearing, places: list[tuple[int, int]]) -> Iterator[tuple[int, int]]:
    """From each product to the next, or to the end of its sentence: by all names there it goes too."""
    for k, (start, end) in enumerate(places):
        limit = places[k + 1][0] if k + 1 < len(places) else min(end + TOGETHER // 2, len(hearing.words))
        stops = (i for i in range(end, limit) if hearing.words[i].norm in (".", "?", "!"))
        yield start, next(stops, limit if k + 1 < len(places) else end)


def _words(words: list[Word], start: int, end: int, known: bytearray) -> set[str]:
    """Names among some words; where none is known, all that are not everyday."""
    named = {words[i].norm for i in range(start, end) if known[i] and len(words[i].norm) > 2} - GENERIC
    return named or _spoken(words, start, end) - LOOSE


def _spoken(words: list[Word], start: int, end: int) -> set[str]:
    """All words that tell anything: the eight-year-old goes by its number."""
    return {w.norm for w in words[start:end] if len(w.norm) > 1} - IDLE
