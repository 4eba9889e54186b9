"""Fit what speaks for a preparation: every perception that the rules found and an annotation has, too, is a choice."""

import json
from collections.abc import Iterator, Sequence
from pathlib import Path

import numpy as np

from notesmith.lexicon import Lexicon
from notesmith.listening.hearing import Hearing
from notesmith.listening.preparing import Preparing, turns
from training.examples import annotations, read_example
from training.measured import noted
from training.scoring import Record, paired
from training.turns import Choice, by_slot


def all_choices(folder: Path) -> Iterator[Choice]:
    """The choices of all recordings whose sheet lists preparations."""
    lexicon = Lexicon.load()
    for gold in annotations(folder):
        _, hearing = read_example(gold, lexicon, bare=False)
        if hearing.sheet.preparations:
            yield from choices_of(hearing, json.loads(gold.read_text(encoding="utf-8"))["observations"], noted(hearing))


def choices_of(hearing: Hearing, annotated: Sequence[Record], written: Sequence[Record]) -> Iterator[Choice]:
    """The choices of one recording; `written` has a record for each of the hearing's perceptions, in their order."""
    ids = {preparation.id: slot for slot, preparation in enumerate(hearing.sheet.preparations, 1)}
    preparing, last, since = Preparing(hearing), 0, 0
    perceived = {id(record): p for record, p in zip(written, hearing.perceptions, strict=True)}
    found = [(perceived[id(ours)], theirs) for theirs, ours in paired(annotated, written)]
    for p, theirs in sorted(found, key=lambda pair: pair[0].description.start):
        marks = tuple(preparing.marks(p, since))
        signs = by_slot(preparing.standing(p, since), turns(last, preparing.size), marks, preparing.size)
        last, since = ids.get(theirs["preparation"], 0), p.description.start + 1
        yield Choice(signs, np.zeros(len(signs)), last)
