"""Windows of pieces: as the fitting sees them, shuffled and altered a little; and as they are read to answer."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from random import Random

import numpy as np
from numpy.typing import NDArray

from training.layout import UNTOLD, Layout
from training.rows import Ints, Rows

WINDOW, STRIDE = 256, 224  # pieces read at once; pieces from one window to the next when answering
OVERLAP, SHORTEST = 8, 24  # pieces that two windows of the fitting share; a shorter window teaches nothing
PAD, MASK = 0, 103  # of the vocabulary
MISTAKEN = 0.25  # of the windows: what was perceived last is decided in use, not given


@dataclass(frozen=True)
class Chance:
    """Where the alterations come from, and how many there are."""

    order: Random
    numbers: np.random.Generator
    hidden_piece: float
    hidden_sight: float


@dataclass(frozen=True)
class Batch:
    """Windows stacked: (windows, pieces, …); `samples` has one number a window."""

    pieces: Ints
    sights: Ints
    there: Ints
    parts: Ints
    targets: Ints
    samples: Ints


def batches(rows: Sequence[Rows], layout: Layout, chance: Chance, size: int) -> Iterator[Batch]:
    """All windows of one variant of every recording."""
    variants: dict[str, list[Rows]] = {}
    for r in rows:
        variants.setdefault(r.name, []).append(r)
    windows = [window for same in variants.values() for window in _cut(same, chance)]
    chance.order.shuffle(windows)
    for at in range(0, len(windows), size):
        yield _stacked(windows[at : at + size], layout, chance)


def _cut(same: Sequence[Rows], chance: Chance) -> Iterator[tuple[Rows, slice]]:
    """The windows of one recording, from a place that differs from epoch to epoch."""
    r = chance.order.choice(same)
    start = -chance.order.randrange(WINDOW)
    while start < len(r.pieces):
        cut = slice(max(0, start), min(len(r.pieces), start + WINDOW))
        if cut.stop - cut.start > SHORTEST:
            yield r, cut
        start += WINDOW - OVERLAP


def _stacked(windows: Sequence[tuple[Rows, slice]], layout: Layout, chance: Chance) -> Batch:
    batch = _empty(len(windows), max(cut.stop - cut.start for _, cut in windows), layout)
    for k, (r, cut) in enumerate(windows):
        size, numbers = cut.stop - cut.start, chance.numbers
        batch.pieces[k, :size] = np.where(numbers.random(size) < chance.hidden_piece, MASK, r.pieces[cut])
        batch.sights[k, :size] = r.sights[cut] * (numbers.random(len(layout.sights)) >= chance.hidden_sight)
        batch.parts[k, :size] = _mistaken(r.parts[cut], layout, numbers)
        batch.targets[k, :size], batch.there[k, :size], batch.samples[k] = r.targets[cut], 1, r.samples
    return batch


def _empty(windows: int, longest: int, layout: Layout) -> Batch:
    shape = windows, longest
    return Batch(
        np.full(shape, PAD, dtype=np.int64), np.zeros((*shape, len(layout.sights)), dtype=np.int64),
        np.zeros(shape, dtype=np.int64), np.zeros((*shape, len(layout.parts)), dtype=np.int64),
        np.full((*shape, len(layout.targets)), UNTOLD, dtype=np.int64), np.zeros(windows, dtype=np.int64),
    )  # fmt: skip


def _mistaken(parts: Ints, layout: Layout, numbers: np.random.Generator) -> Ints:
    """Now and then what was perceived last is taken from the rules, or not known."""
    luck = numbers.random()
    if luck > MISTAKEN:
        return parts
    changed, last = parts.copy(), layout.parts.index("perceived last")
    changed[:, last:] = 0
    if luck < MISTAKEN / 2:
        changed[:, last] = parts[:, layout.parts.index("topic")]
    return changed


def blinded(r: Rows, layout: Layout) -> Rows:
    """A recording without anything that the rules have judged: only who is named, and pauses."""
    seen = np.array([name in layout.alone for name in layout.sights])
    cast = np.array([name in layout.unjudged for name in layout.parts])
    return Rows(r.name, r.kind, r.bare, r.pieces, r.first, r.sights * seen, r.parts * cast, r.targets, r.samples)


def answering(r: Rows, layout: Layout, together: int = 32) -> Iterator[tuple[Batch, list[NDArray[np.intp]]]]:
    """The windows to answer for, some at once, and for each the pieces whose answers count: those from its middle."""
    starts = list(range(0, max(1, len(r.pieces) - (WINDOW - STRIDE)), STRIDE))
    margin = (WINDOW - STRIDE) // 2
    for at in range(0, len(starts), together):
        group = starts[at : at + together]
        batch, counted = _empty(len(group), min(WINDOW, len(r.pieces)), layout), []
        for k, start in enumerate(group):
            cut = slice(start, start + WINDOW)
            size = len(r.pieces[cut])
            batch.pieces[k, :size], batch.sights[k, :size], batch.there[k, :size] = r.pieces[cut], r.sights[cut], 1
            last = len(r.pieces) - start if start == starts[-1] else margin + STRIDE
            counted.append(np.arange(margin if start else 0, last))
        yield batch, counted
