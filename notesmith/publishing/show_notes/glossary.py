"""The trade words that the show notes use, in the lexicon's own words."""

from collections.abc import Iterable, Iterator

from notesmith.lexicon.check import common_words
from notesmith.lexicon.model import Concept
from notesmith.publishing.mended import inside_sentence
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
OF_ALL = "sensory"
CALLED = {
    "beer": "beer beers stout stouts porter porters ale ales lager lagers pilsner cider ciders perry perries",
    "cheese": "cheese cheeses", "chocolate": "chocolate chocolates cocoa cacao",
    "coffee": "coffee coffees espresso", "honey": "honey honeys", "oil": "oil oils",
    "spirits": "spirit spirits rum rums whisky whiskies whiskey whiskeys gin gins vodka brandy cognac mezcal tequila",
    "tea": "tea teas oolong oolongs", "wine": "wine wines",
}  # fmt: skip
"""Folders of the lexicon that speak of one trade, and the words of a sheet that call for them."""
VOCABULARIES = {"iso6078": "tea", "gbt14487": "tea", "greentea": "tea", "meilgaard": "beer", "oliveoil": "oil"}
"""Sources of words in the folder for all that are of one trade."""


def glossary(story: Story, told: Iterable[Part]) -> Block | None:
    """Every word of the trade in these parts, each with where it was first said."""
    found: dict[str, tuple[str, tuple[Evidenced, ...]]] = {}
    trades = _trades(story)
    for part in told:
        for word, concept in _trade_words(story, part.text, trades):
            proofs = _first(story, word, part)
            if proofs is not None and (concept not in found or (proofs and not found[concept][1])):
                found[concept] = word, proofs
    lines = [_line(word, proofs, story.lexicon.concepts[concept]) for concept, (word, proofs) in found.items()]
    return block("glossary", "Words of the trade", sorted(lines, key=lambda line: line.label.casefold()), rank=3)


def _trades(story: Story) -> frozenset[str]:
    """The folders of the lexicon that speak of what was tasted, and the one that speaks of tasting anything.

    A word may mean another thing in another trade: washed is a coffee, and a cheese.
    """
    sheet = story.sheet
    named = " ".join((sheet.category, sheet.title, *(sample.product or "" for sample in sheet.samples))).casefold()
    words = {named[start:end] for start, end in story.word_spans(named)}
    called = (folder for folder, listed in CALLED.items() if not words.isdisjoint(listed.split()))
    concepts = (story.lexicon.concepts[hit.label.concept] for hit in story.lexicon.match(named.split()))
    return frozenset({OF_ALL, *called, *(concept.domain for concept in concepts if concept.sort == "product")})


def _trade_words(story: Story, text: str, trades: frozenset[str]) -> Iterator[tuple[str, str]]:
    spans = story.word_spans(text)
    for hit in story.lexicon.match([text[start:end] for start, end in spans]):
        concept = story.lexicon.concepts[hit.label.concept]
        if not hit.label.guarded and _is_trade(concept, trades) and hit.label.text not in common_words():
            yield text[spans[hit.start][0] : spans[hit.end - 1][1]], concept.id


def _is_trade(concept: Concept, trades: frozenset[str]) -> bool:
    common = concept.source == EVERYDAY or concept.id in KNOWN_TO_ALL
    of_one = VOCABULARIES.get(concept.source) or ("tea" if _is_a_look(concept) else concept.domain)
    return {concept.domain, of_one} <= trades and not common and concept.sort not in ("origin", "product")


def _is_a_look(concept: Concept) -> bool:
    """Whether it is how leaf, crumb or cask look, by words of some trade: most of them are of tea."""
    return concept.source == "trade" and "appearance" in concept.facets


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
    part = Part("", proofs, ("said",)) if proofs else Part("", marks=("sheet",))
    return Line(inside_sentence(word), (part,), about=concept.definition)
