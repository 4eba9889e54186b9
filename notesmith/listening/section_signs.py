"""What speaks for one kind of section rather than another, breath by breath: a breath is a few words said in one go.

Signs of what is said and found count within a few seconds of where they stand; signs of place for their breath alone.
"""

from bisect import bisect_left
from collections.abc import Iterator, Sequence
from itertools import pairwise

from notesmith.listening.hearing import Hearing
from notesmith.listening.section_words import AT_ONCE, GOING_ON, MID_OPENERS, OPENERS, PHRASES, SIGNS_OF

SHORTEST, LONGEST = 4, 14  # words of one breath
AROUND_MS = 15_000
PAUSES = ((800, "pause"), (2500, "long pause"))
FACTS = {
    **dict.fromkeys(("dose", "water", "temperature", "time"), "fact of making"),
    **dict.fromkeys(("price", "net_weight"), "price"),
}
STOPS = frozenset(". , ? !".split())
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
    words = hearing.words
    marked = {i for i, w in enumerate(words) if w.norm in MID_OPENERS or (i and w.cue != words[i - 1].cue)}
    cuts: list[int] = []
    for at in sorted(marked.union(start for start, _ in hearing.runs)):
        if not cuts or at in marked or at - cuts[-1] >= SHORTEST:
            cuts.append(at)
    return [at for start, end in pairwise([*cuts, len(words)]) for at in range(start, end, LONGEST)] + [len(words)]


def said_signs(hearing: Hearing) -> Iterator[tuple[int, str]]:
    """What the words say, and what the questions before have found in them: at which word, and the sign."""
    norms = [w.norm for w in hearing.words]
    for i, norm in enumerate(norms):
        for phrase, signs in PHRASES.get(norm, ()):
            if len(phrase) == 1 or phrase == norms[i : i + len(phrase)]:
                yield from ((i, sign) for sign in signs)
    yield from ((i, TAGS[w.tag]) for i, w in enumerate(hearing.words) if w.tag in TAGS)
    yield from _found(hearing)


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


def place_signs(hearing: Hearing, cuts: Sequence[int]) -> list[list[str]]:
    """For every breath, where in the recording it is, at which stage, and how much is perceived before and after it."""
    words = hearing.words
    first, last = words[0].ms, words[-1].ms
    perceived = [words[p.description.start].ms for p in hearing.perceptions]
    signs = []
    for at in cuts[:-1]:
        now = words[at].ms
        before, here, after = (bisect_left(perceived, now + d) for d in (-AROUND_MS, 0, AROUND_MS))
        share = (now - first) / max(1, last - first)
        found = ["always", f"stage {hearing.topics[hearing.run_of[at]].stage}"]
        found += [name for ms, name in SINCE if now - first < ms]
        found += [name for ms, name in UNTIL if last - now < ms]
        found += [name for part, name in PARTS if share > part]
        found += [name for n, name in BEFORE if here - before >= n]
        found += [name for n, name in AFTER if after - here >= n]
        signs.append(found)
    return signs


def opening_signs(hearing: Hearing, cuts: list[int]) -> list[list[str]]:
    """For every breath, the signs that a section begins with it."""
    starts = [m.start for m in hearing.mentions]
    signs = []
    for start, end in pairwise(cuts):
        near = hearing.mentions[bisect_left(starts, start) : bisect_left(starts, min(end, start + 5))]
        at_once = ["names a sample" if m.kind in ("name", "ordinal") else f"points: {m.kind}" for m in near]
        words = [w.norm for w in hearing.words[start:end] if w.norm not in STOPS]
        signs.append([*_first_words(words), *_turns(hearing, start), *sorted(set(at_once))])
    return signs


def _first_words(norms: list[str]) -> Iterator[str]:
    if norms and norms[0] in OPENERS:
        yield f"opens with {norms[0]}"
    if len(norms) > 1 and norms[0] in OPENERS | {"and"} and norms[1] in OPENERS:
        yield "two opening words"
    if norms and norms[0] in GOING_ON:
        yield f"goes on with {norms[0]}"
    if len(norms) <= 3:
        yield "short"
    said = {sign for n in norms[:4] for sign in SIGNS_OF.get(n, ())}
    yield from (f"{sign} at once" for sign in AT_ONCE if sign in said)


def _turns(hearing: Hearing, start: int) -> Iterator[str]:
    """What changes with the word at `start`: the speaker, the cue, the sample, the stage; and a silence before it."""
    first, before = hearing.words[start], hearing.words[max(0, start - 1)]
    yield from (name for least, name in PAUSES if first.pause >= least)
    if first.speaker != before.speaker:
        yield "another speaker"
    if first.cue != before.cue:
        yield "another cue"
    if before.norm in (".", "?", "!", "...", "…"):
        yield "after a stop"
    now, then = (hearing.topics[hearing.run_of[i]] for i in (start, max(0, start - 1)))
    if now.sample != then.sample:
        yield "another sample"
    if now.stage != then.stage:
        yield "another stage"
