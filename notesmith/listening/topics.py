"""What is the talk about just now: which sample, which preparation, which stage?

Decided over the whole recording at once (Viterbi): every run of words would rather be about what the run before it was
about, naming a sample pulls towards it, and a sample only likened to (`than the left`) does not pull at all.
"""

from itertools import pairwise

from notesmith.listening.chain import best_chain
from notesmith.listening.facets import AROMA_SIGNS
from notesmith.listening.hearing import Description, Hearing, Mention, Topic
from notesmith.listening.pointing import Signs, heads, read_signs
from notesmith.listening.preparing import named_preparations
from notesmith.listening.stages import decide_stages

LEADING = frozenset("the and but whereas while then so okay now".split())


def decide_topics(hearing: Hearing) -> None:
    """Cut the talk into runs and decide for each its sample, its preparation and its stage."""
    runs = hearing.runs = _runs(hearing)
    hearing.run_of = [k for k, (start, end) in enumerate(runs) for _ in range(start, end)]
    samples = _decide_samples(hearing, _by_run(hearing))
    stages = decide_stages(hearing, runs, [sample for sample, _ in samples])
    preparations = _preparations(hearing)
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


def _by_run(hearing: Hearing) -> list[list[Mention]]:
    found: list[list[Mention]] = [[] for _ in hearing.runs]
    for mention in hearing.mentions:
        found[hearing.run_of[mention.start]].append(mention)
    return found


def _decide_samples(hearing: Hearing, mentions: list[list[Mention]]) -> list[tuple[str | None, str]]:
    """The best chain of samples over all runs; a glance at another sample changes its own run only."""
    ids = tuple(s.id for s in hearing.sheet.samples)
    if not ids:
        return [(None, "no samples")] * len(hearing.runs)
    signs = _gather_signs(hearing, mentions)
    chain = best_chain(ids, signs)
    return [_settled(sign, sample) for sign, sample in zip(signs, chain, strict=True)]


def _settled(sign: Signs, sample: str | None) -> tuple[str | None, str]:
    """A run's sample: the chain's, unless the run itself names another as what it is about."""
    if sign.glance and sign.glance != sample:
        return sign.glance, "glanced at"
    if sign.outside:
        return None, f"outside: {sign.outside}"
    return sample, "named here" if sample in sign.pulls else "named before"


def _gather_signs(hearing: Hearing, mentions: list[list[Mention]]) -> list[Signs]:
    """The signs of every run; a look or a sniff after a taste is a sign that another sample is taken up."""
    sides = _sides(hearing)
    signs, tasted = [], False
    for k, run in enumerate(hearing.runs):
        restarts = tasted and sides[k] in ("appearance", "aroma")
        if sides[k]:
            tasted = sides[k] not in ("appearance", "aroma")
        signs.append(read_signs(hearing, run, mentions[k], restarts=restarts))
    return signs


def _sides(hearing: Hearing) -> list[str]:
    """The side of the sample that each run describes, as far as its words tell; empty where it describes none."""
    sides = [""] * len(hearing.runs)
    smelled = {hearing.run_of[i] for i in hearing.places(AROMA_SIGNS)}
    for description in hearing.descriptions:
        k = hearing.run_of[description.start]
        sides[k] = sides[k] or ("aroma" if k in smelled else _side(hearing, description))
    return sides


def _side(hearing: Hearing, description: Description) -> str:
    if description.label is None:
        return "flavour"
    facets = hearing.lexicon.concepts[description.label.concept].facets
    return facets[0] if facets[0] == "appearance" and not description.label.guarded else "flavour"


def _preparations(hearing: Hearing) -> list[str | None]:
    """The preparation last named, where the sheet lists several."""
    ids = [preparation.id for preparation in hearing.sheet.preparations]
    named = {hearing.run_of[at]: ids[slot - 1] for at, slot in named_preparations(hearing)}  # by run, the last one
    current: str | None = None
    return [current := named.get(k, current) for k in range(len(hearing.runs))]
