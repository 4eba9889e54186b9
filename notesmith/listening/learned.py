"""What the encoder tells is written into the hearing: its answers take the place of the rules' where it gives any.

The rules stay the encoder's eyes (it is shown what they made of every word) and keep what it is not asked:
the words that decided, the preparation, the taster and the reveals.
"""

from bisect import bisect_left
from collections.abc import Iterator, Sequence
from dataclasses import replace
from math import exp, log
from typing import NamedTuple

import numpy as np
from numpy.typing import NDArray

from notesmith.listening.encoder import Answers, load_encoder
from notesmith.listening.facts import METHOD, ONCE, samples_of, stated
from notesmith.listening.hearing import Amount, Description, Grounds, Hearing, LeftOut, Perception, Stated, Word
from notesmith.listening.intensity import read_intensity
from notesmith.listening.perceptions import UNLIKELY, taster_of
from notesmith.listening.presence import read_presence
from notesmith.listening.retractions import apply_retractions
from notesmith.listening.shown import (
    BY_RULES,
    FACETS,
    FACT_KINDS,
    PRESENCES,
    SLOTS,
    Sights,
    cast_parts,
    following_parts,
    show,
)
from notesmith.listening.told import INTENSITIES, VOICES
from notesmith.listening.vocabulary import DETERMINERS, FILLERS, GRADERS
from notesmith.listening.whose import Namings

Floats = NDArray[np.float64]
SHORT = 60  # words
LEAST = 0.5  # below this a stretch is no perception; chosen where precision and recall balance
LEAST_FACT, FACT_START, SURE = 0.4, 1.0, 1e-3  # a fact missed weighs more than one too many
LIGHT = DETERMINERS | GRADERS | FILLERS
ALSO = 0.5  # how surely something is said of a second sample too


class Found(NamedTuple):
    """A stretch of words that a head marks, and how surely."""

    start: int
    end: int
    score: float


def stretches(marks: NDArray[np.float32], least: float) -> Iterator[Found]:
    """Stretches of words that are marked (columns: outside, begins, goes on) with at least `least`."""
    inside = 1.0 - marks[:, 0]
    begins = (inside >= least) & ((marks[:, 1] >= marks[:, 2]) | (np.roll(inside, 1) < least))
    start = -1
    for i in [*np.flatnonzero((inside >= least) | (np.roll(inside, 1) >= least)).tolist(), len(inside)]:
        ends = i == len(inside) or inside[i] < least or begins[i]
        if start >= 0 and ends:
            yield Found(start, i, float(inside[start:i].mean()))
            start = -1
        if i < len(inside) and begins[i]:
            start = i


def _mean(answers: NDArray[np.float32], found: Found | Amount) -> NDArray[np.float32]:
    means: NDArray[np.float32] = answers[found.start : found.end].mean(axis=0)
    return means


