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
Places = NDArray[np.intp]
SAMPLED = ("appearance", "aroma", "tasting")
SHORTEST_MS = 18_000
CHANGE = -5.5  # what beginning another section is worth, in the log odds that signs are weighed in
AGAIN = -3.0  # … another of the same kind, about no other sample
NOT_OPENING = -4.0  # … a recording with anything but an opening
THIS_SAMPLE, OTHER_SAMPLE, UNKNOWN_SAMPLE = 0.4, -0.9, -0.3  # for each breath, by what it is about
ALL_SAMPLES = -0.06
SHARE = 0.6  # of its evidence that a breath counts for: the next one shares its neighbours
NEVER = -1e9
MILLION = 1e6


class State(NamedTuple):
    """What a section is: its kind, and its sample where it is about one."""

    kind: str
    sample: str | None


class Ways(NamedTuple):
    """For every door and state: where the best section ending there began, the state before one begun there; worths.

    `worth` is what the best way to the end of the recording is worth, for each state it can end in.
    """

    begins: Places
    befores: Places
    worth: Floats


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
    worth = _exact(SHARE * evidence[:, columns] + _sample_worth(samples, states))
    total = np.vstack([np.zeros(len(states)), worth.cumsum(axis=0)])
    doors = [0, *(j for j in range(1, len(openings)) if openings[j] > 0), len(openings)]
    first = _exact(np.array([0.0 if state.kind == "opening" else NOT_OPENING for state in states]))
    steps, opened = _exact(_step_worth(states)), _exact(openings[doors[:-1]])
    found = _traced(_forward([times[j] for j in doors], total[doors], opened, steps, first), states)
    return [Stretch(doors[s.start], doors[s.end], s.state) for s in found]


def _exact(worth: Floats) -> Floats:
    """Worths in whole millionths, whose sums are exact.

    The last bit of a matrix product is not the same on every machine, and must not decide between equal divisions.
    """
    return np.rint(worth * MILLION)


def _sample_worth(samples: Sequence[str | None], states: Sequence[State]) -> Floats:
    """For every breath and state, how well its sample fits."""
    kinds = list(dict.fromkeys(samples))
    fits = np.array([[_fit(sample, state) for state in states] for sample in kinds])
    rows = {sample: row for row, sample in enumerate(kinds)}
    worth: Floats = fits[[rows[sample] for sample in samples]]
    return worth


def _fit(sample: str | None, state: State) -> float:
    if not state.sample:
        return ALL_SAMPLES if state.kind in SAMPLED else 0.0
    if sample is None:
        return UNKNOWN_SAMPLE
    return THIS_SAMPLE if state.sample == sample else OTHER_SAMPLE


def _step_worth(states: Sequence[State]) -> Floats:
    """What it is worth to go from each state to each other."""

    def worth(a: State, b: State) -> float:
        if a == b:
            return NEVER if a.kind in SAMPLED else CHANGE + AGAIN + FOLLOWING[a.kind].get(b.kind, 0.0)
        return CHANGE + FOLLOWING[a.kind].get(b.kind, 0.0)

    return np.array([[worth(a, b) for b in states] for a in states])


def _forward(times: Sequence[int], total: Floats, openings: Floats, step: Floats, first: Floats) -> Ways:
    """The best ways to the end, over all doors; doors nearer together than a section do not wait for one another."""
    count, size = len(times) - 1, len(first)
    ripe = _ripe(times)
    stops = np.minimum(np.searchsorted(ripe, np.arange(count), "right"), count).tolist()
    best, entered = np.full((count + 1, size), NEVER * MILLION), np.tile(first, (count, 1))  # best: of the first doors
    befores = np.zeros((count, size), dtype=np.intp)
    best[1], start = first, 1
    while start < count:
        here = slice(start, stops[start])
        ways = (best[ripe[here]] + total[here]).T[:, :, None] + step[:, None, :]
        befores[here] = ways.argmax(axis=0)
        entered[here] = ways.max(axis=0) + openings[here, None] - total[here]
        best[start + 1 : here.stop + 1] = np.maximum(np.maximum.accumulate(entered[here]), best[start])
        start = here.stop
    return Ways(_began(entered, best)[ripe], befores, best[ripe[count]] + total[count])


def _began(entered: Floats, best: Floats) -> Places:
    """For every number of first doors, the door among them at which the best section began, the first where equal."""
    better = np.where(entered > best[:-1], np.arange(len(entered))[:, None], 0)
    return np.vstack([np.zeros_like(better[:1]), np.maximum.accumulate(better)])


def _ripe(times: Sequence[int]) -> Places:
    """For every door, how many doors lie so far before it that a section can lie between."""
    shortest = min(SHORTEST_MS, times[-1] - times[0])
    return np.minimum(np.searchsorted(times, np.array(times) - shortest, "right"), np.arange(len(times)))


def _traced(ways: Ways, states: Sequence[State]) -> list[Stretch]:
    """The sections of the best way, in order."""
    end, at = len(ways.begins) - 1, int(ways.worth.argmax())
    found = []
    while end > 0:
        start = int(ways.begins[end, at])
        found.append(Stretch(start, end, states[at]))
        end, at = start, int(ways.befores[start, at])
    return found[::-1]
