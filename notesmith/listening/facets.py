"""On which side of the sample? The words at hand decide first, then what the concept can be said of, then the stage."""

from notesmith.listening.hearing import Clause, Description, Hearing, Stage
from notesmith.listening.vocabulary import CONTAINERS
from notesmith.records import Facet

FINISH_SIGNS = frozenset(
    "aftertaste finish finishes finishing lingers lingering afterwards after swallow swallowed end ending leaves "
    "leaving".split()
)
AROMA_SIGNS = frozenset(
    "smell smells smelled smelling smelt nose aroma sniff sniffing whiff scent perfume nosing".split()
)
FLAVOUR_SIGNS = frozenset("taste tastes tasted tasting palate mouth sip sipping flavour flavor tongue drinking".split())
LOOK_SIGNS = frozenset("look looks looking colour color see".split())
SIGNS = FINISH_SIGNS | AROMA_SIGNS | FLAVOUR_SIGNS | LOOK_SIGNS
STAGE_FACET: dict[Stage | None, Facet] = {
    "appearance": "appearance", "aroma": "aroma", "tasting": "flavour", "finish": "finish", None: "flavour",
}


def read_facet(hearing: Hearing, description: Description, clause: Clause, stage: Stage | None) -> Facet:
    """The facet of one description."""
    if description.head >= 0:
        carried = CONTAINERS[hearing.words[description.head].norm]
        if carried:
            return carried
    possible = _possible(hearing, description)
    said = _said_facet(hearing, description, clause)
    if said and (said in possible or said == "finish" or not possible):
        return said
    staged = STAGE_FACET[stage]
    if not possible:
        return staged
    if staged == "flavour" and possible[0] in ("mouthfeel", "finish", "overall", "appearance"):
        return possible[0] if possible[0] != "appearance" or "flavour" not in possible else "flavour"
    return staged if staged in possible else possible[0]


def _possible(hearing: Hearing, description: Description) -> tuple[Facet, ...]:
    return hearing.lexicon.concepts[description.label.concept].facets if description.label else ()


def _said_facet(hearing: Hearing, description: Description, clause: Clause) -> Facet | None:
    """The facet that the clause itself names, the words nearest to the description first."""
    norms = hearing.meant
    if SIGNS.isdisjoint(norms[clause.start : clause.end]):
        return None
    near = [*range(description.start - 1, clause.start - 1, -1), *range(description.end, clause.end)]
    telling = [i for i in near if norms[i] in SIGNS]
    for i in sorted(telling, key=lambda k: min(abs(k - description.start), abs(k - description.end))):
        norm = norms[i]
        if norm in AROMA_SIGNS:
            return "aroma"
        if norm in FINISH_SIGNS and not (norm == "after" and norms[i - 1] == "day"):
            return "finish"
        if norm in FLAVOUR_SIGNS:
            return "flavour"
        if norm in LOOK_SIGNS:
            return "appearance"
    return None