class Pointing:
    """Reads pointers as samples: every part that a sample plays is worth what the encoder says it is worth there."""

    def __init__(self, hearing: Hearing, answers: Answers, parts: Sights) -> None:
        self.ids: list[str | None] = [None, *(s.id for s in hearing.sheet.samples[:SLOTS])]
        self.answers = answers
        self.parts = parts
        self.decided: list[tuple[int, int]] = []  # where something was perceived, and of which slot

    def worths(self, pointer: str, found: Found | Amount) -> tuple[Floats, Floats]:
        """What every slot is worth by the parts that rules cast; and a row for every slot perceived last."""
        worth = _mean(self.answers[pointer], found).astype(np.float64)
        sums = np.zeros(len(self.ids))
        sums[0] = worth[0]
        for slot, value in zip(self.parts[found.start, 1:BY_RULES].tolist(), worth[1:BY_RULES].tolist(), strict=True):
            if slot:
                sums[slot] += value
        table = np.tile(sums, (len(self.ids), 1))
        for last in range(1, len(self.ids)):
            for column, slot in enumerate(following_parts(np.array([last]), len(self.ids) - 1)):
                if slot[0]:
                    table[last, slot[0]] += worth[BY_RULES + column]
        return sums, table - _log_sum(table)

    def decide(self, found: Sequence[Found]) -> list[tuple[str | None, float]]:
        """The samples of all stretches at once: the likeliest chain, where each knows the one before it."""
        if not found:
            return []
        steps = [self.worths("sample", f)[1] for f in found]
        total, back = steps[0][0], []
        for step in steps[1:]:
            ways = total[:, None] + step
            ways[0] = total[0] + step[0]
            back.append(ways.argmax(axis=0))
            total = ways.max(axis=0)
        chain = [int(total.argmax())]
        for before in reversed(back):
            chain.append(int(before[chain[-1]]))
        chain.reverse()
        self.decided = [(f.start, slot) for f, slot in zip(found, chain, strict=True)]
        lasts = [0, *chain[:-1]]
        return [
            (self.ids[slot], float(np.exp(step[last, slot])))
            for step, last, slot in zip(steps, lasts, chain, strict=True)
        ]

    def at(self, pointer: str, found: Found | Amount) -> str | None:
        """The sample that a pointer points to over a stretch, given what was perceived last before it."""
        return self.ids[int(self._row(pointer, found).argmax())]

    def also(self, pointer: str, found: Found | Amount, but: str | None) -> list[str]:
        """The sample it is said of too, if there is one."""
        worth = self._row(pointer, found)
        best = self.ids[int(worth.argmax())]
        return [best] if best is not None and best != but and np.exp(worth.max()) >= ALSO else []

    def _row(self, pointer: str, found: Found | Amount) -> Floats:
        k = bisect_left(self.decided, (found.start, 0))
        last = self.decided[k - 1][1] if k else 0
        row: Floats = self.worths(pointer, found)[1][last]
        return row


def _log_sum(table: Floats) -> Floats:
    top = table.max(axis=1, keepdims=True)
    sums: Floats = top + np.log(np.exp(table - top).sum(axis=1, keepdims=True))
    return sums


def heed_encoder(hearing: Hearing) -> None:
    """Let the encoder's answers take the place of what the rules perceived and of the facts they found.

    Talk of a few words is left to the rules: the encoder has learned from whole recordings.
    """
    if len(hearing.words) < SHORT:
        return
    encoder = load_encoder()
    if isinstance(encoder, str):
        hearing.shortcomings.append(f"{encoder}: the rules listened alone")
        return
    parts = cast_parts(hearing)
    apply_answers(hearing, encoder.answer(hearing, show(hearing, parts)), parts)
    apply_retractions(hearing)


def apply_answers(hearing: Hearing, answers: Answers, parts: Sights) -> None:
    """Write the encoder's answers into the hearing."""
    pointing = Pointing(hearing, answers, parts)
    hearing.perceptions = list(_perceptions(hearing, answers, pointing))
    hearing.left_out = list(_left_out(hearing))
    hearing.facts = list(_facts(hearing, answers, pointing))


def _left_out(hearing: Hearing) -> Iterator[LeftOut]:
    """What the rules took for a description and nobody for a perception; with the rules' reason where they gave one."""
    kept = {i for p in hearing.perceptions for i in range(p.description.start, p.description.end)}
    reasons = {o.description.start: o for o in hearing.left_out}
    for d in hearing.descriptions:
        if kept.isdisjoint(range(d.start, d.end)):
            unlikely = LeftOut(d, UNLIKELY, Grounds("encoder", d.start, d.end))
            yield reasons.get(d.start, unlikely)


def _perceptions(hearing: Hearing, answers: Answers, pointing: Pointing) -> Iterator[Perception]:
    known = {(d.start, d.end): d for d in hearing.descriptions}
    refused = {o.description.start for o in hearing.left_out if o.reason != UNLIKELY}
    seen = set()
    marked = list(stretches(answers["description"], LEAST))
    for found, (sample, _) in zip(marked, pointing.decide(marked), strict=True):
        description = known.get(found[:2]) or _described(hearing, found)
        if description is None or found.start in refused:
            continue
        for of in (sample, *pointing.also("also", found, sample)):
            p = _perceived(hearing, description, answers, found, of)
            key = (hearing.words[p.description.start].cue, hearing.said(*found[:2]).lower(), of, p.presence)
            if key not in seen:
                seen.add(key)
                yield p


