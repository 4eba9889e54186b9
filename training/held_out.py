"""Answers for recordings that the encoder was not fitted to, kept small enough to travel."""

from collections.abc import Sequence
from pathlib import Path

import numpy as np
from numpy.typing import NDArray

from training.fit import Recipe, answer, fit
from training.layout import Layout
from training.model import pretrained
from training.rows import Rows
from training.split import folds

MARKING = ("description", "fact", "comparison", "preference")
UNMARKED = 0.9  # where all marking heads are this sure that a word is outside, no pointer is asked there
Packed = dict[str, NDArray[np.uint8] | NDArray[np.float16]]


def answer_held_out(
    rows: Sequence[Rows], layout: Layout, fold: int, recipe: Recipe, base: Path | None, device: str
) -> Packed:
    """Fit to all folds but one and answer for that one; keys are `recording|bare|head`."""
    of = folds()
    encoder = fit(pretrained(base, layout), [r for r in rows if of[r.kind] != fold], recipe, device)
    packed: Packed = {}
    for r in rows:
        if of[r.kind] == fold:
            said = answer(encoder, r, recipe, device)
            packed |= {f"{r.name}|{int(r.bare)}|{name}": value for name, value in _pack(said, layout).items()}
    return packed


def _pack(said: dict[str, NDArray[np.float32]], layout: Layout) -> Packed:
    """Probabilities in 255 steps; pointers in half precision, and only where something is marked."""
    marked = np.min([said[name][:, 0] for name in MARKING], axis=0) < UNMARKED
    return {
        name: np.where(marked[:, None], values, 0).astype(np.float16)
        if name in layout.pointers
        else (values * 255).round().astype(np.uint8)
        for name, values in said.items()
    }
