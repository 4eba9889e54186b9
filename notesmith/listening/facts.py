"""What is stated? Amounts with their units, and where, when, of what and how a sample was made."""

from notesmith.listening.amounts import Amount, find_amounts
from notesmith.listening.hearing import Grounds, Hearing, Stated

METHOD = frozenset(["dose", "water", "temperature", "time"])


def find_facts(hearing: Hearing) -> None:
    """Note every fact with the sample or the preparation it is said of."""
    hearing.facts = [_stated(hearing, a) for a in find_amounts(hearing)]


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
    return None if a.kind in METHOD else hearing.topics[hearing.run_of[a.start]].sample
