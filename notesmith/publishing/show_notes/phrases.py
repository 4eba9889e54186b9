"""Find passages by listed words: one that suffices, or two of different lists near one another."""

import re
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from functools import cache

_WORD = re.compile(r"\w+(?:['’-]\w+)*")
_WORD_BEFORE, _WORD_AFTER = re.compile(r"[\w'’]+$"), re.compile(r"\w*(?:['’]t\b)?")
_LONG_WORD = 40
_DENIED_WITHIN = 4

Phrases = frozenset[tuple[str, ...]]
"""Phrases as words to compare."""


@dataclass(frozen=True)
class Wanted:
    """The words looked for, as cautions.toml lists them."""

    alone: Phrases
    pairs: tuple[tuple[Phrases, Phrases], ...]
    """Acts, and what they act on."""
    within: int
    """Most words between an act and what it acts on."""
    denials: frozenset[str] = frozenset()
    """Words that, shortly before, say that it is not so."""


@dataclass(frozen=True, order=True)
class Passage:
    """Where the words stand in the text, in characters."""

    start: int
    end: int


def phrases(listed: Sequence[str]) -> Phrases:
    """The listed phrases as words to compare.

    >>> phrases(["Free of charge"])
    frozenset({('free', 'of', 'charge')})
    """
    return frozenset(tuple(_norm(word) for word in _WORD.findall(phrase)) for phrase in listed)


def find(text: str, wanted: Wanted) -> list[Passage]:
    """The passages of the text, in order, overlapping ones as one.

    >>> find("it helps with your digestion", Wanted(frozenset(), ((phrases(["helps"]), phrases(["digestion"])),), 4))
    [Passage(start=3, end=28)]
    """
    spans = [match.span() for match in _WORD.finditer(text)]
    words = [_norm(text[start:end]) for start, end in spans]
    found = sorted({*_whole(words, wanted.alone), *_near(words, wanted)})
    kept = [(a, b) for a, b in found if wanted.denials.isdisjoint(words[max(0, a - _DENIED_WITHIN) : a])]
    return _joined([Passage(spans[a][0], spans[b - 1][1]) for a, b in kept])


def holds(text: str, listed: Phrases) -> bool:
    """Whether one of the phrases stands in the text."""
    return any(True for _ in _whole([_norm(word) for word in _WORD.findall(text)], listed))


def without(text: str, listed: Phrases) -> str:
    """The words of the text, compared forms, without the phrases; longer phrases are taken out first."""
    words = [_norm(word) for word in _WORD.findall(text)]
    for a, b in sorted(_whole(words, listed), key=lambda span: span[0] - span[1]):
        words[a:b] = [""] * (b - a)
    return " ".join(word for word in words if word)


def unbroken(text: str, span: tuple[int, int]) -> tuple[int, int]:
    """The span with the words that it cuts.

    >>> unbroken("I don't get it", (4, 10))
    (2, 11)
    """
    inside = text[slice(*span)]
    begun, over = _WORD_BEFORE.search(text, max(0, span[0] - _LONG_WORD), span[0]), _WORD_AFTER.match(text, span[1])
    first = begun.start() if begun and re.match(r"[\w'’]", inside) else span[0]
    return first, over.end() if over and inside[-1:].isalnum() else span[1]


def _norm(word: str) -> str:
    return word.casefold().replace("’", "'")


def _whole(words: Sequence[str], listed: Phrases) -> Iterator[tuple[int, int]]:
    lengths = _lengths(listed)
    for start, word in enumerate(words):
        for end in (start + length for length in lengths.get(word, ())):
            if end <= len(words) and tuple(words[start:end]) in listed:
                yield start, end


@cache
def _lengths(listed: Phrases) -> dict[str, list[int]]:
    """How long the phrases are that open with a word."""
    lengths: dict[str, set[int]] = {}
    for phrase in listed:
        lengths.setdefault(phrase[0], set()).add(len(phrase))
    return {word: sorted(found) for word, found in lengths.items()}


def _near(words: Sequence[str], wanted: Wanted) -> Iterator[tuple[int, int]]:
    for acts, on in wanted.pairs:
        targets = list(_whole(words, on))
        for start, end in _whole(words, acts):
            yield from ((start, b) for a, b in targets if 0 <= a - end <= wanted.within)


def _joined(passages: list[Passage]) -> list[Passage]:
    joined: list[Passage] = []
    for passage in sorted(passages):
        if joined and passage.start <= joined[-1].end:
            joined[-1] = Passage(joined[-1].start, max(joined[-1].end, passage.end))
        else:
            joined.append(passage)
    return joined
