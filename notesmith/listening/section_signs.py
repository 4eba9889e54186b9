"""What speaks for one kind of section rather than another, breath by breath: a breath is a few words said in one go.

Signs of what is said and found count within a few seconds of where they stand; signs of place for their breath alone.
"""

from bisect import bisect_right
from collections import defaultdict
from collections.abc import Iterable, Iterator, Sequence
from itertools import pairwise

import numpy as np
from numpy.typing import NDArray

from notesmith.listening.hearing import Hearing, Topic
from notesmith.listening.section_words import AT_ONCE, GOING_ON, MID_OPENERS, OPENERS, PHRASES, WORDS

Truths = NDArray[np.bool_]

SHORTEST, LONGEST = 4, 14  # words of one breath
AROUND_MS = 15_000
PAUSES = ((800, "pause"), (2500, "long pause"))
FACTS = {
    **dict.fromkeys(("dose", "water", "temperature", "time"), "fact of making"),
    **dict.fromkeys(("price", "net_weight"), "price"),
}
STOPS = frozenset(". , ? !".split())
SENTENCE_ENDS = frozenset(". ? ! ... …".split())
AT_ONCE_WORDS = 5
EARLY, FEW = 4, 3  # words of a breath
LEADS = OPENERS | {"and"}
TAGS = {
    "VBD": "past tense", "JJR": "comparative", "RBR": "comparative", "JJS": "superlative", "CD": "number",
    "NNP": "name",
}  # fmt: skip
SINCE = [(s * 1000, f"first {s} s") for s in (20, 40, 60, 90, 150)]
UNTIL = [(s * 1000, f"last {s} s") for s in (20, 40, 60, 90, 200)]
PARTS = [(part, f"after {part}") for part in (0.25, 0.5, 0.75)]
BEFORE = [(n, f"{n} or more before") for n in (1, 3, 5)]
AFTER = [(n, f"{n} or more after") for n in (1, 3, 5)]


def cut_breaths(hearing: Hearing) -> list[int]:
    """Where each breath begins, ending with the number of words; a section can only begin where a breath does."""
    cues = [word.cue for word in hearing.words]
    marked = {i for i, (before, now) in enumerate(pairwise(cues), 1) if now != before}
    marked.update(hearing.places(MID_OPENERS))
    cuts: list[int] = []
    for at in sorted(marked.union(start for start, _ in hearing.runs)):
        if not cuts or at in marked or at - cuts[-1] >= SHORTEST:
            cuts.append(at)
    return [at for start, end in pairwise([*cuts, len(cues)]) for at in range(start, end, LONGEST)] + [len(cues)]


def said_signs(hearing: Hearing) -> dict[str, list[int]]:
    """What the words say, and what the questions before have found in them: at which words each sign stands."""
    said = defaultdict(list, {sign: hearing.places(words) for sign, words in WORDS.items()})
    for sign, phrases in PHRASES.items():
        said[sign] += [i for phrase in phrases for i in _places_of_phrase(hearing, phrase)]
    for tag, sign in TAGS.items():
        said[sign] += hearing.tagged([tag])
    for i, sign in _found(hearing):
        said[sign].append(i)
    return said


def _places_of_phrase(hearing: Hearing, phrase: list[str]) -> list[int]:
    return [i for i in hearing.places(phrase[:1]) if hearing.meant[i : i + len(phrase)] == phrase]


def _found(hearing: Hearing) -> Iterator[tuple[int, str]]:
    yield from ((f.start, FACTS.get(f.kind, "fact")) for f in hearing.facts)
    yield from ((c.start, "comparison") for c in hearing.comparisons)
    yield from ((p.start, "ranking of all" if p.scope == "overall" else "preference") for p in hearing.preferences)
    yield from ((r.start, "reveal") for r in hearing.reveals)
    yield from ((m.start, "sample named" if len(m.samples) == 1 else "samples pointed at") for m in hearing.mentions)
    yield from ((p.description.start, f"perceived: {p.facet}") for p in hearing.perceptions)
    yield from ((p.description.start, "perceived by others") for p in hearing.perceptions if p.voice == "quoted")
    for (start, _), (before, now) in zip(hearing.runs[1:], pairwise(hearing.topics), strict=True):
        if now.sample != before.sample:
            yield start, "another sample"


