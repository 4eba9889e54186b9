"""What is the talk about just now: which sample, which preparation, which stage?

Decided over the whole recording at once (Viterbi): every run of words would rather be about what the run before it was
about, naming a sample pulls towards it, and a sample only likened to (`than the left`) does not pull at all.
"""

from collections.abc import Mapping
from itertools import pairwise

from notesmith.listening.chain import best_chain
from notesmith.listening.facets import AROMA_SIGNS
from notesmith.listening.hearing import Description, Hearing, Mention, Topic
from notesmith.listening.names import tokens_of
from notesmith.listening.pointing import Signs, heads, read_signs
from notesmith.listening.stages import decide_stages

LEADING = frozenset("the and but whereas while then so okay now".split())


def decide_topics(hearing: Hearing) -> None:
    """Cut the talk into runs and decide for each its sample, its preparation and its stage."""
    runs = _runs(hearing)
    mentions = _by_run(hearing, runs)
    samples = _decide_samples(hearing, runs, mentions)
    stages = decide_stages(hearing, runs, [sample for sample, _ in samples])
    preparations = _preparations(hearing, runs)
    hearing.runs = runs
    hearing.run_of = [k for k, (start, end) in enumerate(runs) for _ in range(start, end)]
    hearing.topics = [
        Topic(sample, preparation, stage, rule=rule)
        for (sample, rule), preparation, stage in zip(samples, preparations, stages, strict=True)
    ]


def _runs(hearing: Hearing) -> list[tuple[int, int]]:
    """Clauses, cut again where a sample is named at the head of what follows (`Left is …`, `ten light brown …`)."""
    words = hearing.words
    cuts = {clause.start for clause in hearing.clauses}
    for mention in hearing.mentions:
        if len(mention.samples) == 1 and heads(words, mention):
            start = mention.start
            while start > 0 and words[start - 1].norm in LEADING:
                start -= 1
            cuts.add(start)
    ordered = [*sorted(cuts), len(words)]
    return [(a, b) for a, b in pairwise(ordered) if b > a]


def _by_run(hearing: Hearing, runs: list[tuple[int, int]]) -> list[list[Mention]]:
    found: list[list[Mention]] = [[] for _ in runs]
    k = 0
    for mention in hearing.mentions:
        while runs[k][1] <= mention.start:
            k += 1
        found[k].append(mention)
    return found


def _decide_samples(
    hearing: Hearing, runs: list[tuple[int, int]], mentions: list[list[Mention]]
) -> list[tuple[str | None, str]]:
    """The best chain of samples over all runs; a glance at another sample changes its own run only."""
    ids = tuple(s.id for s in hearing.sheet.samples)
    if not ids:
        return [(None, "no samples")] * len(runs)
    signs = _gather_signs(hearing, runs, mentions)
    chain = best_chain(ids, signs)
    return [_settled(sign, sample) for sign, sample in zip(signs, chain, strict=True)]


def _settled(sign: Signs, sample: str | None) -> tuple[str | None, str]:
    """A run's sample: the chain's, unless the run itself names another as what it is about."""
    if sign.glance and sign.glance != sample:
        return sign.glance, "glanced at"
    if sign.outside:
        return None, f"outside: {sign.outside}"
    return sample, "named here" if sample in sign.pulls else "named before"


def _gather_signs(hearing: Hearing, runs: list[tuple[int, int]], mentions: list[list[Mention]]) -> list[Signs]:
    """The signs of every run; a look or a sniff after a taste is a sign that another sample is taken up."""
    sides = _sides(hearing, runs)
    signs, tasted = [], False
    for k, run in enumerate(runs):
        restarts = tasted and sides[k] in ("appearance", "aroma")
        if sides[k]:
            tasted = sides[k] not in ("appearance", "aroma")
        signs.append(read_signs(hearing, run, mentions[k], restarts=restarts))
    return signs


def _sides(hearing: Hearing, runs: list[tuple[int, int]]) -> list[str]:
    """The side of the sample that each run describes, as far as its words tell; empty where it describes none."""
    sides, k = [""] * len(runs), 0
    for description in hearing.descriptions:
        while runs[k][1] <= description.start:
            k += 1
        if not sides[k]:
            sides[k] = _side(hearing, description, runs[k])
    return sides


def _side(hearing: Hearing, description: Description, run: tuple[int, int]) -> str:
    norms = {w.norm for w in hearing.words[run[0] : run[1]]}
    if norms & AROMA_SIGNS:
        return "aroma"
    if description.label is None:
        return "flavour"
    facets = hearing.lexicon.concepts[description.label.concept].facets
    return facets[0] if facets[0] == "appearance" and not description.label.guarded else "flavour"


def _preparations(hearing: Hearing, runs: list[tuple[int, int]]) -> list[str | None]:
    """The preparation last named, where the sheet lists several."""
    names: dict[tuple[str, ...], str] = {}
    for preparation in hearing.sheet.preparations:
        for text in (preparation.id, *preparation.aliases):
            names[tokens_of(text)] = preparation.id
    if not names:
        return [None] * len(runs)
    current: str | None = None
    found: list[str | None] = []
    for start, end in runs:
        named = _last_named([w.norm for w in hearing.words[start:end]], names)
        current = named or current
        found.append(current)
    return found


def _last_named(norms: list[str], names: Mapping[tuple[str, ...], str]) -> str | None:
    """The name that stands last among the words, the longest where several begin at one word."""
    longest = max(len(name) for name in names)
    for i in range(len(norms) - 1, -1, -1):
        for size in range(min(longest, len(norms) - i), 0, -1):
            if tuple(norms[i : i + size]) in names:
                return names[tuple(norms[i : i + size])]
    return None
