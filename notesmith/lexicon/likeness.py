"""Which concepts are nearest to words the lexicon lacks: by their spelling and by their sound."""

from typing import NamedTuple

from jellyfish import metaphone
from rapidfuzz import process
from rapidfuzz.distance import OSA

from notesmith.lexicon.index import Lexicon
from notesmith.lexicon.words import pieces

THRESHOLD = 0.82
"""Below this likeness nothing is offered. When it was set, the 1,053 misprints of descriptors that our labels list were
offered their own concept first 365 times, another 91 times, and else none; lower, more of the offers are wrong."""

OFFERED = 3
# One letter makes another word of a short one (`pile`, `pale`): any difference counts for half a letter more.
DIFFERENT = 0.5


class Near(NamedTuple):
    """A concept, its label that is nearest, and how near that is, from 0 to 1."""

    concept: str
    label: str
    score: float


class Likenesses:
    """The descriptors of a lexicon, ready to be asked which are nearest to some words."""

    def __init__(self, lexicon: Lexicon) -> None:
        self._labels = lexicon.terms("descriptor")
        self._spellings = [_letters(label.text) for label in self._labels]

    def nearest(self, words: str) -> tuple[Near, ...]:
        """At most three concepts, the nearest first; none where the words are like no label (see THRESHOLD)."""
        best: dict[str, Near] = {}
        for text, concept in self._alike(words):
            near = Near(concept, text, likeness(words, text))
            if near.score >= max(THRESHOLD, best[concept].score if concept in best else 0):
                best[concept] = near
        return tuple(sorted(best.values(), key=lambda near: (-near.score, near.concept))[:OFFERED])

    def _alike(self, words: str) -> list[tuple[str, str]]:
        """The labels, each with its concept, whose spelling is so alike that their sound may yet bring them near."""
        least = 2 * THRESHOLD - 1
        found = process.extract(
            _letters(words), self._spellings, scorer=OSA.normalized_similarity, score_cutoff=least, limit=None
        )
        return [(self._labels[place].text, self._labels[place].concept) for _, _, place in found]


def likeness(a: str, b: str) -> float:
    """How alike two phrases are, from 0 to 1: half their spelling, half their sound, whatever spaces part them.

    Of as many words each, they are no more alike than the two words that are least so: soup is no soil. Spelling is
    compared by the letters changed (optimal string alignment), sound by those of Metaphone codes (L. Philips, 1990).

    >>> round(likeness("pepery", "peppery"), 2), likeness("Flower pot", "flowerpot"), likeness("7", "")
    (0.89, 1.0, 0.0)
    >>> likeness("mushroom soil", "mushroom soup") < 0.5
    True
    """
    whole = _same(_letters(a), _letters(b))
    ours, theirs = pieces(a), pieces(b)
    if len(ours) != len(theirs):
        return whole
    return min([whole, *(_same(_letters(one), _letters(other)) for one, other in zip(ours, theirs, strict=True))])


def _same(a: str, b: str) -> float:
    if not (a and b):
        return 0.0
    changed = OSA.distance(a, b)
    spelling = 1 - (changed + DIFFERENT * bool(changed)) / max(len(a), len(b))
    return (max(0.0, spelling) + OSA.normalized_similarity(metaphone(a), metaphone(b))) / 2


def _letters(text: str) -> str:
    return "".join(filter(str.isalpha, "".join(pieces(text))))