def place_signs(hearing: Hearing, cuts: Sequence[int]) -> dict[str, Truths]:
    """Where each breath is in the talk, at which stage, how much is perceived around it: for each sign, in which."""
    words = hearing.words
    now = np.array([words[at].ms for at in cuts[:-1]])
    since, until = now - words[0].ms, words[-1].ms - now
    perceived = [words[p.description.start].ms for p in hearing.perceptions]
    before, here, after = (np.searchsorted(perceived, now + d) for d in (-AROUND_MS, 0, AROUND_MS))
    stages = np.array([f"stage {hearing.topics[hearing.run_of[at]].stage}" for at in cuts[:-1]])
    return {
        "always": np.ones(len(now), dtype=np.bool_),
        **{stage: stages == stage for stage in dict.fromkeys(stages.tolist())},
        **{name: since < ms for ms, name in SINCE},
        **{name: until < ms for ms, name in UNTIL},
        **{name: since / max(1, words[-1].ms - words[0].ms) > part for part, name in PARTS},
        **{name: here - before >= n for n, name in BEFORE},
        **{name: after - here >= n for n, name in AFTER},
    }


def opening_signs(hearing: Hearing, cuts: list[int]) -> Iterator[tuple[int, str]]:
    """The signs that a section begins with a breath: which breath, and the sign; none twice."""
    yield from _names_at_once(hearing, cuts)
    yield from _first_words(hearing, cuts)
    yield from _turns(hearing, cuts)


def _names_at_once(hearing: Hearing, cuts: list[int]) -> Iterable[tuple[int, str]]:
    """The samples named or pointed at within the first words of a breath."""
    breaths = [bisect_right(cuts, m.start) - 1 for m in hearing.mentions]
    return dict.fromkeys(
        (k, "names a sample" if m.kind in ("name", "ordinal") else f"points: {m.kind}")
        for k, m in zip(breaths, hearing.mentions, strict=True)
        if m.start < cuts[k] + AT_ONCE_WORDS
    )


def _first_words(hearing: Hearing, cuts: list[int]) -> Iterator[tuple[int, str]]:
    """What a breath opens with, and what is spoken of within its first words; punctuation is no word."""
    counted = np.ones(cuts[-1] + 1, dtype=np.intp)
    counted[[0, *(i + 1 for i in hearing.places(STOPS))]] = 0
    before = counted.cumsum()
    breaths = np.repeat(np.arange(len(cuts) - 1), np.diff(cuts)).tolist()
    ranks = (before[:-1] - before[cuts][breaths]).tolist()
    first = {breaths[i]: hearing.meant[i] for i in hearing.places(OPENERS | GOING_ON) if ranks[i] == 0}
    yield from ((k, f"opens with {norm}") for k, norm in first.items() if norm in OPENERS)
    yield from ((k, f"goes on with {norm}") for k, norm in first.items() if norm in GOING_ON)
    seconds = (breaths[i] for i in hearing.places(OPENERS) if ranks[i] == 1)
    yield from ((k, "two opening words") for k in seconds if first.get(k) in LEADS)
    yield from ((k, "short") for k in np.flatnonzero(np.diff(before[cuts]) <= FEW).tolist())
    for sign in AT_ONCE:
        said = {breaths[i] for i in hearing.places(AT_ONCE[sign]) if ranks[i] < EARLY}
        yield from ((k, f"{sign} at once") for k in said)


def _turns(hearing: Hearing, cuts: list[int]) -> Iterator[tuple[int, str]]:
    """What changes with the first word of a breath: the speaker, the cue, the run; and a silence before it."""
    for k, at in enumerate(cuts[:-1]):
        first, before = hearing.words[at], hearing.words[max(0, at - 1)]
        if first.pause:
            yield from ((k, name) for least, name in PAUSES if first.pause >= least)
        if first.speaker != before.speaker:
            yield k, "another speaker"
        if first.cue != before.cue:
            yield k, "another cue"
        if before.norm in SENTENCE_ENDS:
            yield k, "after a stop"
        now, then = hearing.run_of[at], hearing.run_of[max(0, at - 1)]
        if now != then:
            yield from ((k, sign) for sign in _turned(hearing.topics[then], hearing.topics[now]))


def _turned(then: Topic, now: Topic) -> Iterator[str]:
    if now.sample != then.sample:
        yield "another sample"
    if now.stage != then.stage:
        yield "another stage"
