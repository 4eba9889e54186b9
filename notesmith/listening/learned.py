"""What the encoder tells is written into the hearing: its answers take the place of the rules' where it gives any.

The rules stay the encoder's eyes (it is shown what they made of every word) and keep what it is not asked:
the words that decided, the preparation, the taster and the reveals.
"""

from collections.abc import Iterator
from dataclasses import replace
from math import exp, log

import numpy as np
from numpy.typing import NDArray

from notesmith.listening.encoder import Answers, load_encoder
from notesmith.listening.facts import METHOD, ONCE, samples_of, stated
from notesmith.listening.hearing import (
    Amount,
    Compared,
    Description,
    Grounds,
    Hearing,
    LeftOut,
    Perception,
    Stated,
    Word,
)
from notesmith.listening.intensity import read_intensity
from notesmith.listening.perceptions import UNLIKELY, taster_of
from notesmith.listening.pointers import Found, Pointing, mean_of, stretches
from notesmith.listening.presence import read_presence
from notesmith.listening.retractions import apply_retractions
from notesmith.listening.sections import Advice, find_sections
from notesmith.listening.shown import FACETS, FACT_KINDS, PRESENCES, Cast, cast_parts, show
from notesmith.listening.told import INTENSITIES, VOICES
from notesmith.listening.vocabulary import DETERMINERS, FILLERS, GRADERS
from notesmith.listening.whose import Namings

SHORT = 60  # words
LEAST = 0.6  # below this a stretch is no perception; a note too many weighs a little more than one missed
LEAST_FACT, FACT_START, SURE = 0.4, 1.0, 1e-3  # a fact missed weighs more than one too many
LEAST_COMPARED = 0.4
SLOPE, OFFSET = 0.66, -0.27  # of the odds: the encoder is too sure of itself
LIGHT = DETERMINERS | GRADERS | FILLERS


def heed_encoder(hearing: Hearing) -> None:
    """Let the encoder's answers take the place of what the rules perceived and of the facts they found.

    Swapped cups are not turned round by rules again: the encoder has learned whose it was in the end.

    Talk of a few words is left to the rules: the encoder has learned from whole recordings.
    """
    if len(hearing.words) < SHORT:
        return
    encoder = load_encoder()
    if isinstance(encoder, str):
        hearing.shortcomings.append(f"{encoder}: the rules listened alone")
        return
    cast = cast_parts(hearing)
    apply_answers(hearing, encoder.answer(hearing, show(hearing, cast)), cast)
    apply_retractions(hearing, swaps=False)


def apply_answers(hearing: Hearing, answers: Answers, cast: Cast) -> None:
    """Write the encoder's answers into the hearing."""
    pointing = Pointing(hearing, answers, cast)
    hearing.perceptions = list(_perceptions(hearing, answers, pointing))
    hearing.left_out = list(_left_out(hearing))
    hearing.facts = list(_facts(hearing, answers, pointing))
    find_sections(hearing, Advice(answers["section"].astype(np.float64), answers["boundary"][:, 1].astype(np.float64)))
    hearing.comparisons = [c for c in hearing.comparisons if _marked(answers["comparison"], c) >= LEAST_COMPARED]


def _marked(marks: NDArray[np.float32], heard: Compared) -> float:
    """How surely the encoder marks some word of what was heard."""
    return float(1 - marks[heard.start : heard.end, 0].min())


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
    for found, (sample, sure) in zip(marked, pointing.decide(marked), strict=True):
        whole = found.start, _whole_end(hearing, found)
        description = known.get(whole) or _described(hearing, *whole)
        if description is None or found.start in refused:
            continue
        for of in (sample, *pointing.also("also", found, sample)):
            p = _perceived(hearing, description, answers, found, of)
            p.grounds.append(Grounds(_whose(hearing, description, of, sure), description.start, description.end))
            key = (hearing.words[p.description.start].cue, hearing.said(*whole).lower(), of, p.presence)
            if key not in seen:
                seen.add(key)
                yield p


def _whole_end(hearing: Hearing, found: Found) -> int:
    """Where a stretch ends with all the words that a mended word was printed as; only the first has an answer."""
    return max((m.end for m in hearing.mendings if m.start < found.end < m.end), default=found.end)


def _described(hearing: Hearing, start: int, end: int) -> Description | None:
    """A description of words that the rules did not take for one."""
    words = hearing.words
    while start < end and not _carries(words[start]):
        start += 1
    while end > start and not _carries(words[end - 1]):
        end -= 1
    if start == end:
        return None
    label = hearing.lexicon.look_up(" ".join(w.norm for w in words[start:end]))
    return Description(start, end, label, "encoder", -1)


def _whose(hearing: Hearing, d: Description, sample: str | None, sure: float) -> str:
    """Why it is said of that sample: the rules' reason where it is theirs too, else how surely it was pointed to."""
    topic = hearing.topics[hearing.run_of[d.start]]
    return f"sample {topic.rule}" if topic.sample == sample else f"sample pointed to {sure:.2f}"


def _carries(word: Word) -> bool:
    """Whether a description may begin or end with a word: an article, a grader or a mark carries none."""
    return word.norm.isalnum() and word.norm not in LIGHT


def calibrated(score: float) -> float:
    """How often descriptions marked this surely are what a careful listener notes: fitted on held-out recordings."""
    return 1 / (1 + exp(-(SLOPE * _odds(score) + OFFSET)))


def _perceived(hearing: Hearing, d: Description, answers: Answers, found: Found, sample: str | None) -> Perception:
    k = hearing.clause_of[d.start]
    clause = hearing.clauses[k]
    presence = PRESENCES[int(mean_of(answers["presence"], found).argmax())]
    intensity = INTENSITIES[int(mean_of(answers["intensity"], found).argmax())]
    voice = VOICES[int(mean_of(answers["voice"], found).argmax())]
    reading, (graded, at) = read_presence(hearing, d, clause), read_intensity(hearing, d, clause)
    deciding = [
        *([Grounds(reading.rule, reading.at, reading.at + 1)] if reading.at >= 0 and presence != "present" else []),
        *([Grounds(f"intensity {graded}", at, at + 1)] if at >= 0 and intensity == graded else []),
    ]
    return Perception(
        description=d, clause=k,
        start=min([d.start, *(g.start for g in deciding)]), end=max([d.end, *(g.end for g in deciding)]),
        presence=presence, intensity=intensity if presence != "absent" else None,
        facet=FACETS[int(mean_of(answers["facet"], found).argmax())], voice=voice, sample=sample,
        preparation=hearing.topics[hearing.run_of[d.start]].preparation,
        taster=taster_of(hearing, clause.speaker, quoted=voice == "quoted"), confidence=calibrated(found.score),
        grounds=[Grounds(f"encoder {found.score:.2f}", d.start, d.end), *deciding],
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
        by_encoder = float(mean_of(marks[:, kind : kind + 2], amount).sum())
        score = 1 / (1 + exp(-(_odds(amount.score) + _odds(by_encoder) + FACT_START) / 2))
        if score >= LEAST_FACT and (amount.start not in best or score > best[amount.start].score):
            best[amount.start] = replace(amount, score=score)
    return [best[start] for start in sorted(best)]


def _odds(likelihood: float) -> float:
    """The logarithm of the odds, kept from growing without end."""
    return log((likelihood + SURE) / (1 - likelihood + SURE))
