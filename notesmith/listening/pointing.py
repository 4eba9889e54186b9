"""What in a run of words points to one sample rather than another, and what says that the talk moves on."""

from collections.abc import Iterator
from dataclasses import dataclass, field
from itertools import pairwise

from notesmith.listening.hearing import Hearing, Mention, Word
from notesmith.listening.names import CARRIERS
from notesmith.listening.vocabulary import BE

ASIDE_BEFORE = frozenset("than unlike versus vs like as beside against between after before had got was".split())
BESIDE = frozenset("compared similar close closer next different comparing same up nearer".split())
VERBS = BE | frozenset(
    "has had have does did goes went gets got tastes tasted smells smelled looks looked seems felt feels comes came "
    "starts wins won would 'd".split()
)
OPENERS = frozenset("okay ok right so now alright and then well anyway".split())
POINTED = {"next": "the next one", "this": "this one", "that": "that one"}
LEADS = frozenset("the and but so now okay then".split())
MOVING = ("next", "back", "first", "last", "other", "try")
MOVES = frozenset(MOVING)
PAST_BE = frozenset("was were had did".split())
PREPOSITIONS = frozenset("of in on for about to at by into onto".split())
LONG_PAUSE_MS = 2500
MEMORY = frozenset(
    "ever once remember remembers used ago childhood grew grandmother grandma granny uncle aunt yesterday".split()
)
PAST_VERBS = frozenset("was were tasted smelled smelt".split())
TOLD = frozenset("it that they which she he those these".split())
HERE = frozenset("before there than still again hot cold first i both now".split())
PRESENT = frozenset("is 's are 're has tastes smells get getting gets goes comes now".split())
NOW = PRESENT | HERE
THEN = MEMORY | PAST_VERBS


@dataclass(slots=True)
class Signs:
    """The signs of one run: for each sample what points to it; what says the talk moves on; a sample glanced at."""

    pulls: dict[str, list[str]] = field(default_factory=dict)
    changes: list[str] = field(default_factory=list)
    other: bool = False
    glance: str | None = None
    outside: str = ""  # why the run is about no sample of the session


def is_aside(words: list[Word], mention: Mention) -> bool:
    """Whether the sample is only what another is set beside (`than the left`, `compared to Monday`)."""
    i = mention.start - 1
    while i >= 0 and words[i].norm in ("the", "a", "that", "number", "cup", "of", "both", "did", "in", "on"):
        i -= 1
    if i < 0:
        return False
    if words[i].norm in ("to", "from", "with"):
        return i > 0 and words[i - 1].norm in BESIDE
    if words[i].norm in ("had", "got", "was"):
        return words[i + 1].norm in ("in", "on")
    return words[i].norm in ASIDE_BEFORE


def heads(words: list[Word], mention: Mention) -> bool:
    """Whether a sample is named at the head of a thought: not inside a phrase, nor as what a verb is about."""
    end = mention.end + (mention.end + 1 < len(words) and words[mention.end].norm in CARRIERS)
    after = words[end].norm if end < len(words) else "."
    i = mention.start - 1
    while i >= 0 and words[i].norm in ("the", "number", "cup"):
        i -= 1
    before = words[i] if i >= 0 else None
    if is_aside(words, mention):
        return False
    if after in VERBS or before is None or before.norm in ".,?!;:":
        return True
    return before.tag not in ("IN", "TO", "DT", "PRP$", "CD", "MD") and not before.tag.startswith("VB")


def read_signs(hearing: Hearing, run: tuple[int, int], mentions: list[Mention], *, restarts: bool) -> Signs:
    """Gather the signs of one run."""
    words, norms = hearing.words, hearing.meant[run[0] : run[1]]
    changes = list(_changes(words, run, norms, mentions, restarts=restarts))
    if not mentions:
        return Signs({}, changes, outside=_outside(norms))
    signs = Signs()
    single = [m for m in mentions if len(m.samples) == 1]
    beside = [m for m in single if is_aside(words, m)]
    named = [m for m in single if m not in beside]
    distinct = list(dict.fromkeys(m.samples[0] for m in named))
    if len(distinct) == 1 and heads(words, named[0]):
        signs.glance = distinct[0]
    if signs.glance and words[run[0]].norm in ("whereas", "while", "unlike"):
        return signs
    for m in named:
        ways = ["among several"] if len(distinct) > 1 else _ways(words, run, m)
        signs.pulls.setdefault(m.samples[0], []).extend(ways)
    if len(distinct) > 1:
        signs.pulls[distinct[-1]].append("last of several")
    for m in beside:
        signs.pulls.setdefault(m.samples[0], []).append("set beside")
    if any(m.crowded for m in named):
        signs.pulls = {hearing.sheet.samples[0].id: ["introduced together"]}
    others = (m for m in mentions if m.kind == "other")
    signs.other = len(hearing.sheet.samples) == 2 and not distinct and not all(is_aside(words, m) for m in others)
    signs.changes = changes
    signs.outside = _outside(norms) if not distinct else ""
    return signs


def _ways(words: list[Word], run: tuple[int, int], m: Mention) -> list[str]:
    """How a sample is named: how surely, and where in its run."""
    before = _word_before(words, run, m)
    after = words[m.end].norm if m.end < run[1] else ""
    places = (
        ("named alone", run[1] - run[0] <= 5 or (not before and after in (".", ",", ":", "", "?"))),
        ("subject of the past", after in PAST_BE),
        ("subject", after in VERBS),
        ("predicate of the past", before in BE & PAST_BE),
        ("predicate", before in BE),
        ("after a preposition", before in PREPOSITIONS),
        ("named first", not before),
    )
    place = next((place for place, holds in places if holds), "named in passing")
    return [f"{m.kind} {'surely' if m.score >= 1 else 'perhaps'}", place]


def _word_before(words: list[Word], run: tuple[int, int], m: Mention) -> str:
    """The word of the run that leads up to a name, `the` passed over; empty where the run begins with the name."""
    i = m.start - 1
    if i > run[0] and words[i].norm == "the":
        i -= 1
    elif i == run[0] and words[i].norm in LEADS:
        return ""
    return words[i].norm if i >= run[0] else ""


def _changes(
    words: list[Word], run: tuple[int, int], norms: list[str], mentions: list[Mention], *, restarts: bool
) -> Iterator[str]:
    """What says that the talk moves on to another sample."""
    first, before = words[run[0]], words[run[0] - 1]
    if mentions:
        kinds = {m.kind for m in mentions}
        yield from (way for kind, way in POINTED.items() if kind in kinds)
    if not MOVES.isdisjoint(norms):
        yield from (f"moving word {word}" for word in MOVING if word in norms)
    if first.norm in OPENERS:
        yield "opening word"
    if before.speaker != first.speaker:
        yield "another speaker"
    if first.pause > LONG_PAUSE_MS:
        yield "long pause"
    if restarts:
        yield "looking or smelling again"


def _outside(norms: list[str]) -> str:
    """What says that a run is about something outside the session: `it was like …`, said of another day's cup."""
    if THEN.isdisjoint(norms) or not NOW.isdisjoint(norms):
        return ""
    if not MEMORY.isdisjoint(norms):
        return "memory"
    return "past" if any(a in TOLD and b in PAST_VERBS for a, b in pairwise(norms)) else ""
