"""Fit the encoder to rows of annotated recordings, and answer for recordings it was not fitted to."""

import logging
import math
from collections.abc import Sequence
from dataclasses import dataclass
from random import Random

import numpy as np
import torch
from numpy.typing import NDArray
from torch import Tensor
from torch.nn import functional

from training.layout import UNTOLD, Layout
from training.model import Encoder, point, split
from training.rows import Rows
from training.windows import OVERLAP, WINDOW, Batch, Chance, answering, batches, blinded

WEIGHTS = {
    "description": 3.0, "presence": 0.5, "intensity": 0.3, "facet": 0.6, "voice": 0.5, "fact": 2.0, "section": 0.3,
    "boundary": 0.5, "comparison": 1.5, "relation": 0.3, "preference": 0.7, "scope": 0.3, "repair": 1.0,
    "sample": 1.0, "also": 0.2, "stated": 1.2, "stated_also": 0.1, "more": 0.5, "less": 0.5, "preferred": 0.5,
}  # fmt: skip
# How much more a word counts that a head marks than one that it does not: what is rare would be passed over.
RARE = {"description": 1.5, "fact": 2.0, "comparison": 4.0, "preference": 3.0, "repair": 4.0, "boundary": 6.0}
WARMING = 0.06  # of all steps


@dataclass(frozen=True)
class Recipe:
    """How the fitting is done."""

    epochs: int = 45
    batch: int = 16
    rate: float = 3e-4
    head_rate: float = 1e-3
    last: float = 0.3  # the share of the epochs whose weights are averaged; to this share the rate falls, and stays
    hidden_piece: float = 0.08  # how often a piece is hidden, so that no single word decides
    hidden_sight: float = 0.1  # how often a sight is hidden, so that the rules are not merely repeated
    alone: bool = False  # whether the encoder is to do without what the rules have judged
    seed: int = 7


def fit(encoder: Encoder, rows: Sequence[Rows], recipe: Recipe, device: str) -> Encoder:
    """Fit the encoder to all windows of the recordings; in each epoch to one variant of every recording."""
    order = Random(recipe.seed)  # noqa: S311 - the same every time; no secret hangs on it
    chance = Chance(order, np.random.default_rng(recipe.seed), recipe.hidden_piece, recipe.hidden_sight)
    torch.manual_seed(recipe.seed)
    encoder.to(device).train()
    seen = [blinded(r, encoder.layout) for r in rows] if recipe.alone else rows
    steps = recipe.epochs * math.ceil(sum(len(r.pieces) for r in rows) / 2 / (WINDOW - OVERLAP) / recipe.batch + 1)
    optimiser = _optimiser(encoder, recipe, device)
    schedule = torch.optim.lr_scheduler.LambdaLR(
        optimiser, lambda step: min(1.0, step / (WARMING * steps)) * max(recipe.last, 1 - step / steps)
    )
    averaged = torch.optim.swa_utils.AveragedModel(encoder)  # surer than the last weights (Izmailov et al. 2018)
    for epoch in range(recipe.epochs):
        for batch in batches(seen, encoder.layout, chance, recipe.batch):
            loss = _loss(encoder, batch, device)
            optimiser.zero_grad(set_to_none=True)
            loss.backward()
            torch.nn.utils.clip_grad_norm_(encoder.parameters(), 1.0)
            optimiser.step()
            schedule.step()
        if epoch >= recipe.epochs * (1 - recipe.last):
            averaged.update_parameters(encoder)
        logging.info("epoch %d of %d: loss %.2f", epoch + 1, recipe.epochs, loss.item())
    best: Encoder = averaged.module
    return best.eval()


def _optimiser(encoder: Encoder, recipe: Recipe, device: str) -> torch.optim.Optimizer:
    """The answers, which know nothing yet, learn faster than what has been read before."""
    heads = [p for n, p in encoder.named_parameters() if n.startswith("answers")]
    body = [p for n, p in encoder.named_parameters() if not n.startswith("answers")]
    groups = [{"params": body, "lr": recipe.rate}, {"params": heads, "lr": recipe.head_rate}]
    return torch.optim.AdamW(groups, weight_decay=0.01, fused=device == "cuda")


def _loss(encoder: Encoder, batch: Batch, device: str) -> Tensor:
    """The weighed sum of every head's cross entropy over the words it is asked of."""
    answers = _answers(encoder, batch, device)
    parts, samples, targets = (torch.from_numpy(x).to(device) for x in (batch.parts, batch.samples, batch.targets))
    losses = []
    for k, (name, answer) in enumerate(split(answers, encoder.layout).items()):
        asked = targets[:, :, k].reshape(-1)
        said = point(answer, parts, samples) if name in encoder.layout.pointers else answer
        said = said.reshape(-1, said.shape[-1])
        loss = functional.cross_entropy(said, asked, _rarity(name, said), ignore_index=UNTOLD, reduction="sum")
        losses.append(WEIGHTS[name] * loss / (asked != UNTOLD).sum().clamp(min=1))
    return torch.stack(losses).sum()


def _rarity(name: str, said: Tensor) -> Tensor | None:
    if name not in RARE:
        return None
    weight = torch.full((said.shape[-1],), RARE[name], device=said.device)
    weight[0] = 1.0
    return weight


def _answers(encoder: Encoder, batch: Batch, device: str) -> Tensor:
    shown = (torch.from_numpy(x).to(device) for x in (batch.pieces, batch.sights, batch.there))
    with torch.autocast("cuda", torch.bfloat16, enabled=device == "cuda"):
        answers: Tensor = encoder(*shown)
    return answers.float()


@torch.no_grad()
def answer(encoder: Encoder, r: Rows, recipe: Recipe, device: str) -> dict[str, NDArray[np.float32]]:
    """What the encoder says of every word: a head's probabilities, and for a pointer what each part is worth."""
    layout: Layout = encoder.layout
    seen = blinded(r, layout) if recipe.alone else r
    said = []
    for batch, counted in answering(seen, layout):
        answers = _answers(encoder, batch, device).cpu()
        said += [window[torch.from_numpy(pieces)] for window, pieces in zip(answers, counted, strict=True)]
    by_name = split(torch.cat(said)[torch.from_numpy(r.first)], layout)
    return {name: (a if name in layout.pointers else a.softmax(-1)).numpy() for name, a in by_name.items()}
