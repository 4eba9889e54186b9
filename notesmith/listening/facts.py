"""What is stated? Amounts with their units, and where, when, of what and how a sample was made."""

from notesmith.listening.amounts import Amount, find_amounts
from notesmith.listening.hearing import Grounds, Hearing, Stated
from notesmith.listening.provenance import find_provenance

METHOD = frozenset(["dose", "water", "temperature", "time"])
ONCE = frozenset(
    ["origin", "cultivar", "process", "harvest", "price", "abv", "net_weight", "age"]
)  # noted once a sample
TELLING = frozenset(["origin", "cultivar", "harvest", "price", "abv", "net_weight", "age", "process"])
NEAR = 45  # words within which facts stand together
SURE = 0.6
PROCESS = 14  # words within which a time or a temperature belongs to the making
REVEALED = 90  # words after a reveal that are still about its sample


def find_facts(hearing: Hearing) -> None:
    """Note every fact with the sample or the preparation it is said of, once a sample."""
    found = sorted([*find_amounts(hearing), *find_provenance(hearing)], key=lambda a: (a.start, a.end))
    found = [a for a in found if a.score >= SURE or a.kind not in TELLING or _in_company(a, found, hearing)]
    made = [a for a in found if a.kind == "process"]
    hearing.facts = []
    seen: set[tuple[str, str, str | None]] = set()
    for amount in found:
        for sample in _samples(hearing, amount, made):
            key = (amount.kind, str(amount.value).lower(), sample)
            if (amount.kind not in ONCE and amount.value != "boiling") or key not in seen:
                seen.add(key)
                hearing.facts.append(_stated(hearing, amount, sample))


def _in_company(a: Amount, found: list[Amount], hearing: Hearing) -> bool:
    """Whether other facts of a product, or its reveal, stand near: a statement of one kind alone may be chat."""
    others = any(o.kind in TELLING and o.value != a.value and abs(o.start - a.start) < NEAR for o in found)
    return others or any(abs(r.start - a.start) < NEAR for r in hearing.reveals)


def _stated(hearing: Hearing, a: Amount, sample: str | None) -> Stated:
    preparation = hearing.topics[hearing.run_of[a.start]].preparation
    return Stated(
        a.start, a.end, a.kind, a.value, a.unit, sample, preparation, a.score, (Grounds(a.rule, a.start, a.end),)
    )


def _samples(hearing: Hearing, a: Amount, made: list[Amount]) -> tuple[str | None, ...]:
    """Those named before it in the same thought; else the topic. Methods hold for all but where one is in hand."""
    clause = hearing.clauses[hearing.clause_of[a.start]]
    before = [m for m in hearing.mentions if clause.start <= m.start < a.start and m.samples]
    if before:
        return before[-1].samples if len(before[-1].samples) == 1 else (None,)
    if a.kind in METHOD and not _of_one(a, made):
        return (None,)
    if a.kind in TELLING and _sealed(hearing, a.start):
        return (None,) if a.kind in ("price", "net_weight") else ()
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
