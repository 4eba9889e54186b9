"""Where the words of an edit stand in a talk, though its captions may have been exported anew since."""

import re
from collections import Counter
from collections.abc import Iterator

from notesmith.review.edits import Words

AROUND = 5
"""How many words before and after a stretch are kept with it."""
REACH = 120
"""Characters in which those few words stand."""
ALIKE = 0.5
"""The share of them that must still stand there: captions are also mended, and one word in two is still much."""

Span = tuple[int, int]


def find_words(text: str, words: Words) -> Span | None:
    """Where the words stand in the text: the place most like the one they were taken from, or None where there is none.

    Case, punctuation and spaces do not count; the few words around must be half the same, for "sweet" is said often.

    >>> words = Words(text="quite sweet", before="the first is", after="and thick", span=(13, 24))
    >>> find_words("Well. The first is quite sweet, and thick.", words)
    (19, 30)
    """
    if _is_as_before(text, words):
        return words.span
    scored = [(_likeness(text, span, words), -abs(span[0] - words.span[0]), span) for span in places(text, words.text)]
    score, _, span = max(scored, default=(0.0, 0, None))
    return span if score >= ALIKE else None


def places(text: str, phrase: str) -> Iterator[Span]:
    """Everywhere that a phrase stands as whole words, whatever its case and the punctuation between them."""
    parts = re.findall(r"\w+", phrase)
    if parts:
        pattern = r"\b" + r"\W+".join(map(re.escape, parts)) + r"\b"
        yield from (match.span() for match in re.finditer(pattern, text, re.IGNORECASE))


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


def _likeness(text: str, span: Span, words: Words) -> float:
    """The share of the words around the stretch that stand around this place too."""
    kept = _parts(words.before), _parts(words.after)
    here = _parts(words_before(text, span[0])), _parts(words_after(text, span[1]))
    shared = sum((side & other).total() for side, other in zip(kept, here, strict=True))
    return shared / sum(side.total() for side in kept) if any(kept) else 1.0


def _parts(text: str) -> Counter[str]:
    return Counter(re.findall(r"\w+", text.lower()))
