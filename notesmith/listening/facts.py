"""What is stated? Amounts with their units, and where, when, of what and how a sample was made."""

from notesmith.listening.amounts import Amount, find_amounts
from notesmith.listening.hearing import Grounds, Hearing, Stated
from notesmith.listening.provenance import find_provenance

METHOD = frozenset(["dose", "water", "temperature", "time"])
ONCE = frozenset(["origin", "cultivar", "process", "harvest", "price", "abv", "net_weight", "age"])  # noted once a sample
TELLING = frozenset(["origin", "cultivar", "harvest", "price", "abv", "net_weight", "age", "process"])
NEAR = 45  # words within which facts stand together
SURE = 0.6
REVEALED = 90  # words after a reveal that are still about its sample


def find_facts(hearing: Hearing) -> None:
    """Note every fact with the sample or the preparation it is said of, once a sample."""
    found = sorted([*find_amounts(hearing), *find_provenance(hearing)], key=lambda a: (a.start, a.end))
    found = [a for a in found if a.score >= SURE or a.kind not in TELLING or _in_company(a, found, hearing)]
    hearing.facts = []
    seen: set[tuple[str, str, str | None]] = set()
    for amount in found:
        fact = _stated(hearing, amount)
        key = (fact.kind, str(fact.value).lower(), fact.sample)
        if fact.kind not in ONCE or key not in seen:
            seen.add(key)
            hearing.facts.append(fact)


def _in_company(a: Amount, found: list[Amount], hearing: Hearing) -> bool:
    """Whether other facts of a product, or its reveal, stand near: a statement of one kind alone may be chat."""
    others = any(o.kind in TELLING and o.value != a.value and abs(o.start - a.start) < NEAR for o in found)
    return others or any(abs(r.start - a.start) < NEAR for r in hearing.reveals)


def _stated(hearing: Hearing, a: Amount) -> Stated:
    return Stated(
        a.start, a.end, a.kind, a.value, a.unit, _sample(hearing, a), hearing.topics[hearing.run_of[a.start]].preparation,
        a.score, (Grounds(a.rule, a.start, a.end),),
    )  # fmt: skip


def _sample(hearing: Hearing, a: Amount) -> str | None:
    """The sample named in the same thought; else the topic, but for methods, which hold for all."""
    clause = hearing.clauses[hearing.clause_of[a.start]]
    named = [m for m in hearing.mentions if clause.start <= m.start < clause.end and len(m.samples) == 1]
    before = [m for m in named if m.start < a.start]
    if before or named:
        return (before or named)[-1 if before else 0].samples[0]
    if a.kind in METHOD:
        return None
    return _just_revealed(hearing, a.start) or hearing.topics[hearing.run_of[a.start]].sample


def _just_revealed(hearing: Hearing, at: int) -> str | None:
    """The sample whose identity was made known shortly before, if no other has been named since."""
    reveal = next((r for r in reversed(hearing.reveals) if r.start <= at < r.start + REVEALED), None)
    if not reveal or any(reveal.end <= m.start < at and m.samples for m in hearing.mentions):
        return None
    return reveal.sample
