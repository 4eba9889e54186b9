"""The trained encoder: reads the talk a window at a time and answers of every word what it is asked.

Its file is checked by its hash and by what its columns mean before it is trusted. Where it is missing or refused the
rules answer alone, and the notes say so.
"""

import hashlib
import json
from collections.abc import Iterator, Mapping
from functools import lru_cache
from pathlib import Path

import numpy as np
import onnxruntime
from numpy.typing import NDArray

from notesmith.listening.hearing import Hearing
from notesmith.listening.pieces import Pieces
from notesmith.listening.shown import PARTS, SIGHTS, Sights
from notesmith.listening.told import POINTERS, WIDTHS

FOLDER = Path(__file__).parent / "model"
WINDOW, STRIDE, TOGETHER = 256, 224, 4  # pieces read at once, from one window to the next; windows in one go
MARGIN = (WINDOW - STRIDE) // 2  # pieces; an answer nearer to a window's edge is taken from the window beside it
Answers = Mapping[str, NDArray[np.float32]]  # a row a word; a head's probabilities, a pointer's worth of every part
Ints = NDArray[np.int64]


class Encoder:
    """The encoder's file, loaded."""

    def __init__(self, folder: Path, threads: int = 0) -> None:  # 0: as many as there are cores
        options = onnxruntime.SessionOptions()
        options.intra_op_num_threads = threads
        options.inter_op_num_threads = 1
        self.session = onnxruntime.InferenceSession(
            str(folder / "encoder.onnx"), options, providers=["CPUExecutionProvider"]
        )
        self.pieces = Pieces.read(folder / "pieces.txt")

    def answer(self, hearing: Hearing, sights: Sights) -> Answers:
        """The answers for every word; a word without a piece of its own (mended into its neighbour) is outside all."""
        ids, of = self.pieces.cut(hearing.meant)
        words = np.array(of, dtype=np.int64)
        widths = [*WIDTHS.values(), *[len(PARTS)] * len(POINTERS)]
        said = np.zeros((len(hearing.words), sum(widths)), dtype=np.float32)
        if len(words):
            pieces = self._read(np.array(ids, dtype=np.int64), sights[words].astype(np.int64))
            first = np.flatnonzero(np.diff(words, prepend=-1))
            said[words[first]] = pieces[first]
        parts = np.split(said, np.cumsum(widths)[:-1], axis=1)
        silent = np.setdiff1d(np.arange(len(said)), words)
        return dict(_named(parts, silent))

    def _read(self, pieces: Ints, sights: Ints) -> NDArray[np.float32]:
        """What the encoder says of every piece, from the middle of the windows; the last window ends with the talk."""
        starts = [*range(0, len(pieces) - WINDOW, STRIDE), max(0, len(pieces) - WINDOW)]
        windows = np.array(starts)[:, None] + np.arange(min(WINDOW, len(pieces)))
        said = []
        for at in range(0, len(starts), TOGETHER):
            group = windows[at : at + TOGETHER]
            said += list(self.session.run(None, {"pieces": pieces[group], "sights": sights[group]})[0])
        counted: NDArray[np.float32] = np.concatenate(
            [
                answers[(MARGIN if start else 0) : end - start]
                for answers, start, end in zip(said, starts, _ends(starts, len(pieces)), strict=True)
            ]
        )
        return counted


def _ends(starts: list[int], size: int) -> list[int]:
    """The piece before which each window's answers stop counting: where those of the next begin to."""
    return [*(start + MARGIN for start in starts[1:]), size]


def _named(parts: list[NDArray[np.float32]], silent: Ints) -> Iterator[tuple[str, NDArray[np.float32]]]:
    """The answers by name: a head's as probabilities (a silent word is surely outside), a pointer's as they are."""
    for name, part in zip((*WIDTHS, *POINTERS), parts, strict=True):
        if name in POINTERS:
            yield name, part
            continue
        powers = np.exp(part - part.max(axis=1, keepdims=True))
        powers /= powers.sum(axis=1, keepdims=True)
        powers[silent] = np.eye(part.shape[1], dtype=np.float32)[0]
        yield name, powers


@lru_cache(maxsize=1)
def load_encoder(folder: Path = FOLDER) -> Encoder | str:
    """The encoder, or why there is none."""
    file, about = folder / "encoder.onnx", folder / "encoder.json"
    if not all(path.exists() for path in (file, about, folder / "pieces.txt")):
        return "the trained encoder is not installed"
    told = json.loads(about.read_text(encoding="utf-8"))
    if told["sha256"] != hashlib.sha256(file.read_bytes()).hexdigest():
        return "the trained encoder's file is not the one that was published"
    layout = told["layout"]
    if (layout["sights"], layout["heads"]) != (SIGHTS, WIDTHS) or (layout["parts"], layout["pointers"]) != (
        list(PARTS), list(POINTERS),
    ):  # fmt: skip
        return "the trained encoder was made for another version of the rules"
    return Encoder(folder)
