"""Recordings read as rankings, profiles, sips and places in a session."""

from collections import Counter, defaultdict
from collections.abc import Sequence
from dataclasses import dataclass

from notesmith.evidence.sessions import SOMEBODY, Session
from notesmith.records import Observation
from notesmith.sensory.dominance import Sip
from notesmith.sensory.profiles import Spoke, intensity, presence

STRENGTH = {"low": 1.0, None: 2.0, "high": 3.0}
"""Strengths as counted: not there is 0, there without a word of how strong is 2."""
IN_THE_MOUTH = frozenset({"flavour", "mouthfeel", "finish"})


@dataclass(frozen=True)
class Trait:
    """One term of one product: how often it was found and how strong it was, with intervals."""

    product: str
    term: str
    found: Spoke
    strength: Spoke


@dataclass(frozen=True)
class Ranked:
    """Whole rankings of the same products: a row for each taster in each session, the higher the better."""

    products: tuple[str, ...]
    scores: tuple[tuple[float, ...], ...]
    tasters: tuple[str, ...]
    sessions: tuple[Session, ...]


def profiles(sessions: Sequence[Session], least: int = 3) -> list[Trait]:
    """The terms found in at least so many looks at a product; a look is a taster's tasting of one of its cups."""
    looks: Counter[str] = Counter()
    seen: dict[tuple[str, str], dict[tuple[int, str, str], float]] = defaultdict(dict)
    for number, session in enumerate(sessions):
        tasted = {(at.sample, at.taster or SOMEBODY) for at in session.perceived if at.sample}
        looks.update(session.names[sample] for sample, _ in tasted if sample in session.names)
        for at in session.perceived:
            if at.sample in session.names and at.presence != "uncertain":
                look = (number, at.sample, at.taster or SOMEBODY)
                strengths = seen[session.names[at.sample], _term(at)]
                strengths[look] = max(strengths.get(look, 0.0), _strength(at))
    traits = [_trait(product, term, list(at.values()), looks[product]) for (product, term), at in seen.items()]
    kept = (trait for trait in traits if round(trait.found.value * trait.found.looks) >= least)
    return sorted(kept, key=lambda at: (at.product, -at.found.value, at.term))


def rankings(sessions: Sequence[Session]) -> Ranked | None:
    """The rankings of the products most often ranked; None where there are fewer than two, or not of three products."""
    rows: dict[tuple[str, ...], list[tuple[Session, str, tuple[str, ...]]]] = defaultdict(list)
    for session in sessions:
        overall = (at for at in session.notes.preferences if at.scope == "overall" and len(at.over) >= 2)
        for taster, said in session.last_words(overall).items():
            order = [
                session.names.get(at or "", "") for at in (getattr(said, "preferred", None), *getattr(said, "over", ()))
            ]
            if sorted(order) == sorted(set(session.names.values())):
                rows[tuple(sorted(order))].append((session, taster, tuple(order)))
    products, given = max(rows.items(), key=lambda at: (len(at[1]), at[0]), default=((), []))
    if len(given) < 2:
        return None
    scores = tuple(tuple(float(len(products) - order.index(at)) for at in products) for _, _, order in given)
    held = tuple({id(session): session for session, _, _ in given}.values())
    return Ranked(products, scores, tuple(sorted({taster for _, taster, _ in given})), held)


def sips(sessions: Sequence[Session]) -> dict[str, list[Sip]]:
    """The sips of each product: a tasting stretch, with what was first named in the mouth and when."""
    found: dict[str, list[Sip]] = defaultdict(list)
    for session in sessions:
        for section in session.notes.sections:
            if section.kind == "tasting" and section.sample in session.names and section.start is not None:
                named = _named(session, section.sample, section.start, _next_start(session, section.start))
                if len(named) > 1:
                    # A sip lasts from its first word to a breath after its last.
                    times = [at for at, _ in named]
                    end = max(times) + (max(times) - min(times)) / len(times) or max(times) + 1
                    found[session.names[section.sample]].append(Sip(min(times), end, tuple(named)))
    return dict(found)


def terms_by_place(session: Session) -> list[int]:
    """How many terms were found in each sample, in the order of tasting."""
    found = Counter(at.sample for at in session.perceived if at.presence == "present")
    return [found[sample] for sample in session.order]


def _named(session: Session, sample: str, start: float, end: float) -> list[tuple[float, str]]:
    return [
        (at.start, _term(at)) for at in session.perceived
        if at.sample == sample and at.start is not None and start <= at.start < end
        and at.facet in IN_THE_MOUTH and at.presence == "present"
    ]  # fmt: skip


def _next_start(session: Session, start: float) -> float:
    later = [at.start for at in session.notes.sections if at.start is not None and at.start > start]
    return min(later, default=float("inf"))


def _trait(product: str, term: str, strengths: list[float], looks: int) -> Trait:
    return Trait(product, term, presence(sum(at > 0 for at in strengths), looks), intensity(strengths))


def _term(at: Observation) -> str:
    return at.concept or at.term.casefold()


def _strength(at: Observation) -> float:
    return STRENGTH[at.intensity] if at.presence == "present" else 0.0
