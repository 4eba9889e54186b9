"""Examples as rows of word pieces in one file, so that the fitting needs neither captions nor rules."""

from collections.abc import Sequence
from dataclasses import dataclass
from pathlib import Path
from typing import TYPE_CHECKING

import numpy as np
from numpy.typing import NDArray

from training.layout import UNTOLD, Layout

if TYPE_CHECKING:
    from notesmith.listening.pieces import Pieces
    from training.examples import Example

Ints = NDArray[np.int64]


@dataclass(frozen=True)
class Rows:
    """One recording, a row a piece. Only a word's first piece carries its targets."""

    name: str
    kind: str  # the kind of product, by which recordings are held out
    bare: bool
    pieces: Ints
    first: NDArray[np.bool_]  # whether a piece begins a word
    sights: Ints
    parts: Ints
    targets: Ints
    samples: int  # how many there are to point at


def rows_of(example: "Example", pieces: "Pieces", kind: str, *, bare: bool) -> Rows:
    """Cut an example's words into pieces."""
    ids, of = pieces.cut(example.words)
    words = np.array(of, dtype=np.int64)
    first = np.ones(len(words), dtype=bool)
    first[1:] = words[1:] != words[:-1]
    targets = np.where(first[:, None], example.targets[words], UNTOLD).astype(np.int64)
    sights, parts = example.sights[words].astype(np.int64), example.parts[words].astype(np.int64)
    return Rows(example.name, kind, bare, np.array(ids), first, sights, parts, targets, example.samples)


def save(rows: Sequence[Rows], layout: Layout, path: Path) -> None:
    """Write all recordings into one compressed file."""
    np.savez_compressed(
        path,
        layout=np.array(layout.written()),
        names=np.array([r.name for r in rows]), kinds=np.array([r.kind for r in rows]),
        bare=np.array([r.bare for r in rows]), lengths=np.array([len(r.pieces) for r in rows]),
        pieces=np.concatenate([r.pieces for r in rows]).astype(np.uint16),
        first=np.concatenate([r.first for r in rows]),
        sights=np.concatenate([r.sights for r in rows]).astype(np.uint8),
        parts=np.concatenate([r.parts for r in rows]).astype(np.uint8), samples=np.array([r.samples for r in rows]),
        targets=np.concatenate([r.targets for r in rows]).astype(np.int8),
    )  # fmt: skip


def load(path: Path) -> tuple[list[Rows], Layout]:
    """Read what `save` wrote."""
    with np.load(path) as f:
        data = {name: f[name] for name in f.files}
    ends = data["lengths"].cumsum()
    found = []
    for k, (end, length) in enumerate(zip(ends, data["lengths"], strict=True)):
        cut = slice(end - length, end)
        found.append(
            Rows(
                str(data["names"][k]), str(data["kinds"][k]), bool(data["bare"][k]),
                data["pieces"][cut].astype(np.int64), data["first"][cut],
                data["sights"][cut].astype(np.int64), data["parts"][cut].astype(np.int64),
                data["targets"][cut].astype(np.int64), int(data["samples"][k]),
            )
        )  # fmt: skip
    return found, Layout.read(str(data["layout"]))