def _described(hearing: Hearing, found: Found) -> Description | None:
    """A description of words that the rules did not take for one."""
    words = hearing.words
    start, end = found.start, found.end
    while start < end and not _carries(words[start]):
        start += 1
    while end > start and not _carries(words[end - 1]):
        end -= 1
    if start == end:
        return None
    label = hearing.lexicon.look_up(" ".join(w.norm for w in words[start:end]))
    return Description(start, end, label, "encoder", -1)


def _carries(word: Word) -> bool:
    """Whether a description may begin or end with a word: an article, a grader or a mark carries none."""
    return word.norm.isalnum() and word.norm not in LIGHT


def _perceived(hearing: Hearing, d: Description, answers: Answers, found: Found, sample: str | None) -> Perception:
    k = hearing.clause_of[d.start]
    clause = hearing.clauses[k]
    presence = PRESENCES[int(_mean(answers["presence"], found).argmax())]
    intensity = INTENSITIES[int(_mean(answers["intensity"], found).argmax())]
    voice = VOICES[int(_mean(answers["voice"], found).argmax())]
    reading, (graded, at) = read_presence(hearing, d, clause), read_intensity(hearing, d, clause)
    deciding = [
        *([Grounds(reading.rule, reading.at, reading.at + 1)] if reading.at >= 0 and presence != "present" else []),
        *([Grounds(f"intensity {graded}", at, at + 1)] if at >= 0 and intensity == graded else []),
    ]
    return Perception(
        description=d, clause=k,
        start=min([d.start, *(g.start for g in deciding)]), end=max([d.end, *(g.end for g in deciding)]),
        presence=presence, intensity=intensity if presence != "absent" else None,
        facet=FACETS[int(_mean(answers["facet"], found).argmax())], voice=voice, sample=sample,
        preparation=hearing.topics[hearing.run_of[d.start]].preparation,
        taster=taster_of(hearing, clause.speaker, quoted=voice == "quoted"), confidence=found.score,
        grounds=[Grounds("encoder", d.start, d.end), *deciding],
    )  # fmt: skip


def _facts(hearing: Hearing, answers: Answers, pointing: Pointing) -> Iterator[Stated]:
    """Rules and encoder together tell what is a fact; the encoder whose, but for the method, mostly for all."""
    seen = set()
    likely = _likely(hearing, answers["fact"])
    made, namings = [a for a in likely if a.kind == "process"], Namings(hearing)
    for amount in likely:
        sample = pointing.at("stated", amount)
        pointed = (sample, *pointing.also("stated_also", amount, sample))
        for of in samples_of(hearing, amount, made, namings) if amount.kind in METHOD else pointed:
            key = (amount.kind, str(amount.value).lower(), of)
            if amount.kind not in ONCE or key not in seen:
                seen.add(key)
                yield stated(hearing, amount, of)


def _likely(hearing: Hearing, marks: NDArray[np.float32]) -> list[Amount]:
    """The amounts that rules and encoder together take for facts, each as the likeliest kind, in order."""
    best: dict[int, Amount] = {}
    for amount in hearing.amounts:
        kind = 1 + 2 * FACT_KINDS.index(amount.kind)
        by_encoder = float(_mean(marks[:, kind : kind + 2], amount).sum())
        score = 1 / (1 + exp(-(_odds(amount.score) + _odds(by_encoder) + FACT_START) / 2))
        if score >= LEAST_FACT and (amount.start not in best or score > best[amount.start].score):
            best[amount.start] = replace(amount, score=score)
    return [best[start] for start in sorted(best)]


def _odds(likelihood: float) -> float:
    """The logarithm of the odds, kept from growing without end."""
    return log((likelihood + SURE) / (1 - likelihood + SURE))
