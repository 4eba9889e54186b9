"""Which stretches of words may be something else misprinted, and how much sense they make as they stand."""

import json
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from functools import lru_cache
from importlib.util import find_spec
from pathlib import Path
from typing import Literal

from spacy.lang.en.stop_words import STOP_WORDS

from notesmith.lexicon.check import common_words
from notesmith.listening.english import PACKAGES
from notesmith.listening.hearing import PUNCTUATION, Hearing, Word
from notesmith.listening.names import CARRIERS
from notesmith.listening.sounding import Sound, joined

LONGEST = 4
Place = Literal["carried", "pointed", "open", "none"]  # the … one; the …; of … is; any other
# Words that join sentences and fill them: they are hardly ever half of a misprinted name.
LOOSE = STOP_WORDS | frozenset(
    "yeah yes okay ok um uh oh hm hmm mm like well right so now just really hello huh ah er erm gonna aye n't wanna "
    "got get going want think know mean say says said thing things look let good love nice bit lot little".split()
)
NAMING = frozenset("the than cup sample number from and of called my our is 's like with".split())
NAMED = frozenset("one is 's was and or than has for again first last , . ; : ? !".split()) | CARRIERS
SIGNS = frozenset([".", "!", "?", "...", "…", "``", "''", ":", '"'])


@dataclass(frozen=True, slots=True)
class Stretch:
    """Some neighbouring words, taken as they sound."""

    start: int
    end: int
    words: tuple[str, ...]
    sound: Sound
    loose_edges: int
    loose: int
    odd: int  # how many of its words are strange in English, or stand with a capital where none is due
    place: Place  # how well a name could stand here


@lru_cache(maxsize=1)
def _english() -> frozenset[str]:
    """The words that the English pipeline was trained on: what is not among them is rare."""
    spec = next(filter(None, map(find_spec, PACKAGES)))
    folder = Path(spec.origin or "").parent
    return frozenset(json.loads(next(folder.glob("*/vocab/strings.json")).read_text("utf-8")))


def is_english(word: str) -> bool:
    """Whether a word is an everyday one.

    >>> is_english("water"), is_english("shiboridashi")
    (True, False)
    """
    return word in _english() or word in common_words()


def stretches(hearing: Hearing, longest_sound: int) -> Iterator[Stretch]:
    """Every row of one to four words with no sign between, no longer than what is looked for."""
    words = hearing.words
    odd = [_odd(words, i) for i in range(len(words))]
    loose = [w.norm in LOOSE for w in words]
    spoken = [_spoken(w) for w in words]
    for start in range(len(words)):
        for end in range(start + 1, min(start + LONGEST, len(words)) + 1):
            if not spoken[end - 1]:
                break
            if len(words[start].norm) == 1 and words[start].norm != "a":
                break
            if all(loose[start:end]) and end - start < 3 or words[start].norm in ("'s", "n't") or words[end - 1].norm == "'s":
                continue
            texts = tuple(w.norm for w in words[start:end])
            if sum(map(len, texts)) > longest_sound + 4:
                break
            yield Stretch(
                start, end, texts, joined(texts), loose[start] + (loose[end - 1] if end - start > 1 else 0),
                sum(loose[start:end]), sum(odd[start:end]), _place(words, start, end),
            )  # fmt: skip


def _spoken(word: Word) -> bool:
    return bool(word.norm) and word.tag not in PUNCTUATION and (word.norm[0].isalpha() or word.norm == "'s")


def _odd(words: Sequence[Word], i: int) -> bool:
    return _spoken(words[i]) and words[i].norm not in LOOSE and not is_english(words[i].norm)


def _place(words: Sequence[Word], start: int, end: int) -> Place:
    before = words[start - 1].norm if start else "."
    after = words[end].norm if end < len(words) else "."
    if before == "the" and after in CARRIERS:
        return "carried"
    if before == "the" and after in NAMED:
        return "pointed"
    return "open" if (before in NAMING or before in SIGNS or before == ",") and after in NAMED else "none"
