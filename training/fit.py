"""Fit the encoder to rows of annotated recordings, and answer for recordings it was not fitted to."""

import math
import random
from collections.abc import Iterator, Sequence
from dataclasses import dataclass

import numpy as np
import torch
from numpy.typing import NDArray
from torch import Tensor
from torch.nn import functional as F

from training.layout import UNTOLD, Layout
from training.model import Encoder, point, split
from training.rows import Ints, Rows

WINDOW, STRIDE = 256, 192  # pieces read at once; pieces from one window to the next when answering
MISTAKEN = 0.25  # of the windows
PAD, MASK = 0, 103  # of the vocabulary
WEIGHTS = {
    "description": 3.0, "presence": 0.5, "intensity": 0.3, "facet": 0.6, "voice": 0.5, "fact": 2.0, "section": 0.3,
    "boundary": 0.5, "comparison": 1.5, "relation": 0.3, "preference": 0.7, "scope": 0.3, "repair": 1.0,
    "sample": 2.0, "also": 0.2, "stated": 1.2, "stated_also": 0.1, "more": 0.5, "less": 0.5, "preferred": 0.5,
}  # fmt: skip


# How much more a word counts that a head marks than one that it does not: what is rare would be passed over.
RARE = {"description": 1.5, "fact": 2.0, "comparison": 4.0, "preference": 3.0, "repair": 4.0, "boundary": 6.0}


@dataclass(frozen=True)
class Recipe:
    """How the fitting is done; every field may be set on the command line."""

    epochs: int = 30
    batch: int = 16
    rate: float = 2e-4
    head_rate: float = 1e-3
    hidden_word: float = 0.08  # how often a piece is hidden, so that no single word decides
    hidden_sight: float = 0.1  # how often a sight is hidden, so that the rules are not merely repeated
    blind: bool = False  # whether all sights but the names are hidden: the encoder alone
    seed: int = 7


def fit(encoder: Encoder, rows: Sequence[Rows], recipe: Recipe, device: str) -> Encoder:
    """Fit the encoder to all windows of the recordings; one pass an epoch, either captions or bare."""
    rng, numbers = random.Random(recipe.seed), np.random.default_rng(recipe.seed)
    torch.manual_seed(recipe.seed)
    encoder.to(device).train()
    heads = [p for n, p in encoder.named_parameters() if n.startswith("answers")]
    known = {id(p) for p in heads}
    body = [p for p in encoder.parameters() if id(p) not in known]
    optimiser = torch.optim.AdamW(
        [{"params": body, "lr": recipe.rate}, {"params": heads, "lr": recipe.head_rate}], weight_decay=0.01, fused=device == "cuda"
    )
    steps = recipe.epochs * math.ceil(sum(len(r.pieces) for r in rows) / 2 / (WINDOW - 8) / recipe.batch + 1)
    schedule = torch.optim.lr_scheduler.LambdaLR(optimiser, lambda s: min(1.0, s / (0.06 * steps)) * max(0.02, 1 - s / steps))
    for epoch in range(recipe.epochs):
        for batch in _batches(rows, encoder.layout, recipe, rng, numbers):
            pieces, sights, there, parts, targets, samples = (torch.from_numpy(x).to(device, non_blocking=True) for x in batch)
            with torch.autocast("cuda", torch.bfloat16, enabled=device == "cuda"):
                answers = encoder(pieces, sights, there)
            loss = losses(_pointed(answers.float(), parts, samples, encoder.layout), targets, encoder.layout)
            optimiser.zero_grad(set_to_none=True)
            loss.backward()
            torch.nn.utils.clip_grad_norm_(encoder.parameters(), 1.0)
            optimiser.step()
            schedule.step()
        if epoch % 10 == 9:
            print(f"epoch {epoch + 1}: loss {float(loss):.2f}", flush=True)
    return encoder.eval()


def _pointed(answers: Tensor, parts: Tensor, samples: Tensor, layout: Layout) -> dict[str, Tensor]:
    """The answers by name, with pointers to samples in place of what the parts are worth."""
    by_name = split(answers, layout)
    return {name: point(a, parts, samples) if name in layout.pointers else a for name, a in by_name.items()}


def losses(answers: dict[str, Tensor], targets: Tensor, layout: Layout) -> Tensor:
    """The weighed sum of every head's cross entropy over the words it is asked of."""
    parts = []
    for k, name in enumerate(layout.targets):
        asked = targets[:, :, k].reshape(-1)
        said = answers[name].reshape(-1, answers[name].shape[-1])
        weight = None
        if name in RARE:
            weight = torch.full((said.shape[-1],), RARE[name], device=said.device)
            weight[0] = 1.0
        loss = F.cross_entropy(said, asked, weight, ignore_index=UNTOLD, reduction="sum")
        parts.append(WEIGHTS[name] * loss / (asked != UNTOLD).sum().clamp(min=1))
    return torch.stack(parts).sum()


