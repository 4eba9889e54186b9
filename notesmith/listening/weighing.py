"""Is a description a perception at all?

Words like `light`, `honey` or `long` are said in a tasting for many reasons. Each description is weighed by plain
signs: the frame it stands in, how much else is perceived around it, who or what the clause is about. The sum decides.
"""

from functools import lru_cache
from math import exp

from notesmith.lexicon import Label, Lexicon
from notesmith.listening.hearing import Clause, Description, Hearing, Word
from notesmith.listening.vocabulary import BE, GRADERS, NOUNS
from notesmith.listening.weights import START, WEIGHTS

NEAR_MS = 12_000  # perceptions come in clusters; what stands this near counts
FEW, USUAL = 15, 4.0  # a talk with fewer descriptions is too short to tell from their density what it is about
SENSING = frozenset(
    "taste tastes tasting tasted smell smells smelling smelled nose palate sip mouth tongue aftertaste finish flavour "
    "flavor aroma notes note body texture mouthfeel throat colour color".split()
)
GETTING = frozenset("get getting got find finding taste smell detect picking".split())
PAST = frozenset(
    "used remember remembered yesterday ago childhood grew grandmother grandma granny nan mum dad kid".split()
)
OTHERS = frozenset(
    "people they everyone everybody most some usually often always generally never brand brands supermarket".split()
)
DOING = frozenset(
    "buy bought sell sold order ordered add adding put pour cut eat eating ate drank cook cooked make made making "
    "grow grown send sent give gave wear wearing open opened".split()
)

TALK = {"sensing word": SENSING, "past": PAST, "others": OTHERS, "doing": DOING}  # what a clause talks about
PASSED = GRADERS | frozenset("a an the of , um uh".split())
PLACES = {
    **dict.fromkeys((*GETTING, "have", "'ve"), "getting it"),
    **dict.fromkeys("and or & then but".split(), "set beside"),
    "like": "like",
}
TAG_GROUPS = {
    **dict.fromkeys(NOUNS, "noun"), **dict.fromkeys(("JJR", "RBR"), "comparative"),
    "JJ": "adjective", "JJS": "superlative", "RB": "adverb", "VBN": "participle", "VBG": "participle",
}


def weigh(hearing: Hearing) -> list[tuple[str, ...]]:
    """For every description, the signs for and against its being a perception."""
    density = _densities(hearing)
    if len(density) < FEW and _is_tasting(hearing):
        density = [max(USUAL, value) for value in density]
    talk = {name: set(hearing.clauses_with(group)) for name, group in TALK.items()}
    return [
        _signs(hearing, d, value, [name for name, found in talk.items() if hearing.clause_of[d.start] in found])
        for d, value in zip(hearing.descriptions, density, strict=True)
    ]


def _is_tasting(hearing: Hearing) -> bool:
    """Whether a short talk is about tasting at all: senses are spoken of, or a sample is named."""
    return bool(hearing.places(SENSING)) or any(m.kind == "name" for m in hearing.mentions)


def likelihood(signs: tuple[str, ...]) -> float:
    """How likely a description with these signs is a perception, from 0 to 1."""
    return 1 / (1 + exp(-START - sum([WEIGHTS.get(sign, 0.0) for sign in signs])))


def _densities(hearing: Hearing) -> list[float]:
    """How much plain sensory talk surrounds each description, itself left out."""
    times = [hearing.words[d.start].ms for d in hearing.descriptions]
    plain = [_plainness(d) for d in hearing.descriptions]
    densities = [0.0] * len(times)
    for i, ms in enumerate(times):
        own, density = plain[i], densities[i]
        for k in range(i + 1, len(times)):
            apart = abs(times[k] - ms)
            if apart > 3 * NEAR_MS:
                break
            nearness = exp(-apart / NEAR_MS)
            density += plain[k] * nearness
            densities[k] += own * nearness
        densities[i] = density
    return densities


def _plainness(description: Description) -> float:
    if description.label is None:
        return 0.5
    return 0.4 if description.label.guarded else 1.0


def _signs(hearing: Hearing, d: Description, density: float, talk: list[str]) -> tuple[str, ...]:
    """The signs of one description, those of its place first; `talk` says what its clause talks about."""
    clause = hearing.clauses[hearing.clause_of[d.start]]
    return (
        "open" if d.label is None else "guarded" if d.label.guarded else "plain",
        d.rule,
        f"density {min(int(density * 1.5), 12)}",
        _place(hearing.words, clause, d),
        *talk,
        *(["before a carrying word"] if d.head >= 0 else []),
        *_kind_signs(hearing, d),
        *(["question"] if clause.asks else []),
        *(["short clause"] if clause.end - clause.start <= 4 else []),
    )


def _kind_signs(hearing: Hearing, d: Description) -> list[str]:
    """What kind of words they are, and what kind of thing the lexicon says they mean."""
    words = hearing.words
    tag = words[d.end - 1].tag
    group = TAG_GROUPS.get(tag, "verb" if tag.startswith("VB") else "other word")
    signs = [group, f"{min(3, d.end - d.start)} words"]
    if d.label:
        signs += _label_signs(hearing.lexicon, d.label, group)
    if words[d.end - 1].norm in hearing.product_words:
        signs.append("names the product")
    return signs


@lru_cache(maxsize=1 << 12)
def _label_signs(lexicon: Lexicon, label: Label, group: str) -> tuple[str, ...]:
    """What the lexicon says of the words."""
    line = (label.concept, *lexicon.ancestors(label.concept))
    signs = [f"guarded {group}" if label.guarded else f"plain {group}", f"under {line[-1]}"]
    if label.derived:
        signs.append("derived")
    if label.form == "verb":
        signs.append("a verb's label")
    return tuple(signs)


def _place(words: list[Word], clause: Clause, d: Description) -> str:
    """Where in its clause the description stands: after which word, graders and articles passed over."""
    i = d.start - 1
    while i >= clause.start and words[i].norm in PASSED:
        i -= 1
    if i < clause.start:
        return "begins the clause" if d.end < clause.end - 1 else "is the clause"
    if words[i].norm in BE:
        subject = words[i - 1].norm if i > clause.start else ""
        return "it is" if subject in ("it", "that", "this", "there", "one") else "is"
    return PLACES.get(words[i].norm) or _after(words[i].tag)


def _after(tag: str) -> str:
    """The place after a word with this tag."""
    if tag.startswith("VB"):
        return "after a verb"
    if tag in NOUNS:
        return "after a noun"
    return "after a preposition" if tag == "IN" else "elsewhere"
