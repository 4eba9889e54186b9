"""Which stretches of words may be something else misprinted, and how much sense they make as they stand."""

import json
from collections.abc import Callable, Container, Iterator, Sequence
from dataclasses import dataclass
from functools import lru_cache
from importlib.util import find_spec
from operator import add
from pathlib import Path
from typing import Literal, NamedTuple

import numpy as np
from numpy.typing import NDArray
from spacy.lang.en.stop_words import STOP_WORDS

from notesmith.lexicon.check import common_words
from notesmith.listening.english import PACKAGES
from notesmith.listening.hearing import PUNCTUATION, Hearing, Word
from notesmith.listening.names import CARRIERS, DIGITS
from notesmith.listening.sounding import Sound, joined, sound_of

MANY = 3  # words from which filling alone may be a misprint
LONGEST = 4
Truths = NDArray[np.bool_]
Counts = NDArray[np.intp]
Place = Literal["carried", "pointed", "open", "none"]  # the … one; the …; of … is; any other
# Words that join sentences and fill them: they are hardly ever half of a misprinted name.
LOOSE = STOP_WORDS | frozenset(
    "yeah yes okay ok um uh oh hm hmm mm like well right so now just really hello huh ah er erm gonna aye n't wanna "
    "got get going want think know mean say says said thing things look let good love nice bit lot little "
    "years year".split()
) | frozenset(DIGITS.values())
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

    def is_strange(self, known: bytes) -> bool:
        """Whether it is strange enough for a word of the trade: two words, none known, odd ones or no filling."""
        return len(self.words) > 1 and not any(known) and (bool(self.odd) or not self.loose)


@lru_cache(maxsize=1)
def _english() -> frozenset[str]:
    """Everyday words and those that the English pipeline was trained on: what is not among them is rare."""
    spec = next(filter(None, map(find_spec, PACKAGES)))
    folder = Path(spec.origin or "").parent
    return common_words().union(json.loads(next(folder.glob("*/vocab/strings.json")).read_text("utf-8")))


def is_english(word: str) -> bool:
    """Whether a word is an everyday one.

    >>> is_english("water"), is_english("shiboridashi")
    (True, False)
    """
    return word in _english()


def stretches(hearing: Hearing, names: Container[str], trade: Container[str], known: bytes) -> Iterator[Stretch]:
    """Every row of one to four words with no sign between that may be a name or a word of the trade, by its consonants.

    A word of the trade is looked for only in words that are strange as they stand (`known` marks those that are not).
    """
    marks, found = _mark(hearing.words, known), set[tuple[int, int]]()
    bones = rows = _bones(hearing.words)
    for length in range(1, min(LONGEST, len(rows)) + 1):
        whole = _whole(marks, length)
        strange = whole & _are_strange(marks, length)
        found.update((start, start + length) for start in np.flatnonzero(whole).tolist() if rows[start] in names)
        found.update((start, start + length) for start in np.flatnonzero(strange).tolist() if rows[start] in trade)
        rows = [*map(add, rows, bones[length:])]
    for start, end in sorted(found):
        place = _place(hearing.words, start, end)
        if end - start > 1 or place != "none" or marks.odd[start]:  # any other lone word is what it is
            yield _stretch(hearing.words, marks, start, end, place)


class _Marks(NamedTuple):
    """For every word, a byte that is 1 where it is so."""

    opens: bytes  # may open a misprint
    closes: bytes  # may close one
    silent: bytes  # not spoken
    loose: bytes
    odd: bytes
    known: bytes


def _mark(words: Sequence[Word], known: bytes) -> _Marks:
    norms = [w.norm for w in words]
    mute = {norm for norm in set(norms) if not (norm[:1].isalpha() or norm == "'s")}
    silent = bytes([w.norm in mute or w.tag in PUNCTUATION for w in words])
    opens, closes = _marked(norms, _may_open), _marked(norms, lambda norm: norm != "'s")
    return _Marks(opens, closes, silent, _marked(norms, LOOSE.__contains__), _marked(norms, _is_odd), known)


def _marked(norms: Sequence[str], test: Callable[[str], bool]) -> bytes:
    """Which of the words pass a test; each word is tested once."""
    passing = {norm for norm in set(norms) if test(norm)}
    return bytes([norm in passing for norm in norms])


def _whole(marks: _Marks, length: int) -> Truths:
    """For every row of some words, whether it can be a misprint: spoken, well begun and ended, and no mere filling."""
    opens = np.frombuffer(marks.opens, dtype=np.bool_)[: len(marks.opens) - length + 1]
    closes = np.frombuffer(marks.closes, dtype=np.bool_)[length - 1 :]
    filled = (_counts(marks.loose, length) == length) & (length < MANY)
    whole: Truths = opens & closes & (_counts(marks.silent, length) == 0) & ~filled
    return whole


def _are_strange(marks: _Marks, length: int) -> Truths:
    """For every row of some words, whether it is two at least, none of them known, and odd ones or no filling."""
    odd_or_full = (_counts(marks.odd, length) > 0) | (_counts(marks.loose, length) == 0)
    strange: Truths = odd_or_full & (_counts(marks.known, length) == 0) & (length > 1)
    return strange


def _counts(marks: bytes, length: int) -> Counts:
    """For every row of `length` words, how many of them are marked."""
    sums = np.zeros(len(marks) + 1, dtype=np.intp)
    sums[1:] = np.frombuffer(marks, dtype=np.uint8).cumsum()
    return np.subtract(sums[length:], sums[:-length])


def _bones(words: Sequence[Word]) -> list[str]:
    """The consonants of every word."""
    bones = {norm: sound_of(norm).bones for norm in {w.norm for w in words}}
    return [bones[w.norm] for w in words]


def _is_odd(norm: str) -> bool:
    return norm not in LOOSE and norm != "'s" and not is_english(norm)


def _may_open(norm: str) -> bool:
    """No misprint opens with the tail of a contraction, or with a lone letter other than an article."""
    return norm == "a" or (len(norm) > 1 and norm not in ("'s", "n't"))


def _stretch(words: Sequence[Word], marks: _Marks, start: int, end: int, place: Place) -> Stretch:
    texts, loose, odd = tuple([w.norm for w in words[start:end]]), marks.loose, marks.odd
    edges = loose[start] + (loose[end - 1] if end - start > 1 else 0)
    return Stretch(start, end, texts, joined(texts), edges, sum(loose[start:end]), sum(odd[start:end]), place)


def _place(words: Sequence[Word], start: int, end: int) -> Place:
    before = words[start - 1].norm if start else "."
    after = words[end].norm if end < len(words) else "."
    if before == "the" and after in CARRIERS:
        return "carried"
    if before == "the" and after in NAMED:
        return "pointed"
    return "open" if (before in NAMING or before in SIGNS or before == ",") and after in NAMED else "none"