def _batches(
    rows: Sequence[Rows], layout: Layout, recipe: Recipe, rng: random.Random, numbers: np.random.Generator
) -> Iterator[tuple[Ints, ...]]:
    """All windows of one variant of every recording, shuffled, altered a little and stacked."""
    variants: dict[str, list[Rows]] = {}
    for r in rows:
        variants.setdefault(r.name, []).append(r)
    windows = []
    for same in variants.values():
        r = rng.choice(same)
        start = -rng.randrange(WINDOW)
        while start < len(r.pieces):
            cut = slice(max(0, start), min(len(r.pieces), start + WINDOW))
            if cut.stop - cut.start > 24:
                windows.append((r, cut))
            start += WINDOW - 8
    rng.shuffle(windows)
    for at in range(0, len(windows), recipe.batch):
        yield _stacked(windows[at : at + recipe.batch], layout, recipe, numbers)


def _stacked(
    windows: Sequence[tuple[Rows, slice]], layout: Layout, recipe: Recipe, numbers: np.random.Generator
) -> tuple[Ints, ...]:
    longest = max(cut.stop - cut.start for _, cut in windows)
    shape = len(windows), longest
    pieces, there = np.full(shape, PAD, dtype=np.int64), np.zeros(shape, dtype=np.int64)
    sights = np.zeros((*shape, len(layout.sights)), dtype=np.int64)
    parts = np.zeros((*shape, len(layout.parts)), dtype=np.int64)
    targets = np.full((*shape, len(layout.targets)), UNTOLD, dtype=np.int64)
    for k, (r, cut) in enumerate(windows):
        size = cut.stop - cut.start
        pieces[k, :size] = np.where(numbers.random(size) < recipe.hidden_word, MASK, r.pieces[cut])
        sights[k, :size] = r.sights[cut] * (numbers.random(len(layout.sights)) >= recipe.hidden_sight)
        parts[k, :size], targets[k, :size], there[k, :size] = _mistaken(r.parts[cut], layout, numbers), r.targets[cut], 1
    if recipe.blind:
        sights, parts = blinded(sights, parts, layout)
    return pieces, sights, there, parts, targets, np.array([r.samples for r, _ in windows])


def _mistaken(parts: Ints, layout: Layout, numbers: np.random.Generator) -> Ints:
    """Now and then what was perceived last is taken from the rules, or not known: in use it is decided, not given."""
    chance = numbers.random()
    if chance > MISTAKEN:
        return parts
    changed = parts.copy()
    last = layout.parts.index("perceived last")
    changed[:, last:] = 0
    if chance < MISTAKEN / 2:
        changed[:, last] = parts[:, layout.parts.index("topic")]
    return changed


def blinded(sights: Ints, parts: Ints, layout: Layout) -> tuple[Ints, Ints]:
    """The sights without anything that the rules have judged: only who is named, and pauses."""
    seen = np.array([name in layout.alone for name in layout.sights])
    return sights * seen, parts * np.array([name in layout.unjudged for name in layout.parts])


@torch.no_grad()
def answer(encoder: Encoder, r: Rows, recipe: Recipe, device: str) -> dict[str, NDArray[np.float32]]:
    """The encoder's probabilities for every word of a recording, read window by window from their middles."""
    encoder.eval()
    layout = encoder.layout
    starts = list(range(0, max(1, len(r.pieces) - (WINDOW - STRIDE)), STRIDE))
    sums: list[NDArray[np.float32]] = []
    margin = (WINDOW - STRIDE) // 2
    for begin in range(0, len(starts), 32):
        group = starts[begin : begin + 32]
        longest = min(WINDOW, len(r.pieces))
        pieces, sights = np.zeros((len(group), longest), np.int64), np.zeros((len(group), longest, len(layout.sights)), np.int64)
        there = np.zeros((len(group), longest), np.int64)
        for k, s in enumerate(group):
            size = len(r.pieces[s : s + WINDOW])
            pieces[k, :size], sights[k, :size], there[k, :size] = r.pieces[s : s + WINDOW], r.sights[s : s + WINDOW], 1
        if recipe.blind:
            sights = sights * np.array([name in layout.alone for name in layout.sights])
        with torch.autocast("cuda", torch.bfloat16, enabled=device == "cuda"):
            out = encoder(*(torch.from_numpy(x).to(device) for x in (pieces, sights, there))).float().cpu().numpy()
        for k, s in enumerate(group):
            first = 0 if s == 0 else margin
            last = len(r.pieces) - s if s == starts[-1] else margin + STRIDE
            sums.append(out[k, first:last])
    by_name = split(torch.from_numpy(np.concatenate(sums)[r.first]), layout)
    return {name: (a if name in layout.pointers else a.softmax(-1)).numpy() for name, a in by_name.items()}

