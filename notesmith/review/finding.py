"""Where the words of an edit stand in a talk, though its captions may have been exported anew since."""

import re
from collections import Counter
from collections.abc import Iterator, Sequence
from functools import lru_cache
from typing import NamedTuple

from notesmith.review.edits import Words

AROUND = 5
"""How many words before and after a stretch are kept with it."""
REACH = 120
"""Characters in which those few words stand."""
ALIKE = 0.5
"""The share of them that must still stand there: captions are also mended, and one word in two is still much."""

Span = tuple[int, int]


class Pieces(NamedTuple):
    """A text as its words in lower case, where each stands, and where each of them comes again."""

    words: Sequence[str]
    spans: Sequence[Span]
    again: dict[str, list[int]]


def find_words(text: str, words: Words) -> Span | None:
    """Where the words stand in the text: the place most like the one they were taken from, or None where there is none.

    Case, punctuation and spaces do not count; the few words around must be half the same, for "sweet" is said often.

    >>> words = Words(text="quite sweet", before="the first is", after="and thick", span=(13, 24))
    >>> find_words("Well. The first is quite sweet, and thick.", words)
    (19, 30)
    """
    if _is_as_before(text, words):
        return words.span
    pieces, kept = _pieces(text), (_words(words.before), _words(words.after))
    best, found = ALIKE, None
    for run, span in sorted(_runs(pieces, words.text), key=lambda place: abs(place[1][0] - words.span[0])):
        alike = _likeness(pieces.words, run, kept)
        if alike > best or (alike == best and not found):
            best, found = alike, span
        if alike == 1:
            break  # no place farther away is more alike
    return found


def places(text: str, phrase: str) -> Iterator[Span]:
    """Everywhere that a phrase stands as whole words, whatever its case and the punctuation between them."""
    return (span for _, span in _runs(_pieces(text), phrase))


def words_before(text: str, start: int) -> str:
    """The few words before a character."""
    return " ".join(text[max(0, start - REACH) : start].split()[-AROUND:])


def words_after(text: str, end: int) -> str:
    """The few words after a character."""
    return " ".join(text[end : end + REACH].split()[:AROUND])


def _is_as_before(text: str, words: Words) -> bool:
    """Whether all stands as it did: then the words may be a mark or a part of a word too."""
    start, end = words.span
    around = words_before(text, start), words_after(text, end)
    return text[start:end] == words.text and around == (words.before, words.after)


def _runs(pieces: Pieces, phrase: str) -> Iterator[tuple[Span, Span]]:
    """Where the words of a phrase follow one another: counted in words, and in characters."""
    sought = _words(phrase)
    for first in pieces.again.get(sought[0], ()) if sought else ():
        end = first + len(sought)
        if pieces.words[first:end] == sought:
            yield (first, end), (pieces.spans[first][0], pieces.spans[end - 1][1])


def _likeness(words: Sequence[str], run: Span, kept: tuple[list[str], list[str]]) -> float:
    """The share of the words kept from before and after a stretch that stand there too."""
    before, after = kept
    here = words[max(0, run[0] - len(before)) : run[0]], words[run[1] : run[1] + len(after)]
    shared = sum((Counter(side) & Counter(other)).total() for side, other in zip(kept, here, strict=True))
    return shared / (len(before) + len(after)) if before or after else 1.0


@lru_cache(maxsize=2)
def _pieces(text: str) -> Pieces:
    found = list(re.finditer(r"\w+", text))
    words = [match[0].lower() for match in found]
    again: dict[str, list[int]] = {}
    for place, word in enumerate(words):
        again.setdefault(word, []).append(place)
    return Pieces(words, [match.span() for match in found], again)


def _words(text: str) -> list[str]:
    return [word.lower() for word in re.findall(r"\w+", text)]
