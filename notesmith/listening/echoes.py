"""Which words may call a sample, though nothing says that they do? `Medium, pecans` may be the medium roast.

A mention is sure and moves the talk; an echo is a word of a sample's name, of its product's, or one that sounds like
it. What it was, the encoder tells from the words around it.
"""

from collections import defaultdict
from collections.abc import Iterator, Mapping
from typing import Literal, NamedTuple

from notesmith.listening.hearing import Hearing
from notesmith.listening.names import ARTICLES, CARRIERS, DIGITS, EMPTY, tokens_of
from notesmith.listening.sounding import likeness, sound_of
from notesmith.listening.suspects import LOOSE
from notesmith.records import Sheet, SheetSample

ECHOES = ("name", "product", "sound")
Kind = Literal["name", "product", "sound"]
LIKE = 0.72  # the likeness from which a word may be a name misprinted
SHORTEST = 3  # letters of a word that may be misprinted
IDLE = EMPTY | CARRIERS | frozenset(ARTICLES) | frozenset("'s . , - first second third last other same".split())


class Echo(NamedTuple):
    """A word that may call a sample."""

    at: int
    sample: str
    kind: Kind


def find_echoes(hearing: Hearing) -> list[Echo]:
    """Every word that may call one sample and no other, in the order of the talk."""
    called = _called(hearing)
    return [Echo(i, *called[hearing.meant[i]]) for i in hearing.places(called)]


def _called(hearing: Hearing) -> Mapping[str, tuple[str, Kind]]:
    """What each word of the talk that echoes may call."""
    keys = _keys(hearing.sheet)
    sounds = {word: sound_of(word) for word in keys if len(word) >= SHORTEST and word.isalpha()}
    called = dict(keys)
    for norm in dict.fromkeys(hearing.meant):
        if norm not in keys and norm not in LOOSE and len(norm) >= SHORTEST and norm.isalpha():
            heard = sound_of(norm)
            alike = ((likeness(heard, sound), word) for word, sound in sounds.items() if heard.bones and sound.bones)
            score, word = max(alike, default=(0.0, ""))
            if score >= LIKE:
                called[norm] = keys[word][0], "sound"
    return called


def _keys(sheet: Sheet) -> dict[str, tuple[str, Kind]]:
    """The words that belong to one sample's name, or else to its product's, and to no other's."""
    return _owned(sheet, "product") | _owned(sheet, "name")


def _owned(sheet: Sheet, kind: Kind) -> dict[str, tuple[str, Kind]]:
    owners: dict[str, set[str]] = defaultdict(set)
    for sample in sheet.samples:
        for word in _words(sample, kind):
            owners[word].add(sample.id)
    return {word: (ids.pop(), kind) for word, ids in owners.items() if len(ids) == 1}


def _words(sample: SheetSample, kind: Kind) -> Iterator[str]:
    texts = (sample.id, *sample.aliases) if kind == "name" else (sample.product or "",)
    for word in (word for text in texts for word in _telling(tokens_of(text))):
        yield word
        if word.isdigit() and int(word) in DIGITS:
            yield DIGITS[int(word)]


def _telling(words: tuple[str, ...]) -> list[str]:
    """The words that tell it from the others; where none does, it is called by what it stands in (`the mug`)."""
    return [word for word in words if word not in IDLE] or [word for word in words[-1:] if word in CARRIERS]
