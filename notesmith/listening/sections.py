"""Where would a viewer want a chapter?

The talk is cut into breaths; every breath speaks for some kinds of section by what is said, found and perceived within
a few seconds of it; the best division of the whole recording is taken.
"""

from collections import Counter
from collections.abc import Iterable, Sequence
from itertools import pairwise
from typing import NamedTuple, cast

import numpy as np

from notesmith.listening.hearing import Grounds, Hearing, Passage
from notesmith.listening.section_path import Floats, Stretch, best_sections
from notesmith.listening.section_signs import cut_breaths, opening_signs, place_signs, said_signs
from notesmith.listening.section_weights import KINDS, OPENING
from notesmith.listening.shown import SECTION_KINDS
from notesmith.records import SectionKind

NEAR_MS = 6_000
HEEDED, FAVOUR, UNLIKELY, FIRST = 1.5, 1.5, 0.02, 3  # the encoder's weight beside the signs; words of a breath
MOSTLY = 0.6  # of a section's breaths are about a sample that the section is about
NAMES = list(KINDS)
SIGNS = {sign: i for i, sign in enumerate(sorted({sign for weights in KINDS.values() for sign in weights}))}
SIGN_NAMES = list(SIGNS)
WEIGHTS = np.array([[KINDS[kind].get(sign, 0.0) for kind in NAMES] for sign in SIGNS])
BLOCK = 256  # breaths
SAMPLE_FREE = ("opening", "comparison", "verdict", "sponsor", "closing")


class Breaths(NamedTuple):
    """All breaths of a talk: where they begin (one more for the end), how much of each sign, what each speaks for."""

    cuts: list[int]
    signs: Floats
    evidence: Floats


class Advice(NamedTuple):
    """What the encoder makes of every word: how likely its section is of each kind, and that a section begins there."""

    kinds: Floats  # a row a word, a column a kind, in the order of the records
    begins: Floats


def find_sections(hearing: Hearing, advice: Advice | None = None) -> None:
    """Divide the recording into sections, each to the start of the next."""
    hearing.sections = []
    if not hearing.words:
        return
    cuts = cut_breaths(hearing)
    times = [hearing.words[at].ms for at in cuts[:-1]] + [hearing.words[-1].ms + 2000]
    signs = _weighed_signs(hearing, cuts, times)
    breaths = Breaths(cuts, signs, _evidence(signs))
    openings = _summed(opening_signs(hearing, cuts), len(cuts) - 1)
    if advice:
        breaths = breaths._replace(evidence=breaths.evidence + _advised_kinds(advice, cuts))
        openings = openings + _advised_openings(advice, cuts)
    samples = [hearing.topics[hearing.run_of[at]].sample for at in cuts[:-1]]
    ids = [sample.id for sample in hearing.sheet.samples]
    for stretch in best_sections(times, breaths.evidence, openings, samples, ids):
        hearing.sections.append(_passage(hearing, breaths, stretch, samples))


def _weighed_signs(hearing: Hearing, cuts: list[int], times: list[int]) -> Floats:
    """A row for every breath: how much of each sign there is near it, and its place."""
    sums = np.zeros((len(cuts), len(SIGNS)))
    breaths = np.repeat(np.arange(1, len(cuts)), np.diff(cuts))  # of every word
    for sign, places in said_signs(hearing).items():
        if sign in SIGNS and places:
            sums[:, SIGNS[sign]] = np.bincount(breaths[places], minlength=len(cuts)).cumsum()
    begins = np.array(times[:-1])
    after, before = np.searchsorted(begins, begins + NEAR_MS, "right"), np.searchsorted(begins, begins - NEAR_MS)
    near: Floats = np.log1p(sums[after] - sums[before])
    for sign, stands in place_signs(hearing, cuts).items():
        if sign in SIGNS:
            near[stands, SIGNS[sign]] = 1
    return near


def _evidence(signs: Floats) -> Floats:
    """What each breath speaks for; in blocks too small for the threads of a matrix product, which cost more than it."""
    return np.vstack([signs[at : at + BLOCK] @ WEIGHTS for at in range(0, len(signs), BLOCK)])


def _advised_kinds(advice: Advice, cuts: list[int]) -> Floats:
    """What the encoder's kinds add to the evidence of each breath."""
    sums = np.vstack([np.zeros(advice.kinds.shape[1]), advice.kinds.cumsum(axis=0)])
    means = (sums[cuts[1:]] - sums[cuts[:-1]]) / np.diff(cuts)[:, None]
    order = [SECTION_KINDS.index(cast("SectionKind", name)) for name in NAMES]
    advised: Floats = HEEDED * np.log(means[:, order] + UNLIKELY)
    return advised


def _advised_openings(advice: Advice, cuts: list[int]) -> Floats:
    """How well a section begins with each breath, as the odds that it does at one of its first words."""
    likely = np.array([advice.begins[at : min(at + FIRST, end)].max() for at, end in pairwise(cuts)])
    odds: Floats = np.log((likely + UNLIKELY / 2) / (1 + UNLIKELY / 2 - likely)) + FAVOUR
    return odds


def _summed(signs: Iterable[tuple[int, str]], count: int) -> Floats:
    """For each of `count` breaths, what its signs of an opening are worth together."""
    known = [(breath, OPENING[sign]) for breath, sign in signs if sign in OPENING]
    breaths, worths = [k for k, _ in known], np.array([worth for _, worth in known])
    return np.bincount(breaths, worths, count).astype(float)


def _passage(hearing: Hearing, breaths: Breaths, stretch: Stretch, samples: Sequence[str | None]) -> Passage:
    kind = stretch.state.kind
    sample = stretch.state.sample
    if sample is None and kind not in SAMPLE_FREE:
        sample = _main_sample(hearing, breaths, stretch, samples)
    return Passage(
        breaths.cuts[stretch.start], breaths.cuts[stretch.end], cast("SectionKind", kind), sample,
        _confidence(breaths.evidence[stretch.start : stretch.end], NAMES.index(kind)), (_strongest(breaths, stretch),),
    )  # fmt: skip


def _main_sample(
    hearing: Hearing, breaths: Breaths, stretch: Stretch, samples: Sequence[str | None]
) -> str | None:
    """The sample that most of a section is about, if it is named there."""
    start, end = breaths.cuts[stretch.start], breaths.cuts[stretch.end]
    sample, count = Counter(samples[stretch.start : stretch.end]).most_common(1)[0]
    named = any(m.samples == (sample,) for m in hearing.mentions if start <= m.start < end)
    return sample if named and count >= MOSTLY * (stretch.end - stretch.start) else None


def _confidence(evidence: Floats, kind: int) -> float:
    """How likely the kind is in a section's breaths, on average."""
    odds = np.exp(evidence - evidence.max(axis=1, keepdims=True))
    return float((odds[:, kind] / odds.sum(axis=1)).mean())


def _strongest(breaths: Breaths, stretch: Stretch) -> Grounds:
    """The sign that speaks most for a section's kind, and the breath where it does so most."""
    speaks = breaths.signs[stretch.start : stretch.end] * WEIGHTS[:, NAMES.index(stretch.state.kind)]
    speaks[:, SIGNS["always"]] = 0
    sign = int(speaks.sum(axis=0).argmax())
    at = stretch.start + int(speaks[:, sign].argmax())
    return Grounds(SIGN_NAMES[sign], breaths.cuts[at], breaths.cuts[at + 1])
