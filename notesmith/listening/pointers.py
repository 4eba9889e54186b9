"""Reading the encoder's answers: which stretches it marks, and which sample it points to.

The samples of all perceptions are decided at once, as the likeliest chain over the whole recording.
"""

from bisect import bisect_left
from collections.abc import Iterator, Sequence
from typing import NamedTuple

import numpy as np
from numpy.typing import NDArray

from notesmith.listening.encoder import Answers
from notesmith.listening.hearing import Amount, Hearing
from notesmith.listening.shown import BY_RULES, PARTS, SLOTS, Sights, following_parts

Floats = NDArray[np.float64]
DOUBT, TRUST = 0.5, 3.0  # the rules decide the topic over the whole recording; the encoder sees a few sentences
ALSO = 0.5  # how surely something is said of a second sample too


class Found(NamedTuple):
    """A stretch of words that a head marks, and how surely."""

    start: int
    end: int
    score: float


def stretches(marks: NDArray[np.float32], least: float) -> Iterator[Found]:
    """Stretches of words that are marked (columns: outside, begins, goes on) with at least `least`."""
    inside = 1.0 - marks[:, 0]
    marked = inside >= least
    goes_on = np.concatenate([[False], marked])[: len(marked)]  # whether the word before is marked too
    begins = marked & ((marks[:, 1] >= marks[:, 2]) | ~goes_on)
    for start in np.flatnonzero(begins).tolist():
        ends = np.flatnonzero(~marked[start + 1 :] | begins[start + 1 :])
        end = start + 1 + int(ends[0]) if len(ends) else len(marked)
        yield Found(start, end, float(inside[start:end].mean()))


def mean_of(answers: NDArray[np.float32], found: Found | Amount) -> NDArray[np.float32]:
    """An answer over a stretch."""
    means: NDArray[np.float32] = answers[found.start : found.end].mean(axis=0)
    return means


class Pointing:
    """Reads pointers as samples: every part that a sample plays is worth what the encoder says it is worth there."""

    def __init__(self, hearing: Hearing, answers: Answers, parts: Sights) -> None:
        self.ids: list[str | None] = [None, *(s.id for s in hearing.sheet.samples[:SLOTS])]
        self.answers = answers
        self.parts = parts
        lasts = np.arange(len(self.ids), dtype=np.int16)
        played = following_parts(lasts, len(self.ids) - 1)
        self.following = [(lasts[slots > 0], slots[slots > 0]) for slots in played]  # who plays them, after whom
        self.decided: list[tuple[int, int]] = []  # where something was perceived, and of which slot

    def worths(self, pointer: str, found: Found | Amount) -> tuple[Floats, Floats]:
        """What every slot is worth by the parts that rules cast; and a row for every slot perceived last."""
        worth = mean_of(self.answers[pointer], found).astype(np.float64)
        if pointer == "sample":
            worth *= DOUBT
            worth[PARTS.index("topic")] += TRUST
        sums = np.zeros(len(self.ids))
        sums[0] = worth[0]
        for slot, value in zip(self.parts[found.start, 1:BY_RULES].tolist(), worth[1:BY_RULES].tolist(), strict=True):
            if slot:
                sums[slot] += value
        table = np.tile(sums, (len(self.ids), 1))
        for part, (lasts, slots) in enumerate(self.following, BY_RULES):
            table[lasts, slots] += worth[part]
        return sums, table - _log_sum(table)

    def decide(self, found: Sequence[Found]) -> list[tuple[str | None, float]]:
        """The samples of all stretches at once: the likeliest chain, where each knows the one before it."""
        if not found:
            return []
        steps = [self.worths("sample", f)[1] for f in found]
        total, back = steps[0][0], []
        for step in steps[1:]:
            ways = total[:, None] + step
            ways[0] = total[0] + step[0]
            back.append(ways.argmax(axis=0))
            total = ways.max(axis=0)
        chain = [int(total.argmax())]
        for before in reversed(back):
            chain.append(int(before[chain[-1]]))
        chain.reverse()
        self.decided = [(f.start, slot) for f, slot in zip(found, chain, strict=True)]
        lasts = [0, *chain[:-1]]
        return [
            (self.ids[slot], float(np.exp(step[last, slot])))
            for step, last, slot in zip(steps, lasts, chain, strict=True)
        ]

    def at(self, pointer: str, found: Found | Amount) -> str | None:
        """The sample that a pointer points to over a stretch, given what was perceived last before it."""
        return self.how_surely(pointer, found)[0]

    def how_surely(self, pointer: str, found: Found | Amount) -> tuple[str | None, float]:
        """The sample that a pointer points to, and how surely, from 0 to 1."""
        row = self._row(pointer, found)
        return self.ids[int(row.argmax())], float(np.exp(row.max()))

    def also(self, pointer: str, found: Found | Amount, but: str | None) -> list[str]:
        """The sample it is said of too, if there is one."""
        best, sure = self.how_surely(pointer, found)
        return [best] if best is not None and best != but and sure >= ALSO else []

    def _row(self, pointer: str, found: Found | Amount) -> Floats:
        k = bisect_left(self.decided, (found.start, 0))
        last = self.decided[k - 1][1] if k else 0
        row: Floats = self.worths(pointer, found)[1][last]
        return row


def _log_sum(table: Floats) -> Floats:
    top = table.max(axis=1, keepdims=True)
    sums: Floats = top + np.log(np.exp(table - top).sum(axis=1, keepdims=True))
    return sums
