"""The plain signs by which a candidate is weighed as a fact: what stands around it, how and where it is said."""

from bisect import bisect_left
from collections import Counter
from collections.abc import Iterator, Sequence

from notesmith.listening.hearing import Hearing
from notesmith.listening.measures import Measure
from notesmith.listening.pricing import CHAT, COUNTED, FIXING, PRICING, STATED
from notesmith.listening.telling import (
    AGED,
    BREWED,
    BREWING,
    CHATTED,
    LEFT,
    NO_ALCOHOL,
    PACKS,
    PERSONS,
    SCORES,
    STEEPED,
    STORY,
    TURNS,
)
from notesmith.listening.vocabulary import NOUNS

GROUPS: dict[str, frozenset[str]] = {
    "brewing": BREWING, "brewed": BREWED, "steeped": STEEPED, "left": LEFT, "packs": PACKS, "pricing": PRICING,
    "spending": CHAT, "fixing": FIXING, "story": STORY, "chat": CHATTED, "persons": PERSONS, "aging": AGED,
    "other percent": NO_ALCOHOL, "scores": SCORES, "turning": TURNS,
    "strength": frozenset("alcohol abv proof volume".split()),
    "reading": frozenset("says said reads written label card leaflet website bag back sticker listed".split()),
    "making": frozenset("dried aged fermented rested made from grown picked barrel cask pressed roasted".split()),
    "others": frozenset("people usually normally always every most other like guess thought could would".split()),
    "not": frozenset("not n't never no".split()),
    "all": frozenset("each both all same every everything".split()),
}  # fmt: skip
NAMES = list(GROUPS)
WORDS = frozenset().union(*GROUPS.values())
GROUPS_OF = {word: [k for k, name in enumerate(NAMES) if word in GROUPS[name]] for word in WORDS}
WIDE = ("brewing", "packs", "pricing", "making", "reading", "strength")
STEPS = ((1, "below one"), (2, "one"), (6, "a few"), (21, "to twenty"), (100, "to a hundred"), (1000, "hundreds"))
NEAR, FAR, SHORT = 6, 18, 150  # words


class Scene:
    """What is asked for every candidate of one talk, looked up once."""

    def __init__(self, hearing: Hearing, measures: Sequence[Measure]) -> None:
        self.words, self.measures, self.hearing = hearing.words, measures, hearing
        self.norms = hearing.meant
        self.starts = [m.start for m in measures]
        self.perceived = [p.description.start for p in hearing.perceptions]
        self.named = [m.end for m in hearing.mentions if len(m.samples) == 1 and m.kind in ("name", "ordinal")]
        self.revealed = [r.start for r in hearing.reveals]
        self.said: Counter[str] = Counter()

    def signs(self, start: int, end: int) -> Iterator[str]:
        """The signs that any candidate from `start` to `end` has."""
        close = self.norms[max(0, start - 5) : end + 5]
        wide = frozenset(self.norms[max(0, start - 20) : end + 14])
        yield from (NAMES[k] for k in sorted({k for norm in close for k in GROUPS_OF.get(norm, ())}))
        yield from (f"{name} about" for name in WIDE if not wide.isdisjoint(GROUPS[name]))
        yield from self._before(start)
        yield from self._after(end)
        yield from self._place(start)
        if self.hearing.clauses[self.hearing.clause_of[start]].asks:
            yield "asked"

    def _before(self, start: int) -> Iterator[str]:
        before = [n for n in self.norms[max(0, start - 6) : start] if n and n not in ("uh", "um")]
        last = before[-1] if before else "."
        spoken = [n for n in before if n != ","]
        yield f"after {last}" if last in LAST else "after a word"
        if not STATED.isdisjoint(spoken[-2:]):
            yield "stated"
        if not SUBJECTS.isdisjoint(spoken[-4:]):
            yield "someone does"

    def _after(self, end: int) -> Iterator[str]:
        after = next((w for w in self.words[end : end + 3] if w.norm and w.norm not in ("-", "uh", "um")), None)
        if after is None or after.norm in NEXT:
            yield f"before {after.norm if after else '.'}"
        elif after.norm in COUNTED:
            yield "counts something"
        else:
            yield "before a noun" if after.tag in NOUNS else "before a word"

    def _place(self, start: int) -> Iterator[str]:
        """Where in the talk it stands; a talk too short has no places."""
        if len(self.words) < SHORT:
            return
        yield f"fifth {start * 5 // len(self.words)}"
        yield _distance("perceived", self.perceived, start)
        yield _distance("named", self.named, start)
        yield _distance("revealed", self.revealed, start)
        if not self.perceived or start < self.perceived[0]:
            yield "before the first perception"

    def amount_signs(self, k: int) -> Iterator[str]:
        """The signs of the amount `k`: its own, and the amounts it stands among."""
        m = self.measures[k]
        yield f"unit {m.unit}"
        yield m.dimension
        yield next((name for top, name in STEPS if m.number.plain < top), "thousands")
        yield from (name for there, name in self._shape(m) if there)
        said = f"{m.value} {m.unit}"
        if self.said[said]:
            yield "said before"
        self.said[said] += 1
        for x in (*self.measures[max(0, k - 4) : k], *self.measures[k + 1 : k + 5]):
            gap, side = (m.start - x.end, "after") if x.start < m.start else (x.start - m.end, "before")
            if gap <= FAR:
                yield f"{'close' if gap <= NEAR else 'soon'} {side} {x.dimension}"

    def _shape(self, m: Measure) -> tuple[tuple[bool, str], ...]:
        whole = isinstance(m.value, int)
        return (
            (bool(m.per), "of one"),
            (m.number.high is not None, "range"),
            (len(m.number.parts) == 2, "two parts"),
            (isinstance(m.value, float) and not whole, "fraction"),
            (whole and m.number.plain % 5 == 0, "fives"),
            (m.start > 0 and self.norms[m.start - 1] in (".", ","), "begins"),
            (self.words[m.start].pause > 400, "after a pause"),
            (m.end < len(self.words) and self.words[m.end].pause > 400, "before a pause"),
        )


LAST = frozenset(
    "at for to by about like around 's is was were it's of in from the a with , . ? only just so or and".split()
)
NEXT = frozenset("of for each a per in old at on and , . ? or out off is the".split())
SUBJECTS = frozenset("i he she we they you who i'd i've".split())


def _distance(name: str, places: Sequence[int], at: int) -> str:
    """How far the nearest of the places before it is, in words."""
    k = bisect_left(places, at + 1)
    gap = at - places[k - 1] if k else 999
    far = next((far for reach, far in ((6, "close"), (15, "near"), (40, "about"), (120, "far")) if gap < reach), "not")
    return f"{name} {far}"
