"""Attributes of a profile: what is narrower in the lexicon, gathered under what it is a kind of."""

from collections.abc import Iterable
from functools import cache

from notesmith.records import Facet, Observation

FACETS: tuple[Facet, ...] = ("aroma", "flavour", "mouthfeel", "finish")
"""Colour and looks make no profile of a taste."""

ATTRIBUTES = {
    "sweet": "sweet", "acid": "acid", "bitter": "bitter", "salty": "salty", "umami": "umami",
    "astringent": "astringent", "fruity": "fruit", "floral": "flowers", "herbal": "herbs", "vegetal": "vegetable",
    "spicy": "spice", "nutty": "nuts", "cereal": "grain", "baked": "baked", "sweet-things": "confection",
    "dairy": "dairy", "roasted": "roast", "smoky-burnt": "smoke", "woody": "wood", "earthy": "earth",
    "mineral": "mineral", "fermented": "fermented", "savoury-things": "savoury", "animal": "animal", "marine": "sea",
    "chemical": "chemical",
}  # fmt: skip
"""The lexicon's concepts that are a spoke each, in the order in which they go round, and what they are called."""

OPPOSITE = frozenset({"low-acid", "off-dry"})
"""Kinds of an attribute that mean little of it."""


def attribute(seen: Observation) -> str | None:
    """The attribute that an observation speaks of, if any.

    A kind denied says nothing of the attribute: no peach may still be fruit.
    """
    if seen.concept is None or seen.facet not in FACETS or seen.concept in OPPOSITE:
        return None
    if seen.presence == "absent":
        return seen.concept if seen.concept in ATTRIBUTES else None
    return next((kind for kind in _kinds(seen.concept) if kind in ATTRIBUTES), None)


def by_attribute(records: Iterable[Observation]) -> dict[str, list[Observation]]:
    """The observations of each attribute, attributes in the order in which they go round."""
    gathered: dict[str, list[Observation]] = {}
    for seen in records:
        if name := attribute(seen):
            gathered.setdefault(name, []).append(seen)
    return {name: gathered[name] for name in ATTRIBUTES if name in gathered}


@cache
def _kinds(concept: str) -> tuple[str, ...]:
    from notesmith.lexicon import Lexicon

    known = Lexicon.load()
    return (concept, *known.ancestors(concept)) if concept in known.concepts else (concept,)
