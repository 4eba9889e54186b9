"""What was taken back, or said of the wrong cup?

`Sorry, that was the blue one` moves what was just said to the blue one; `I've swapped them, what I called left is
right` turns round everything since the last break; `scratch the honey` leaves the honey uncertain.
"""

from itertools import pairwise

from notesmith.listening.hearing import Clause, Grounds, Hearing, Mention, Perception

MOVES = frozenset([
    ("that", "was"), ("that", "'s"), ("this", "is"), ("that", "is"), ("it", "was"), ("it", "'s"), ("i", "mean"),
])
WITHDRAWS = frozenset("scratch scrub strike cancel withdraw".split())
SWAPS = frozenset("swapped swap switched muddled mixed".split())
SLIPS = frozenset(["sorry", "wrong"])
RECENT_MS = 25_000  # a slip of the tongue is mended at once
BREAK_MS = 5_000  # cups change places while nobody talks


def apply_retractions(hearing: Hearing, *, swaps: bool = True) -> None:
    """Move, turn round or withdraw the perceptions that a later clause corrects; swapped cups only where asked to."""
    for k in hearing.clauses_with(WITHDRAWS | SWAPS | SLIPS):
        clause = hearing.clauses[k]
        norms = hearing.meant[clause.start : clause.end]
        if WITHDRAWS.intersection(norms):
            _withdraw(hearing, clause)
        if SWAPS.intersection(norms) and len(hearing.sheet.samples) > 1:
            if swaps:
                _turn_round(hearing, clause)
        elif SLIPS.intersection(norms):
            _move(hearing, k)


def _named_in(hearing: Hearing, start: int, end: int) -> list[Mention]:
    return [m for m in hearing.mentions if start <= m.start < end and len(m.samples) == 1]


def _move(hearing: Hearing, k: int) -> None:
    """`Sorry, that was the blue one`: what was said in the last seconds of the cup in hand is said of the one named."""
    clause = hearing.clauses[k]
    end = hearing.clauses[min(k + 2, len(hearing.clauses) - 1)].end
    norms = tuple(w.norm for w in hearing.words[clause.start : end])
    corrections = [m for m in _named_in(hearing, clause.start, end) if _corrects(norms, m.start - clause.start)]
    if len({m.samples for m in corrections}) != 1:
        return
    meant = corrections[0].samples[0]
    since = hearing.words[clause.start].ms - RECENT_MS
    recent = [p for p in hearing.perceptions if p.start < clause.start and hearing.words[p.start].ms >= since]
    slipped = _last_stretch(recent)
    if slipped and slipped[-1].sample != meant:
        for perception in slipped:
            perception.sample = meant
            perception.grounds.append(Grounds("taken back: said of the wrong sample", clause.start, corrections[0].end))


def _corrects(norms: tuple[str, ...], at: int) -> bool:
    """Whether a name stands right after words that put another right: `that was …`, `I mean …`."""
    before = [n for n in norms[:at] if n not in ("the", ",", "number", "cup")]
    return tuple(before[-2:]) in MOVES and not {"compared", "than"}.intersection(before)


def _last_stretch(perceptions: list[Perception]) -> list[Perception]:
    """The perceptions at the end that are all of one sample."""
    stretch: list[Perception] = []
    for perception in reversed(perceptions):
        if stretch and perception.sample != stretch[-1].sample:
            break
        stretch.append(perception)
    return stretch[::-1]


def _turn_round(hearing: Hearing, clause: Clause) -> None:
    """Swapped cups: what was said of one since the last break was said of the other."""
    pair = _swapped_pair(hearing, clause)
    if pair is None:
        return
    since = _break_before(hearing, clause.start)
    for perception in hearing.perceptions:
        if since <= perception.start < clause.start and perception.sample in pair:
            perception.sample = pair[1] if perception.sample == pair[0] else pair[0]
            perception.grounds.append(Grounds("the cups were swapped", clause.start, clause.end))


def _swapped_pair(hearing: Hearing, clause: Clause) -> tuple[str, str] | None:
    """The two samples that changed places: those named in `what I called … is …`, or the only two there are."""
    told = tuple(w.norm for w in hearing.words[clause.start : clause.start + 70])
    named = [m.samples[0] for m in _named_in(hearing, clause.start, clause.start + 70)]
    if ("what", "i") in pairwise(told) and {"called", "said"}.intersection(told):
        distinct = list(dict.fromkeys(named))
        return (distinct[0], distinct[1]) if len(distinct) >= 2 else None
    first_person = {"i", "we"}.intersection(w.norm for w in hearing.words[clause.start : clause.end])
    ids = [s.id for s in hearing.sheet.samples]
    return (ids[0], ids[1]) if len(ids) == 2 and first_person and "called" in told else None


def _break_before(hearing: Hearing, at: int) -> int:
    """The last word before `at` that comes after a long silence, at which cups can have been moved."""
    return next((i for i in range(at, 0, -1) if hearing.words[i].pause >= BREAK_MS), 0)


def _withdraw(hearing: Hearing, clause: Clause) -> None:
    """`Scratch the honey`: the word itself is no perception, and what it was said of before is uncertain."""
    withdrawn = [p for p in hearing.perceptions if clause.start <= p.start < clause.end]
    for perception in withdrawn:
        term = hearing.norms(perception.description.start, perception.description.end)
        for earlier in hearing.perceptions:
            same = earlier.start < clause.start and earlier.sample == perception.sample
            if same and hearing.norms(earlier.description.start, earlier.description.end) == term:
                earlier.presence = "uncertain"
                earlier.grounds.append(Grounds("taken back later", clause.start, clause.end))
        perception.presence = "absent"
