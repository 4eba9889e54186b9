"""What is being done with the sample: looked at, smelled, or tasted? Decided over the whole recording (Viterbi).

A stage is held on to until words or descriptions speak for another: nobody announces every sip.
"""

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


def _ways(change: float) -> list[list[float]]:
    """What it is worth to come to each stage from each."""
    return [
        [0.0 if i == j else change + (ONWARD if i == j + 1 else 0.0) for j in range(len(STAGES))]
        for i in range(len(STAGES))
    ]


STEPS, STEPS_AFRESH = _ways(CHANGE), _ways(CHANGE + AFRESH)


def decide_stages(hearing: Hearing, runs: list[tuple[int, int]], samples: list[str | None]) -> list[Stage]:
    """The stage of every run."""
    if not runs:
        return []
    worths = _worths(hearing, len(runs))
    score, steps, settled = worths[0], list[list[int]](), False
    for k in range(1, len(runs)):
        same = samples[k] == samples[k - 1]
        quiet = same and not any(worths[k])
        if not (quiet and settled):  # where nothing is said twice in a row, the second step is as the first
            step, fresh = _step(score, worths[k], STEPS if same else STEPS_AFRESH)
            score, settled = fresh, quiet and fresh == score
        steps.append(step)
    chain = [score.index(max(score))]
    for step in reversed(steps):
        chain.append(step[chain[-1]])
    return [STAGES[i] for i in reversed(chain)]


def _step(score: list[float], worth: list[float], ways: list[list[float]]) -> tuple[list[int], list[float]]:
    """For every stage the best stage before it, and what the pair is worth."""
    step, fresh = [], []
    looked, smelled, tasted = score
    for (from_look, from_smell, from_taste), here in zip(ways, worth, strict=True):
        options = [looked + from_look, smelled + from_smell, tasted + from_taste]
        best = max(options)
        step.append(options.index(best))
        fresh.append(best + here)
    return step, fresh


def _worths(hearing: Hearing, count: int) -> list[list[float]]:
    """For every one of `count` runs, what its words and descriptions speak for."""
    worths = [[0.0] * len(STAGES) for _ in range(count)]
    for description in hearing.descriptions:
        _add_worth(hearing, description, worths[hearing.run_of[description.start]])
    for i in hearing.places(SIGNS):
        stage, worth = SIGNS[hearing.meant[i]]
        worths[hearing.run_of[i]][STAGES.index(stage)] += worth
    return worths


def _add_worth(hearing: Hearing, description: Description, worths: list[float]) -> None:
    """Add what a description speaks for to what its run does."""
    if description.label:
        facets = hearing.lexicon.concepts[description.label.concept].facets
        share = (0.4 if description.label.guarded else 1.0) / (1 if len(facets) == 1 else 1.5)
        for stage, worth in BY_FACET[facets[0]].items():
            worths[STAGES.index(stage)] += worth * share
