"""How alike two stretches sound, whatever they look like: half their sounds, half their letters.

Captions misprint a rare word as common ones that sound the same (`pick pool` for a grape). So spaces mean nothing,
vowels little, and consonants made in the same place of the mouth are one.
"""

import re
from collections.abc import Iterable
from functools import lru_cache
from typing import NamedTuple

from rapidfuzz.distance import Indel

from notesmith.lexicon.words import without_accents

# English spelling to sounds (common practice, no source): S as in shoe, C chew, J joy, T thin. Applied in order.
OPENINGS = {"kn": "n", "gn": "n", "pn": "n", "wr": "r", "ps": "s", "x": "z"}
CLUSTERS = {
    "tch": "C", "sch": "S", "ch": "C", "sh": "S", "ph": "f", "th": "T", "wh": "w", "ck": "k", "zh": "J", "dj": "J",
    "igh": "i", "ough": "o", "augh": "o", "gh": "", "qu": "kw", "q": "k", "x": "ks",
}  # fmt: skip
IN_PLACE = [
    (re.compile(pattern), sound)
    for pattern, sound in [
        (r"mb$", "m"), (r"dg(?=[eiy])", "J"), (r"[ts]i(?=o[nu]|a[nl])", "S"), (r"c(?=[eiy])", "s"), (r"g(?=[ei])", "J"),
        (r"(?<=[^aeiouy])e(?=s?$)", ""),
    ]
]  # fmt: skip
VOWELS = {
    "c": "k", "ee": "i", "ea": "i", "ie": "i", "ei": "i", "ey": "i", "y": "i", "ai": "e", "ay": "e",
    "oo": "u", "ou": "u", "ow": "u", "ew": "u", "ue": "u", "oa": "o", "aw": "o", "au": "o",
}  # fmt: skip
DOUBLED = re.compile(r"(.)\1+")
# Voiced and voiceless are one; glides and vowels carry too little to go by.
BARE = str.maketrans(
    {"b": "p", "d": "t", "g": "k", "v": "f", "z": "s", "J": "C", "j": "C", "S": "C", "T": "t"}
    | dict.fromkeys("aeiouhwy", "")
)


class Sound(NamedTuple):
    """A stretch of words as it sounds, spaces dropped."""

    letters: str
    phones: str
    bones: str  # its consonants alone


@lru_cache(maxsize=1 << 16)
def sound_of(word: str) -> Sound:
    """How one word sounds; a number in digits, a sign: like nothing.

    >>> sound_of("Knight"), sound_of("phrase").bones == sound_of("fraze").bones
    (Sound(letters='knight', phones='nit', bones='nt'), True)
    """
    letters = "".join(filter(str.isalpha, without_accents(word.lower())))
    phones = letters
    for opening, sound in OPENINGS.items():
        if phones.startswith(opening):
            phones = sound + phones[len(opening) :]
    for cluster, sound in CLUSTERS.items():
        phones = phones.replace(cluster, sound)
    for pattern, sound in IN_PLACE:
        phones = pattern.sub(sound, phones)
    for vowel, sound in VOWELS.items():
        phones = phones.replace(vowel, sound)
    phones = DOUBLED.sub(r"\1", phones)
    return Sound(letters, phones, DOUBLED.sub(r"\1", phones.translate(BARE)))


def joined(words: Iterable[str]) -> Sound:
    """How several words sound, said as one."""
    parts = [sound_of(word) for word in words]
    return Sound(*map("".join, zip(*parts, strict=True))) if parts else Sound("", "", "")


def likeness(a: Sound, b: Sound) -> float:
    """How alike two stretches are, from 0 to 1.

    >>> round(likeness(joined(["pen", "he", "fold"]), joined(["pennyfold"])), 2)
    0.88
    """
    return (
        Indel.normalized_similarity(a.phones, b.phones)
        + Indel.normalized_similarity(a.bones, b.bones)
        + Indel.normalized_similarity(a.letters, b.letters)
    ) / 3
