"""What held-out answers are worth: the notes of rules alone and of rules with the encoder, against the annotation."""

import json
import logging
from collections import Counter, defaultdict
from collections.abc import Iterator, Sequence
from copy import copy
from dataclasses import dataclass
from pathlib import Path

import numpy as np
from numpy.typing import NDArray

from notesmith.lexicon import Lexicon
from notesmith.listening.hearing import Hearing
from notesmith.listening.learned import apply_answers
from notesmith.listening.pieces import Pieces
from notesmith.listening.pointers import Pointing
from notesmith.listening.retractions import apply_retractions
from notesmith.listening.shown import cast_parts
from training.examples import Example, annotations, read_example
from training.layout import Layout
from training.scoring import JUDGED, Record, f1, interval, tally
from training.split import folds, kinds, manners
from training.turns import Choice, choices, fit, use_weights

Answers = dict[str, NDArray[np.float32]]


@dataclass(frozen=True)
class Heard:
    """One recording as the rules heard it, with what a careful listener wrote and what the encoder said held out."""

    name: str
    example: Example
    hearing: Hearing
    answers: Answers
    annotated: list[Record]


def heard_again(
    folder: Path, vocabulary: Path, answers: Sequence[Path], layout: Layout, *, bare: bool
) -> Iterator[Heard]:
    """Every recording of the folder that there are answers for."""
    lexicon, pieces, said = Lexicon.load(), Pieces.read(vocabulary), _read(answers, bare=bare)
    for gold in annotations(folder):
        name = gold.name.removesuffix(".gold.json")
        if name in said:
            example, hearing = read_example(gold, lexicon, bare=bare)
            if len(said[name]["description"]) != len(set(pieces.cut(hearing.meant)[1])):
                logging.warning("%s is left out: the answers were given for other words", name)
                continue
            annotated = json.loads(gold.read_text(encoding="utf-8"))["observations"]
            yield Heard(name, example, hearing, _spread(said[name], hearing, pieces, layout), annotated)


def measure(folder: Path, vocabulary: Path, answers: Sequence[Path], layout: Layout, *, bare: bool) -> Iterator[str]:
    """Lines of a table: for rules alone and for both, by manner, F1 with its interval and the accuracies."""
    manner, fold, kind = manners(folder), folds(folder), kinds(folder)
    everything = list(heard_again(folder, vocabulary, answers, layout, bare=bare))
    tallies: dict[tuple[str, str], list[Counter[str]]] = defaultdict(list)
    for held_out in sorted({fold[kind[h.name]] for h in everything}):
        use_weights(fit([c for h in everything if fold[kind[h.name]] != held_out for c in choices_of(h)]))
        for h in everything:
            if fold[kind[h.name]] == held_out:
                both = copy(h.hearing)
                apply_answers(both, h.answers, cast_parts(both))
                apply_retractions(both, swaps=False)
                for listener, hearing in (("rules alone", h.hearing), ("both", both)):
                    counts = tally(h.annotated, noted(hearing))
                    for group in ("all", manner[h.name]):
                        tallies[listener, group].append(counts)
    for (listener, group), counted in sorted(tallies.items()):
        yield _line(f"{listener}, {group}", counted)


def choices_of(heard: Heard) -> list[Choice]:
    """The choices between samples that a recording's annotation made."""
    pointing = Pointing(heard.hearing, heard.answers, cast_parts(heard.hearing))
    return list(choices(heard.example.stretches(), pointing.turning, pointing))


def _read(paths: Sequence[Path], *, bare: bool) -> dict[str, dict[str, NDArray[np.generic]]]:
    """The answers of every recording by head."""
    said: dict[str, dict[str, NDArray[np.generic]]] = defaultdict(dict)
    for path in paths:
        with np.load(path) as file:
            for key in file.files:
                name, variant, head = key.split("|")
                if int(variant) == bare:
                    said[name][head] = file[key]
    return said


def _spread(said: dict[str, NDArray[np.generic]], hearing: Hearing, pieces: Pieces, layout: Layout) -> Answers:
    """The answers for every word; words without a piece have none and are outside."""
    words = sorted(set(pieces.cut(hearing.meant)[1]))
    answers: Answers = {}
    for head, values in said.items():
        spread = np.zeros((len(hearing.words), values.shape[1]), dtype=np.float32)
        if head not in layout.pointers:
            spread[:, 0] = 1
        spread[words] = values if head in layout.pointers else values / 255
        answers[head] = spread
    return answers


def noted(hearing: Hearing) -> list[Record]:
    """The perceptions as the annotation writes them."""
    return [
        {
            "term": hearing.said(p.description.start, p.description.end), "start": hearing.words[p.start].ms / 1000,
            "sample": p.sample, "presence": p.presence, "voice": p.voice, "facet": p.facet, "intensity": p.intensity,
        }
        for p in hearing.perceptions
    ]  # fmt: skip


def _line(title: str, tallies: Sequence[Counter[str]]) -> str:
    total = sum(tallies, Counter())
    found, right = (f1(total[hits], total["noted"], total["annotated"]) for hits in ("found", "right"))
    low, high = interval(tallies, "right")
    fields = "  ".join(f"{field} {total[field] / max(1, total['found']):.3f}" for field in JUDGED)
    return (
        f"{title:24} {len(tallies):4} recordings  found {found:.3f}  right {right:.3f} ({low:.3f}-{high:.3f})  {fields}"
    )
