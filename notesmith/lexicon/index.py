"""The matching index: from spoken words to concepts."""

from collections.abc import Iterable, Mapping, Sequence
from functools import cache, cached_property
from pathlib import Path
from types import MappingProxyType

from notesmith.collection import collection_put_off
from notesmith.lexicon.folders import own_domains, read_folder
from notesmith.lexicon.merge import Key, Layers, derived, merged
from notesmith.lexicon.model import Concept, Hit, Label, Sort
from notesmith.lexicon.words import pieces

ONE_WORD = (1,)


class Lexicon:
    """Concepts, their labels, and a fast way to find the labels in a talk."""

    def __init__(self, layers: Layers) -> None:
        self.concepts: Mapping[str, Concept] = MappingProxyType(layers.concepts)
        self.misheard: Mapping[Key, Label] = MappingProxyType(layers.misheard)
        self._listed = layers.labels
        self._by_concept = _by_concept((*layers.labels.values(), *layers.misheard.values()))
        self._forms: dict[Key, Label] = {**layers.labels, **derived(layers)}
        self._lengths = _lengths_by_first_word(self._forms)

    @classmethod
    def load(cls, *user_folders: Path) -> "Lexicon":
        """Our lexicon with the users' folders laid over it, later ones on top; kept for the life of the process.

        Raises LexiconError, naming file and line, where the files do not fit together.
        """
        return _load(user_folders)

    @classmethod
    def read(cls, *folders: Path) -> "Lexicon":
        """A lexicon of these folders alone, the first ranking highest."""
        return cls(merged([domain for folder in folders for domain in read_folder(folder)], ()))

    def match(self, words: Sequence[str]) -> list[Hit]:
        """The labels among the words: the longest at each place, from left to right, never overlapping.

        `words` are tokens; case, accents, hyphens (inside a word or as tokens of their own) and white-space
        tokens make no difference. A label never ends inside a word. Misheard labels are not matched.
        """
        parts, owners = _split(words)
        hits, taken = [], 0
        for place in [k for k, part in enumerate(parts) if part in self._lengths]:
            found = self._longest(parts, owners, place) if place >= taken else None
            if found:
                length, label = found
                taken = place + length
                hits.append(Hit(owners[place], owners[taken - 1] + 1, label))
        return hits

    def is_outside(self, word: str) -> bool:
        """Whether the word is part of no label, so that what stands on its two sides is matched apart."""
        parts = pieces(word)
        return bool(parts) and self._parts.isdisjoint(parts)

    @cached_property
    def _parts(self) -> frozenset[str]:
        return frozenset(part for key in self._forms for part in key)

    def look_up(self, text: str) -> Label | None:
        """The label these words are, or None; misheard labels are not looked up.

        >>> Lexicon(Layers()).look_up("") is None
        True
        """
        return self._forms.get(pieces(text)) if text else None

    def labels(self, concept_id: str) -> tuple[Label, ...]:
        """The labels listed for a concept: the preferred one first, then synonyms, then misheard ones."""
        return self._by_concept.get(concept_id, ())

    def terms(self, sort: Sort) -> tuple[Label, ...]:
        """Every label listed for concepts of one sort, misheard ones left out."""
        return tuple(label for label in self._listed.values() if self.concepts[label.concept].sort == sort)

    def ancestors(self, concept_id: str) -> tuple[str, ...]:
        """The broader concepts, nearest first; it ends at a top, at an unknown concept or where a circle closes."""
        line: list[str] = []
        concept = self.concepts.get(concept_id)
        while concept and concept.broader and concept.broader not in (concept_id, *line):
            line.append(concept.broader)
            concept = self.concepts.get(concept.broader)
        return tuple(line)

    def is_a(self, concept_id: str, ancestor: str) -> bool:
        """Whether one concept is another, or a kind of it."""
        return concept_id == ancestor or ancestor in self.ancestors(concept_id)

    def _longest(self, parts: Sequence[str], owners: Sequence[int], place: int) -> tuple[int, Label] | None:
        lengths = self._lengths[parts[place]]
        if place + 1 < len(parts) and parts[place + 1] not in self._parts:
            if lengths[-1] > 1:
                return None
            lengths = ONE_WORD
        if place and owners[place] == owners[place - 1]:
            return None
        for length in lengths:
            label = self._forms.get(tuple(parts[place : place + length]))
            if label and _ends_a_word(owners, place + length):
                return length, label
        return None


def _ends_a_word(owners: Sequence[int], end: int) -> bool:
    """Whether the piece before `end` is there and the last of its word."""
    return end == len(owners) or (end < len(owners) and owners[end] != owners[end - 1])


@cache
def _load(user_folders: tuple[Path, ...]) -> Lexicon:
    with collection_put_off():
        return Lexicon(merged(own_domains(), [domain for folder in user_folders for domain in read_folder(folder)]))


def _split(words: Sequence[str]) -> tuple[list[str], list[int]]:
    """The comparable pieces of the words, and for each the place of the word it comes from."""
    cut = {word: pieces(word) for word in set(words)}
    parts = [part for word in words for part in cut[word]]
    owners = [owner for owner, word in enumerate(words) for _ in cut[word]]
    return parts, owners


def _lengths_by_first_word(forms: Iterable[Key]) -> dict[str, tuple[int, ...]]:
    """For each word that opens a label, the lengths of the labels it opens, longest first."""
    bits: dict[str, int] = {}
    for key in forms:
        bits[key[0]] = bits.get(key[0], 0) | 1 << len(key)
    lengths = {
        value: tuple(n for n in range(value.bit_length(), 0, -1) if value >> n & 1) for value in set(bits.values())
    }
    return {first: lengths[value] for first, value in bits.items()}


def _by_concept(labels: Sequence[Label]) -> dict[str, tuple[Label, ...]]:
    order = ("preferred", "synonym", "misheard")
    found: dict[str, list[Label]] = {}
    for label in sorted(labels, key=lambda label: order.index(label.kind)):
        found.setdefault(label.concept, []).append(label)
    return {concept_id: tuple(labels) for concept_id, labels in found.items()}
