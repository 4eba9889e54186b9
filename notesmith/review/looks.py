"""What deserves a look first: a pure reading of the notes for signs that they may be wrong."""

from bisect import bisect_right
from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass
from math import exp, log
from typing import TypeAlias

from notesmith.records import Evidenced, Notes, Observation, Repair, Section
from notesmith.review.saying import FIELDS, is_corrected

UNSURE = 0.75
"""A confidence below this is low: it is the chance of being right, so of these more than one in four is wrong."""
LEAST = 0.01
"""The least doubt of a record, and the least trust in it."""
FAR_S, FAR_CHARS = 45.0, 600
"""How long after a sample was last named it is only guessed: seconds, or characters where there are no times."""
WEIGHTS: Mapping[str, float] = {
    "taken back": 2.5,
    "doubted aloud": 0.5,
    "repaired": 0.5,
    "after the reveal": 0.4,
    "rules and listener disagree": 0.3,
    "sample decided by distance": 0.3,
}
"""What each sign adds to the logarithm of the odds that a record is wrong, rounded. Fitted to 3,301 observations of 21
annotated recordings, from which the encoder had learned: half of those that were wrong came in the first quarter. What
was taken back stands in six of them, and mostly in two."""
Namings: TypeAlias = Mapping[str, tuple[list[int], list[float | None]]]


@dataclass(frozen=True)
class Look:
    """A record, why it deserves a look, how much so (from 0 to 1), and whether it has had one."""

    record: str
    reasons: tuple[str, ...]
    weight: float
    done: bool


def looks(notes: Notes) -> tuple[Look, ...]:
    """Every record of the notes, those that deserve a look most first; of equals the earlier.

    A record that a reviewer changed, added or confirmed is done.
    """
    namings = _namings(notes)
    records = [record for name in FIELDS.values() for record in getattr(notes, name)]
    looked_at = [(_look(record, namings), record.span) for record in records]
    return tuple(look for look, _ in sorted(looked_at, key=lambda pair: (-pair[0].weight, pair[1], pair[0].record)))


def progress(notes: Notes) -> tuple[int, int]:
    """How many of the records with a reason to look at them were looked at, and how many those are."""
    due = [look for look in looks(notes) if look.reasons or look.done]
    return sum(look.done for look in due), len(due)


def unsureness(notes: Notes) -> float:
    """How much is left to look at, by which recordings are queued: the weights of what is not done, a record."""
    left = looks(notes)
    return round(sum(look.weight for look in left if not look.done) / max(1, len(left)), 4)


def _look(record: Evidenced, namings: Namings) -> Look:
    signs = tuple(_signs(record, namings))
    unsure = ("low confidence",) if record.confidence < UNSURE else ()
    sure = min(max(record.confidence, LEAST), 1 - LEAST)
    odds = log((1 - sure) / sure) + sum(WEIGHTS[sign] for sign in signs)
    done = is_corrected(record) and record.confidence == 1
    return Look(record.id, (*unsure, *signs), round(1 / (1 + exp(-odds)), 4), done)


def _signs(record: Evidenced, namings: Namings) -> Iterator[str]:
    rules = [why.rule for why in record.why]
    tests: dict[str, Callable[[], bool]] = {
        "rules and listener disagree": lambda: _disagree(record, rules),
        "taken back": lambda: any(rule.startswith(("taken back", "the cups were swapped")) for rule in rules),
        "sample decided by distance": lambda: _is_far(record, rules, namings),
        "repaired": lambda: isinstance(record, Repair),
        "doubted aloud": lambda: isinstance(record, Observation) and record.presence == "uncertain",
        "after the reveal": lambda: isinstance(record, Observation) and record.after_reveal,
    }
    return (sign for sign, test in tests.items() if test())


def _disagree(record: Evidenced, rules: list[str]) -> bool:
    """Whether the encoder points to another sample than the rules, or denies what no rule found denied."""
    if any(rule.startswith("sample pointed to") for rule in rules):
        return True
    by_encoder = any(rule.startswith("encoder") for rule in rules)
    decided = [rule for rule in rules if not rule.startswith(("encoder", "sample", "intensity", "correction"))]
    return by_encoder and isinstance(record, Observation) and record.presence != "present" and not decided


def _is_far(record: Evidenced, rules: list[str], namings: Namings) -> bool:
    """Whether the sample was not named where this was said, nor for a while before."""
    if not isinstance(record, Observation) or record.sample is None or "sample named before" not in rules:
        return False
    places, times = namings.get(record.sample, ([], []))
    last = bisect_right(places, record.span[0]) - 1
    if last < 0:
        return True
    then = times[last]
    if then is None or record.start is None:
        return record.span[0] - places[last] > FAR_CHARS
    return record.start - then > FAR_S


def _namings(notes: Notes) -> Namings:
    """Where each sample was named, as far as notes tell: in an observation's own clause, or at a section of its own."""
    named: dict[str, list[tuple[int, float | None]]] = {}
    placed: tuple[Observation | Section, ...] = (*notes.observations, *notes.sections)
    for record in placed:
        here = isinstance(record, Section) or any(why.rule == "sample named here" for why in record.why)
        if record.sample is not None and here:
            named.setdefault(record.sample, []).append((record.span[0], record.start))
    for places in named.values():
        places.sort(key=lambda place: place[0])
    return {sample: ([p for p, _ in places], [t for _, t in places]) for sample, places in named.items()}
