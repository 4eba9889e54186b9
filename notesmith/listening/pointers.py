"""Reading the encoder's answers: which stretches it marks, and which sample it points to.

What was perceived last is the best witness of what is perceived next, and it may itself be in doubt.
"""

from bisect import bisect_left
from collections.abc import Iterator, Sequence
from typing import NamedTuple

import numpy as np
from numpy.typing import NDArray

from notesmith.listening.encoder import Answers
from notesmith.listening.hearing import Amount, Hearing
from notesmith.listening.shown import FOLLOWING, SINCE, SLOTS, Cast, following_parts, since_parts
from notesmith.listening.turning import Turning
from notesmith.listening.turning_weights import WEIGHTS

Floats = NDArray[np.float64]
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

    def __init__(self, hearing: Hearing, answers: Answers, cast: Cast) -> None:
        self.ids: list[str | None] = [None, *(s.id for s in hearing.sheet.samples[:SLOTS])]
        self.answers = answers
        self.cast, self.turning = cast, Turning(hearing, cast)
        lasts = np.arange(len(self.ids), dtype=np.int16)
        played = following_parts(lasts, len(self.ids) - 1)
        self.following = [(lasts[slots > 0], slots[slots > 0]) for slots in played]  # who plays them, after whom
        self.decided: list[tuple[int, int, int]] = []  # where something was perceived, and of which slot

    def told(self, pointer: str, found: Found | Amount, since: int) -> Floats:
        """The logarithms of how likely every slot is: a row for every slot perceived last, before the word `since`."""
        worth = mean_of(self.answers[pointer], found).astype(np.float64)
        sums = np.zeros(len(self.ids))
        sums[0] = worth[0]
        cast = [*self.cast.parts[found.start, :SINCE].tolist(), *since_parts(self.cast, found.start, since)]
        for slot, value in zip(cast[1:], worth[1:FOLLOWING].tolist(), strict=True):
            if slot:
                sums[int(slot)] += value
        table = np.tile(sums, (len(self.ids), 1))
        for part, (lasts, slots) in enumerate(self.following, FOLLOWING):
            table[lasts, slots] += worth[part]
        return table - _log_sum(table)

    def worths(self, pointer: str, found: Found | Amount, since: int) -> Floats:
        """The same; of what was perceived, weighed with what speaks for a turn."""
        told = self.told(pointer, found, since)
        if pointer != "sample":
            return told
        table = WEIGHTS["encoder"] * told + self.turning.table(found.start, found.end, since)
        return table - _log_sum(table)

    def decide(self, found: Sequence[Found]) -> list[tuple[str | None, float]]:
        """The sample of every stretch, and how surely; which one was perceived last is carried along as a belief."""
        belief, since, said = np.eye(1, len(self.ids))[0], 0, []
        for f in found:
            table = np.exp(self.worths("sample", f, since))
            likely = belief @ table
            belief = belief * table[:, 0] + np.where(np.arange(len(likely)) > 0, likely, 0.0)
            slot, since = int(likely.argmax()), f.end
            self.decided.append((f.start, f.end, int(belief.argmax())))
            said.append((self.ids[slot], float(likely[slot])))
        return said

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
        k = bisect_left(self.decided, (found.start, 0, 0))
        _, since, last = self.decided[k - 1] if k else (0, 0, 0)
        row: Floats = self.worths(pointer, found, since)[last]
        return row


def _log_sum(table: Floats) -> Floats:
    top = table.max(axis=1, keepdims=True)
    sums: Floats = top + np.log(np.exp(table - top).sum(axis=1, keepdims=True))
    return sums
