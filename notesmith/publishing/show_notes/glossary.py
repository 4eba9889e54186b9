"""The trade words that the show notes use, in the lexicon's own words."""

from collections.abc import Iterable, Iterator

from notesmith.lexicon.check import common_words
from notesmith.lexicon.model import Concept
from notesmith.publishing.show_notes.lines import Block, Line, Part, block
from notesmith.publishing.show_notes.story import Story
from notesmith.records import Evidenced

EVERYDAY = "everyday"
KNOWN_TO_ALL = frozenset(
    "sweet bitter sour salty harsh smooth thick sticky crumbly hard dry moist fizzy foam oily juicy clear colour taste "
    "crunchy gritty grainy powdery tough burning cooling drying warming tingling metallic musty rancid acid rind "
    "opaque chewy springy curled twisted head finish-quality overall-quality character appearance-quality".split()
)
"""Concepts that standards define and nobody needs explained."""
COMMON_FOLDERS = frozenset({"food", "things", "plates"})


def glossary(story: Story, told: Iterable[Part]) -> Block | None:
    """Every word of the trade in these parts, each with where it was first said."""
    found: dict[str, tuple[str, tuple[Evidenced, ...]]] = {}
    for part in told:
        for word, concept in _trade_words(story, part.text):
            proofs = _first(story, word, part)
            if proofs is not None and (concept not in found or (proofs and not found[concept][1])):
                found[concept] = word, proofs
    lines = [_line(word, proofs, story.lexicon.concepts[concept]) for concept, (word, proofs) in found.items()]
    return block("glossary", "Words of the trade", sorted(lines, key=lambda line: line.label.casefold()), rank=3)


def _trade_words(story: Story, text: str) -> Iterator[tuple[str, str]]:
    spans = story.word_spans(text)
    for hit in story.lexicon.match([text[start:end] for start, end in spans]):
        concept = story.lexicon.concepts[hit.label.concept]
        if not hit.label.guarded and _is_trade(concept) and hit.label.text not in common_words():
            yield text[spans[hit.start][0] : spans[hit.end - 1][1]], concept.id


def _is_trade(concept: Concept) -> bool:
    common = concept.source == EVERYDAY or concept.domain in COMMON_FOLDERS or concept.id in KNOWN_TO_ALL
    return not common and concept.sort not in ("origin", "product")


def _first(story: Story, word: str, part: Part) -> tuple[Evidenced, ...] | None:
    """The record that says the word, or the repair that means it; empty where the sheet has it.

    None where the word is ours (`abv`), or stands in a name from the sheet.
    """
    if not part.proofs:
        return ()
    said = [record for record in part.proofs if word.casefold() in record.quote.casefold()]
    mended = [repair for repair in story.notes.repairs if word.casefold() in repair.meant.casefold()]
    around = part.proofs if part.style == "quote" else ()
    return tuple([*said, *mended, *around][:1]) or None


def _line(word: str, proofs: tuple[Evidenced, ...], concept: Concept) -> Line:
    part = Part("said", proofs) if proofs else Part("named", marks=("sheet",))
    return Line(word, (part,), about=concept.definition)
