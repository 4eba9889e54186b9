"""Which stretches of words may be something else misprinted, and how much sense they make as they stand."""

import json
from collections.abc import Container, Iterator, Sequence
from dataclasses import dataclass
from functools import lru_cache
from importlib.util import find_spec
from operator import add
from pathlib import Path
from typing import Literal

from spacy.lang.en.stop_words import STOP_WORDS

from notesmith.lexicon.check import common_words
from notesmith.listening.english import PACKAGES
from notesmith.listening.hearing import PUNCTUATION, Hearing, Word
from notesmith.listening.names import CARRIERS, DIGITS
from notesmith.listening.sounding import Sound, joined, sound_of

LONGEST = 4
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
    words = hearing.words
    norms = [w.norm for w in words]
    strange = {norm for norm in set(norms) if _is_odd(norm)}
    loose, odd = bytes(norm in LOOSE for norm in norms), bytes(norm in strange for norm in norms)
    for start, end, is_name in _alike(_bones(words), names, trade):
        wanted = is_name or _is_strange(loose, odd, known, start, end)
        if wanted and _may_open(norms[start]) and not _is_idle(words, loose, start, end):
            yield _stretch(words, loose, odd, start, end)


def _bones(words: Sequence[Word]) -> list[str]:
    """The consonants of every word that is spoken; of any other a sign that no name and no word has among its own."""
    bones = {norm: sound_of(norm).bones for norm in {w.norm for w in words}}
    return [bones[w.norm] if _spoken(w) else "." for w in words]


def _alike(bones: list[str], names: Container[str], trade: Container[str]) -> list[tuple[int, int, bool]]:
    """Every row of words that has the consonants of a name (then true) or of a word of the trade, in order."""
    found, rows = [], bones
    for length in range(1, LONGEST + 1):
        alike = [(start, row) for start, row in enumerate(rows) if row in names or row in trade]
        found += [(start, start + length, row in names) for start, row in alike]
        rows = [*map(add, rows, bones[length:])]
    return sorted(found)


def _is_odd(norm: str) -> bool:
    return norm not in LOOSE and norm != "'s" and not is_english(norm)


def _is_strange(loose: bytes, odd: bytes, known: bytes, start: int, end: int) -> bool:
    """Two words at least, none of them known, and strange ones or no filling among them."""
    if end - start < 2 or known[start] or any(known[start:end]):
        return False
    return any(odd[start:end]) or not any(loose[start:end])


def _may_open(norm: str) -> bool:
    """No misprint opens with the tail of a contraction, or with a lone letter other than an article."""
    return norm == "a" or (len(norm) > 1 and norm not in ("'s", "n't"))


def _is_idle(words: Sequence[Word], loose: bytes, start: int, end: int) -> bool:
    return words[end - 1].norm == "'s" or (end - start < 3 and all(loose[start:end]))


def _stretch(words: Sequence[Word], loose: bytes, odd: bytes, start: int, end: int) -> Stretch:
    texts = tuple(w.norm for w in words[start:end])
    edges = loose[start] + (loose[end - 1] if end - start > 1 else 0)
    place = _place(words, start, end)
    return Stretch(start, end, texts, joined(texts), edges, sum(loose[start:end]), sum(odd[start:end]), place)


def _spoken(word: Word) -> bool:
    return bool(word.norm) and word.tag not in PUNCTUATION and (word.norm[0].isalpha() or word.norm == "'s")


def _place(words: Sequence[Word], start: int, end: int) -> Place:
    before = words[start - 1].norm if start else "."
    after = words[end].norm if end < len(words) else "."
    if before == "the" and after in CARRIERS:
        return "carried"
    if before == "the" and after in NAMED:
        return "pointed"
    return "open" if (before in NAMING or before in SIGNS or before == ",") and after in NAMED else "none"
