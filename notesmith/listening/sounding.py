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

# English spelling to sounds, common practice, no source: S as in shoe, C chew, J joy, T thin.
SPELLINGS = {
    r"^(?:kn|gn|pn)": "n", r"^wr": "r", r"^ps": "s", r"^x": "z", r"mb$": "m",
    r"tch|ch": "C", r"sch|sh": "S", r"ph": "f", r"th": "T", r"wh": "w", r"c?ck|cc(?![ei])": "k", r"zh": "J",
    r"dg(?=[eiy])|dj": "J", r"[ts]i(?=o[nu]|a[nl])": "S",
    r"igh": "i", r"[oa]ugh": "o", r"gh": "", r"qu": "kw", r"q": "k", r"x": "ks",
    r"s?c(?=[eiy])": "s", r"c": "k", r"g(?=[ei])": "J",
    r"(?<=[^aeiouy])e$": "", r"(?<=[^aeiouy])es$": "s",
    r"ee|ea|ie|ei|ey|i|y": "i", r"ai|ay|e": "e", r"oo|ou|ow|ew|ue|u": "u", r"oa|aw|au|o": "o",
    r"([a-z])\1+": "",  # a doubled letter sounds once; see _spoken
}  # fmt: skip
SPELLING = re.compile("|".join(f"(?P<s{k}>{pattern.replace(chr(92) + '1', '(?P=double)').replace('([a-z])', '(?P<double>[a-z])')})"
                               for k, pattern in enumerate(SPELLINGS)))  # fmt: skip
SOUNDS = {f"s{k}": sound for k, sound in enumerate(SPELLINGS.values())}
