"""What is stated? Amounts with their units, and where, when, of what and how a sample was made."""

from bisect import bisect_left
from collections import Counter
from collections.abc import Iterator
from math import exp
from operator import attrgetter

from notesmith.listening.amounts import all_measures, amounts_of
from notesmith.listening.fact_signs import SHORT, Scene
from notesmith.listening.fact_weights import START, WEIGHTS
from notesmith.listening.hearing import Amount, Grounds, Hearing, Stated
from notesmith.listening.provenance import provenance_of
from notesmith.listening.whose import Namings

METHOD = frozenset(["dose", "water", "temperature", "time"])
ONCE = frozenset(
    ["origin", "cultivar", "process", "harvest", "price", "abv", "net_weight", "age"]
)  # noted once a sample
TELLING = frozenset(["origin", "cultivar", "harvest", "price", "abv", "net_weight", "age", "process"])
REACH = 40  # words within which facts keep each other company
NEAR = 45  # words within which facts stand together
ENOUGH = 0.3  # a fact missed weighs more than one too many
PROCESS = 14  # words within which a time or a temperature belongs to the making
REVEALED = 90  # words after a reveal that are still about its sample


def find_facts(hearing: Hearing) -> None:
    """Note every fact with the sample or the preparation it is said of, once a sample.

    A talk too short to be weighed is read by the plain rules alone.
    """
    hearing.amounts = list(_weighed(hearing, candidates(hearing)))
    likely = [a for a in hearing.amounts if a.score >= ENOUGH]
    found = sorted(_likely(likely), key=lambda a: (a.start, a.end))
    made = [a for a in found if a.kind == "process"]
    namings = Namings(hearing)
    hearing.facts = []
    seen: set[tuple[str, str, str | None]] = set()
    for amount in found:
        for sample in samples_of(hearing, amount, made, namings):
            key = (amount.kind, str(amount.value).lower(), sample)
            if (amount.kind not in ONCE and amount.value != "boiling") or key not in seen:
                seen.add(key)
                hearing.facts.append(stated(hearing, amount, sample))


def _weighed(hearing: Hearing, possible: list[Amount]) -> Iterator[Amount]:
    """Every candidate with how likely it states a fact."""
    company = Company(possible)
    short = len(hearing.words) < SHORT
    for a in possible:
        score = 0.6 * a.told if short else likelihood(a, company.signs(a))
        yield Amount(a.start, a.end, a.kind, a.value, a.unit, a.rule, a.signs, a.told, score)


def candidates(hearing: Hearing) -> list[Amount]:
    """Everything that may state a fact, with the signs to weigh it by."""
    scene = Scene(hearing, all_measures(hearing))
    return [*amounts_of(hearing, scene), *provenance_of(hearing, scene)]


class Company:
    """The facts that plain rules tell: where one is stated, others are too."""

    def __init__(self, found: list[Amount]) -> None:
        self.told = sorted({(a.start, a.kind) for a in found if a.told})
        self.near: dict[int, tuple[Counter[str], int]] = {}

    def signs(self, a: Amount) -> tuple[str, str, str]:
        """How many facts of the same kind, of the method and of the product are told near a candidate."""
        if a.start not in self.near:
            self.near[a.start] = self._near(a.start)
        kinds, all_method = self.near[a.start]
        own = kinds[a.kind]
        method = all_method - (own if a.kind in METHOD else 0)
        rest = kinds.total() - own - method
        return f"own company {_few(own)}", f"method company {_few(method)}", f"company {_few(rest)}"

    def _near(self, at: int) -> tuple[Counter[str], int]:
        """How many facts of each kind are told around word `at`, and how many of the method."""
        around = self.told[bisect_left(self.told, (at - REACH, "")) : bisect_left(self.told, (at + REACH, ""))]
        kinds = Counter[str](kind for start, kind in around if start != at)
        return kinds, sum([kinds[kind] for kind in METHOD])


def _few(count: int) -> int:
    return min(count, 7) // 2


def _likely(weighed: list[Amount]) -> list[Amount]:
    """The candidates that the signs speak for; of one stretch, the kind they speak for most."""
    best: dict[int, Amount] = {}
    for a in weighed:
        if a.start not in best or a.score > best[a.start].score:
            best[a.start] = a
    return list(best.values())


def likelihood(a: Amount, company: tuple[str, ...]) -> float:
    """How likely a candidate in that company states the fact, from 0 to 1: its kind's weights weigh its signs."""
    weights = WEIGHTS[a.kind]
    return 1 / (1 + exp(-START[a.kind] - sum([weights.get(sign, 0.0) for sign in (*a.signs, *company)])))


def stated(hearing: Hearing, a: Amount, sample: str | None) -> Stated:
    """The fact that an amount states of a sample."""
    preparation = hearing.topics[hearing.run_of[a.start]].preparation
    return Stated(
        a.start, a.end, a.kind, a.value, a.unit, sample, preparation, a.score, (Grounds(a.rule, a.start, a.end),)
    )


def samples_of(hearing: Hearing, a: Amount, made: list[Amount], namings: Namings) -> tuple[str | None, ...]:
    """Those named before it in the same thought; else the topic. Methods hold for all but where one is in hand."""
    clause = hearing.clauses[hearing.clause_of[a.start]]
    first = bisect_left(hearing.mentions, clause.start, key=attrgetter("start"))
    stop = bisect_left(hearing.mentions, a.start, key=attrgetter("start"))
    before = [m for m in hearing.mentions[first:stop] if m.samples]
    if before:
        return before[-1].samples if len(before[-1].samples) == 1 else (None,)
    if a.kind in METHOD and not _of_one(a, made):
        return (None,)
    if a.kind in TELLING and _sealed(hearing, a.start):
        return (None,) if a.kind in ("price", "net_weight") else ()
    if named := namings.just_before(a.start):
        return (named,)
    return _just_revealed(hearing, a.start) or (_topic(hearing, a.start),)


def _sealed(hearing: Hearing, at: int) -> bool:
    """Whether it is not yet known which sample is which, so that nothing can be stated of one."""
    first = min((r.start for r in hearing.reveals), default=0)
    return hearing.sheet.blind and at < first


def _of_one(a: Amount, made: list[Amount]) -> bool:
    """Whether an amount of method belongs to how one sample was made."""
    return any(abs(p.start - a.start) < PROCESS for p in made)


def _topic(hearing: Hearing, at: int) -> str | None:
    """The sample talked of; a fact in the past tense (`it was nine pounds`) is still about it."""
    k = hearing.run_of[at]
    while k > 0 and hearing.topics[k].rule.startswith("outside") and at - hearing.runs[k][0] < NEAR:
        k -= 1
    return hearing.topics[k].sample


def _just_revealed(hearing: Hearing, at: int) -> tuple[str, ...]:
    """The samples whose identity was made known shortly before, if no other has been named since."""
    near = [r for r in hearing.reveals if r.start <= at < r.start + REVEALED]
    if not near or any(near[-1].end <= m.start < at and m.samples for m in hearing.mentions):
        return ()
    return tuple(r.sample for r in near if r.start == near[-1].start)
