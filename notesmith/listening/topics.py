"""What is the talk about just now: which sample, which preparation, which stage?

Decided over the whole recording at once (Viterbi): every run of words would rather be about what the run before it was
about, naming a sample pulls towards it, and a sample only likened to (`than the left`) does not pull at all.
"""

from collections import defaultdict

from notesmith.listening.hearing import Hearing, Mention, Stage, Topic, Word
from notesmith.listening.names import tokens_of
from notesmith.listening.vocabulary import BE

SWITCH = 3.0  # what it costs to change the sample from one run to the next
NAMED, NAMED_TOGETHER = 5.0, 1.0
OTHER = 3.5
ASIDE_BEFORE = frozenset("than unlike versus vs like as to from with beside against between".split())
VERBS = BE | frozenset("has had have does did goes went gets got tastes tasted smells smelled looks looked seems felt feels comes "
                       "came starts wins won would 'd".split())  # fmt: skip
GLANCES = frozenset("whereas while unlike".split())
STAGE_SIGNS: dict[str, Stage] = {
    **dict.fromkeys("look looks looking colour color pour poured pouring dry-leaf leaf clarity".split(), "appearance"),
    **dict.fromkeys("nose smell smells smelling smelled sniff nosing aroma aromas".split(), "aroma"),
    **dict.fromkeys("taste tastes tasting tasted sip sipping mouth palate drink drinking swallow swallowed bite biting "
                    "slurp chew tongue cheers".split(), "tasting"),  # fmt: skip
    **dict.fromkeys("aftertaste finish".split(), "finish"),
}  # fmt: skip


def decide_topics(hearing: Hearing) -> None:
    """Cut the talk into runs and decide for each its sample, its preparation and its stage."""
    runs = _runs(hearing)
    mentions = _by_run(hearing, runs)
    samples = _decide_samples(hearing, runs, mentions)
    preparations = _preparations(hearing, runs)
    stages = _stages(hearing, runs)
    hearing.runs = runs
    hearing.run_of = [k for k, (start, end) in enumerate(runs) for _ in range(start, end)]
    hearing.topics = [
        Topic(sample, preparation, stage, rule=rule)
        for (sample, rule), preparation, stage in zip(samples, preparations, stages, strict=True)
    ]


def _runs(hearing: Hearing) -> list[tuple[int, int]]:
    """Clauses, cut again where a sample is named as the subject of what follows."""
    cuts = {clause.start for clause in hearing.clauses}
    for mention in hearing.mentions:
        after = hearing.words[mention.end].norm if mention.end < len(hearing.words) else ""
        if mention.samples and after in VERBS and not _is_aside(hearing.words, mention):
            start = mention.start
            while start > 0 and hearing.words[start - 1].norm in ("the", "and", "but", "whereas", "while", "then", "so"):
                start -= 1
            cuts.add(start)
    ordered = [*sorted(cuts), len(hearing.words)]
    return [(a, b) for a, b in zip(ordered, ordered[1:], strict=False) if b > a]


def _by_run(hearing: Hearing, runs: list[tuple[int, int]]) -> list[list[Mention]]:
    found: list[list[Mention]] = [[] for _ in runs]
    k = 0
    for mention in hearing.mentions:
        while runs[k][1] <= mention.start:
            k += 1
        found[k].append(mention)
    return found


def _is_aside(words: list[Word], mention: Mention) -> bool:
    """Whether the sample is only what another is set beside (`than the left`, `compared to Monday`)."""
    i = mention.start - 1
    while i >= 0 and words[i].norm in ("the", "a", "that", "number", "cup", "of", "both"):
        i -= 1
    if i < 0 or words[i].norm not in ASIDE_BEFORE:
        return False
    if words[i].norm in ("to", "from", "with"):
        return i > 0 and words[i - 1].norm in ("compared", "similar", "close", "closer", "next", "different", "comparing", "same", "up")
    return True


def _decide_samples(
    hearing: Hearing, runs: list[tuple[int, int]], mentions: list[list[Mention]]
) -> list[tuple[str | None, str]]:
    """The best chain of samples over all runs; a glance at another sample changes its own run only."""
    ids = [s.id for s in hearing.sheet.samples]
    if not ids:
        return [(None, "no samples")] * len(runs)
    glances: dict[int, str] = {}
    pulls: list[dict[str, float]] = []
    others: list[bool] = []
    for k, (start, _) in enumerate(runs):
        named = [m for m in mentions[k] if len(m.samples) == 1 and not _is_aside(hearing.words, m)]
        distinct = list(dict.fromkeys(m.samples[0] for m in named))
        pull: dict[str, float] = defaultdict(float)
        if len(distinct) == 1 and hearing.words[start].norm in GLANCES:
            glances[k] = distinct[0]
        elif len(distinct) == 1:
            pull[distinct[0]] = NAMED * max(m.score for m in named)
        else:
            for sample in distinct:
                pull[sample] = NAMED_TOGETHER
            if distinct:
                pull[distinct[-1]] += NAMED_TOGETHER / 2
        pulls.append(pull)
        others.append(any(m.kind == "other" for m in mentions[k]) and not distinct)
    chain = _best_chain(ids, pulls, others)
    return [
        (glances[k], "glanced at") if k in glances else (chain[k], "named here" if pulls[k].get(chain[k]) else "named before")
        for k in range(len(runs))
    ]


def _best_chain(ids: list[str], pulls: list[dict[str, float]], others: list[bool]) -> list[str]:
    """Viterbi over the runs: `pulls` reward a sample, changing it costs, `the other` rewards changing."""
    score = {s: 0.0 for s in ids}
    back: list[dict[str, str]] = []
    for pull, other in zip(pulls, others, strict=True):
        if not pull and not other:
            back.append({})
            continue
        best = max(ids, key=lambda s: score[s])
        step, fresh = {}, {}
        for s in ids:
            stay = score[s] - (OTHER if other else 0.0)
            rival = best if best != s else max((x for x in ids if x != s), key=lambda x: score[x], default=s)
            move = score[rival] - SWITCH + (OTHER if other else 0.0)
            step[s] = s if stay >= move else rival
            fresh[s] = max(stay, move) + pull.get(s, 0.0)
        score = fresh
        back.append(step)
    state = max(ids, key=lambda s: score[s])
    chain = []
    for step in reversed(back):
        chain.append(state)
        state = step.get(state, state)
    return chain[::-1]


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
    longest = max(len(n) for n in names)
    for start, end in runs:
        norms = [w.norm for w in hearing.words[start:end]]
        for i in range(len(norms)):
            for size in range(min(longest, len(norms) - i), 0, -1):
                if tuple(norms[i : i + size]) in names:
                    current = names[tuple(norms[i : i + size])]
                    break
        found.append(current)
    return found


def _stages(hearing: Hearing, runs: list[tuple[int, int]]) -> list[Stage | None]:
    """What is being done with the sample: the last sign of looking, smelling or tasting."""
    current: Stage | None = None
    found: list[Stage | None] = []
    for start, end in runs:
        for word in hearing.words[start:end]:
            current = STAGE_SIGNS.get(word.norm, current)
        found.append(current)
        if current == "finish":
            current = "tasting"
    return found
