"""What speaks for staying with the sample that was perceived last, and what for turning to another.

Only what was said since then speaks for a turn: what was said before has had its say.
"""

from bisect import bisect_right
from collections.abc import Iterator

import numpy as np
from numpy.typing import NDArray

from notesmith.listening.hearing import Hearing
from notesmith.listening.shown import PARTS, SINCE, Cast, since_parts, slots_of
from notesmith.listening.turning_weights import WEIGHTS
from notesmith.listening.ways import Sign, Ways

GAPS, PAUSES_MS = (3, 8, 16, 32, 64, 128), (500, 1500, 3000)  # words; milliseconds
CUES = (
    "next", "moving on", "okay", "ok", "right", "now", "then", "first", "last", "back", "other", "ooh", "oh", "whereas",
    "pass", "rinse", "so", "and the",
)  # fmt: skip


class Turning:
    """Weighs every sample that a stretch of words may be about against every one perceived last."""

    def __init__(self, hearing: Hearing, cast: Cast) -> None:
        self.hearing, self.cast, slots = hearing, cast, slots_of(hearing)
        self.size = len(slots)
        self.ways = Ways(turns, self.size, WEIGHTS)
        self.mentions = hearing.mentions
        self.named = [(m.start, slots.get(m.samples[0], 0)) for m in hearing.mentions if len(m.samples) == 1]
        self.called = [(e.at, slots[e.sample]) for e in cast.echoes if e.kind == "name" and e.sample in slots]

    def table(self, start: int, end: int, since: int) -> NDArray[np.float64]:
        """What each slot is worth for the words from `start` to `end`; a row for every slot perceived last."""
        sums = np.zeros(self.size + 1)
        for name, slot in self.standing(start, end, since):
            sums[slot] += WEIGHTS.get(name, 0.0)
        return sums + self.ways.worth(tuple(self.marks(start, end, since)))

    def standing(self, start: int, end: int, since: int) -> Iterator[Sign]:
        """What speaks for a slot whichever was perceived last."""
        yield "nobody", 0
        parts = [*self.cast.parts[start, :SINCE].tolist(), *map(int, since_parts(self.cast, start, since))]
        yield from ((part, slot) for part, slot in zip(PARTS, parts, strict=False) if slot)
        named = [slot for at, slot in self.named if since <= at <= end and slot]
        if len(set(named)) > 1:
            yield "named first since", named[0]
        called = [slot for at, slot in self.called if since <= at <= end]
        if called:
            yield "called since", called[-1]

    def marks(self, start: int, end: int, since: int) -> Iterator[str]:
        """What makes it likelier or less likely that another sample was turned to."""
        words = self.hearing.words
        yield f"gap {bisect_right(GAPS, start - since)}"
        yield f"pause {bisect_right(PAUSES_MS, max((w.pause for w in words[since : start + 1]), default=0))}"
        text = " ".join(["", *self.hearing.meant[since:start], ""])
        yield from (f"“{cue}”" for cue in CUES if f" {cue} " in text)
        yield from dict.fromkeys(m.kind for m in self.mentions if since <= m.start <= end)


def turns(last: int, size: int) -> Iterator[Sign]:
    """The ways to go on from a slot.

    >>> list(turns(2, 3))
    [('stay', 2), ('turn to the next', 3), ('turn to the one before', 1), ('turn to the first', 1)]
    """
    if not last:
        return
    yield "stay", last
    if last < size:
        yield "turn to the next", last + 1
    if last > 1:
        yield "turn to the one before", last - 1
        yield "turn to the first", 1
    if size == 2:
        yield "turn to the other of two", 3 - last
