"""The best division of a recording into sections, decided over all of it at once.

A section is of one kind and, where something is looked at, smelled or tasted, about one sample or about all. What each
breath speaks for is added up; beginning another section costs, and is possible only where something opens it; none is
shorter than a minimum.
"""

from collections.abc import Sequence
from typing import NamedTuple

import numpy as np
from numpy.typing import NDArray

from notesmith.listening.section_weights import FOLLOWING, KINDS

Floats = NDArray[np.float64]
SAMPLED = ("appearance", "aroma", "tasting")
SHORTEST_MS = 18_000
CHANGE = -5.5  # what beginning another section is worth, in the log odds that signs are weighed in
AGAIN = -3.0  # … another of the same kind, about no other sample
NOT_OPENING = -4.0  # … a recording with anything but an opening
THIS_SAMPLE, OTHER_SAMPLE, UNKNOWN_SAMPLE = 0.4, -0.9, -0.3  # for each breath, by what it is about
ALL_SAMPLES = -0.06
SHARE = 0.6  # of its evidence that a breath counts for: the next one shares its neighbours
NEVER = -1e9


class State(NamedTuple):
    """What a section is: its kind, and its sample where it is about one."""

    kind: str
    sample: str | None


class Stretch(NamedTuple):
    """A section: from its first breath to the first breath of the next."""

    start: int
    end: int
    state: State


def best_sections(
    times: Sequence[int], evidence: Floats, openings: Floats, samples: Sequence[str | None], ids: Sequence[str]
) -> list[Stretch]:
    """The best sections of breaths that begin at `times` (milliseconds; one more for the end of the talk).

    `evidence` has a row a breath and a column a kind; `openings` says how well a section begins with each breath.
    """
    states = [State(kind, None) for kind in KINDS] + [State(kind, s) for kind in SAMPLED for s in ids]
    columns = [list(KINDS).index(state.kind) for state in states]
    worth = SHARE * evidence[:, columns] + _sample_worth(samples, states)
    total = np.vstack([np.zeros(len(states)), worth.cumsum(axis=0)])
    doors = [0, *(j for j in range(1, len(openings)) if openings[j] > 0), len(openings)]
    first = np.array([0.0 if state.kind == "opening" else NOT_OPENING for state in states])
    way = _forward([times[j] for j in doors], total[doors], openings[doors[:-1]], _step_worth(states), first)
    found = _traced(*way, states)
    return [Stretch(doors[s.start], doors[s.end], s.state) for s in found]


def _sample_worth(samples: Sequence[str | None], states: Sequence[State]) -> Floats:
    """For every breath and state, how well its sample fits."""
    fits = {
        sample: [
            (UNKNOWN_SAMPLE if sample is None else THIS_SAMPLE if state.sample == sample else OTHER_SAMPLE)
            if state.sample else (ALL_SAMPLES if state.kind in SAMPLED else 0.0)
            for state in states
        ]
        for sample in set(samples)
    }  # fmt: skip
    return np.array([fits[sample] for sample in samples])


def _step_worth(states: Sequence[State]) -> Floats:
    """What it is worth to go from each state to each other."""

    def worth(a: State, b: State) -> float:
        if a == b:
            return NEVER if a.kind in SAMPLED else CHANGE + AGAIN + FOLLOWING[a.kind].get(b.kind, 0.0)
        return CHANGE + FOLLOWING[a.kind].get(b.kind, 0.0)

    return np.array([[worth(a, b) for b in states] for a in states])


def _forward(
    times: Sequence[int], total: Floats, openings: Floats, step: Floats, first: Floats
) -> tuple[list[NDArray[np.intp]], list[NDArray[np.intp]], Floats]:
    """For every breath and state: where the best section ending there began, and the state before one begun there."""
    count = len(times) - 1
    shortest = min(SHORTEST_MS, times[-1] - times[0])
    began = np.zeros(total.shape[1], dtype=np.intp)
    entered = [first]  # worth of beginning a section, less all that was worth anything before
    best, begins, befores, m = np.full(total.shape[1], NEVER), [began], [began], 0
    for j in range(1, count + 1):
        while m < j and times[j] - times[m] >= shortest:
            better = entered[m] > best
            best, began = np.where(better, entered[m], best), np.where(better, m, began)
            m += 1
        begins.append(began)
        if j < count:
            ways = (best + total[j])[:, None] + step
            befores.append(ways.argmax(axis=0))
            entered.append(ways.max(axis=0) + openings[j] - total[j])
    return begins, befores, best + total[count]


def _traced(
    begins: list[NDArray[np.intp]], befores: list[NDArray[np.intp]], worth: Floats, states: Sequence[State]
) -> list[Stretch]:
    """The sections of the best way, in order."""
    end, at = len(begins) - 1, int(worth.argmax())
    found = []
    while end > 0:
        start = int(begins[end][at])
        found.append(Stretch(start, end, states[at]))
        end, at = start, int(befores[start][at])
    return found[::-1]
