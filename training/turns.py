"""Fit what speaks for staying with a sample and for turning to another, beside what the encoder says held out.

Each stretch that an annotation describes is a choice among the samples, given which was perceived last: a conditional
logit (McFadden 1974), ridged.
"""

import json
from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass

import numpy as np
import torch
from numpy.typing import NDArray
from torch import Tensor
from torch.nn import functional

from notesmith.listening.pointers import Found, Pointing
from notesmith.listening.turning import Turning, turns
from notesmith.listening.turning_weights import WEIGHTS
from notesmith.listening.ways import Sign, marked

RIDGE, STEPS, BESIDE = 2e-4, 60, -1e4  # BESIDE: the worth of a slot that there is not
ENCODER, LEAST = "encoder", 0.05
HEAD = '"""What {}: written by `python -m training {}`."""'


@dataclass(frozen=True)
class Choice:
    """One stretch: what speaks for each slot, what the encoder says, and which it was."""

    signs: list[list[str]]  # a list a slot
    encoder: NDArray[np.float64]
    chosen: int


def choices(stretches: Sequence[tuple[int, int, int]], turning: Turning, pointing: Pointing) -> Iterator[Choice]:
    """The choices of one recording; `stretches` are (start, end, slot) in order."""
    last = since = 0
    for start, end, slot in stretches:
        if pointing.answers["sample"][start].any():  # the encoder marks it, so that it will be asked
            marks = tuple(turning.marks(start, end, since))
            signs = by_slot(turning.standing(start, end, since), turns(last, turning.size), marks, turning.size)
            yield Choice(signs, pointing.told("sample", Found(start, end, 1.0), since)[last], slot)
            last, since = slot or last, end


def by_slot(standing: Iterable[Sign], ways: Iterable[Sign], marks: tuple[str, ...], size: int) -> list[list[str]]:
    """All that speaks for each slot."""
    signs: list[list[str]] = [[] for _ in range(size + 1)]
    for name, slot in standing:
        signs[slot].append(name)
    for way, slot in ways:
        signs[slot] += marked(way, marks)
    return signs


def fit(made: Sequence[Choice]) -> dict[str, float]:
    """The worth of every sign, and of the encoder's answer by the name `encoder`."""
    names = [ENCODER, *sorted({name for c in made for signs in c.signs for name in signs})]
    signs, beside, chosen = _tensors(made, {name: k for k, name in enumerate(names)})
    worth = torch.zeros(len(names), requires_grad=True)
    optimiser = torch.optim.LBFGS([worth], max_iter=STEPS, line_search_fn="strong_wolfe")

    def closure() -> Tensor:
        optimiser.zero_grad()
        loss = functional.cross_entropy(signs @ worth + beside, chosen) + RIDGE * worth.square().sum()
        loss.backward()
        return loss

    optimiser.step(closure)
    return dict(zip(names, worth.tolist(), strict=True))


def _tensors(made: Sequence[Choice], columns: Mapping[str, int]) -> tuple[Tensor, Tensor, Tensor]:
    slots = max(len(c.signs) for c in made)
    signs = torch.zeros(len(made), slots, len(columns))
    beside = torch.full((len(made), slots), BESIDE)
    for k, c in enumerate(made):
        beside[k, : len(c.signs)] = 0.0
        signs[k, : len(c.signs), columns[ENCODER]] = torch.from_numpy(c.encoder).float()
        for slot, names in enumerate(c.signs):
            for name in names:
                signs[k, slot, columns[name]] += 1
    return signs, beside, torch.tensor([c.chosen for c in made])


def use_weights(worths: Mapping[str, float]) -> None:
    """Let the program decide by these weights from now on: so that none was fitted on what it is measured by."""
    WEIGHTS.clear()
    WEIGHTS.update(worths)


def written(worths: Mapping[str, float], what: str, step: str) -> str:
    """The weights as the program reads them, without those that decide nothing."""
    lines = [f"    {json.dumps(name, ensure_ascii=False)}: {worth:.2f},\n" for name, worth in worths.items()]
    telling = [line for line, worth in zip(lines, worths.values(), strict=True) if abs(worth) >= LEAST]
    return f"{HEAD.format(what, step)}\n\nWEIGHTS: dict[str, float] = {{\n{''.join(telling)}}}\n"
