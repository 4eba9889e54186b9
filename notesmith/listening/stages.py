"""What is being done with the sample: looked at, smelled, or tasted? Decided over the whole recording (Viterbi).

A stage is held on to until words or descriptions speak for another: nobody announces every sip.
"""

from collections.abc import Mapping

from notesmith.listening.hearing import Description, Hearing, Stage

STAGES: tuple[Stage, ...] = ("appearance", "aroma", "tasting")
CHANGE = -2.5
ONWARD = 1.0  # looking, then smelling, then tasting is the usual order
AFRESH = 1.5  # with another sample it may begin again
_SAID: tuple[tuple[Stage, float, str], ...] = (
    ("appearance", 2.0, "look looks looking colour color clarity dry-leaf"),
    ("aroma", 2.5, "nose smell smells smelling sniff sniffing nosing aroma"),
    ("tasting", 2.0, "taste tastes tasting sip sipping mouth palate drink drinking swallow swallowed bite slurp chew"),
    ("tasting", 2.0, "tongue cheers throat teeth gums gulp mouthful aftertaste finish"),
    ("tasting", 1.0, "mm mmm ooh mhm hmm"),
    ("appearance", 0.7, "liquor leaf leaves foam crema"),
)
SIGNS = {word: (stage, worth) for stage, worth, words in _SAID for word in words.split()}
BY_FACET: dict[str, dict[Stage, float]] = {
    "appearance": {"appearance": 2.0},
    "aroma": {"appearance": -1.5},
    "flavour": {"appearance": -1.5, "tasting": 0.1},
    "mouthfeel": {"tasting": 1.0},
    "finish": {"tasting": 1.5},
    "overall": {"tasting": 0.2},
}


def decide_stages(hearing: Hearing, runs: list[tuple[int, int]], samples: list[str | None]) -> list[Stage]:
    """The stage of every run."""
    if not runs:
        return []
    worths = _worths(hearing, runs)
    score, steps = worths[0], []
    for k in range(1, len(runs)):
        step, score = _step(score, worths[k], AFRESH if samples[k] != samples[k - 1] else 0.0)
        steps.append(step)
    chain = [max(STAGES, key=lambda stage: score[stage])]
    for step in reversed(steps):
        chain.append(step[chain[-1]])
    return chain[::-1]


def _step(
    score: Mapping[Stage, float], worth: Mapping[Stage, float], afresh: float
) -> tuple[dict[Stage, Stage], dict[Stage, float]]:
    """For every stage the best stage before it, and what the pair is worth."""
    step: dict[Stage, Stage] = {}
    fresh: dict[Stage, float] = {}
    for i, now in enumerate(STAGES):
        options = {
            before: score[before] + (0.0 if before == now else CHANGE + afresh + (ONWARD if i == j + 1 else 0.0))
            for j, before in enumerate(STAGES)
        }
        step[now] = max(options, key=lambda stage: options[stage])
        fresh[now] = options[step[now]] + worth[now]
    return step, fresh


def _worths(hearing: Hearing, runs: list[tuple[int, int]]) -> list[dict[Stage, float]]:
    """For every run, what its words and descriptions speak for."""
    worths: list[dict[Stage, float]] = [dict.fromkeys(STAGES, 0.0) for _ in runs]
    k = 0
    for description in hearing.descriptions:
        while runs[k][1] <= description.start:
            k += 1
        for stage, worth in _description_worth(hearing, description).items():
            worths[k][stage] += worth
    for k, (start, end) in enumerate(runs):
        for word in hearing.words[start:end]:
            if word.norm in SIGNS:
                stage, worth = SIGNS[word.norm]
                worths[k][stage] += worth
    return worths


def _description_worth(hearing: Hearing, description: Description) -> Mapping[Stage, float]:
    if description.label is None:
        return {}
    facets = hearing.lexicon.concepts[description.label.concept].facets
    worth = BY_FACET[facets[0]]
    share = (0.4 if description.label.guarded else 1.0) / (1 if len(facets) == 1 else 1.5)
    return {stage: value * share for stage, value in worth.items()}
