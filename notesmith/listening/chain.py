"""The best chain of samples over a whole recording, from the signs of its runs (Viterbi)."""

from collections.abc import Iterable, Sequence

from notesmith.listening.pointing import Signs

WEIGHTS: dict[str, float] = {
    "change": -0.7, "unnamed": -4.8, "start with the first": 0.7, "to the next in order": 1.2,
    "other: stay": 0.2, "other: change": -0.2, "the next one": 2.8, "moving word other": 1.4, "named alone": 1.3,
    "this one": 1.2, "moving word first": 1.2, "long pause": 1.1, "name surely": 1.0, "subject": 0.9,
    "moving word next": 0.9, "opening word": 0.8, "name perhaps": 0.6, "moving word back": 0.5,
    "last of several": 0.4, "among several": 0.4, "named first": 0.3, "another speaker": 0.3,
    "after a preposition": 0.2, "predicate of the past": -0.2, "named in passing": -0.2, "subject of the past": -0.4,
    "moving word try": -0.4, "looking or smelling again": -0.4, "predicate": -0.5, "that one": -0.8,
    "moving word last": -1.0, "set beside": -2.0,
}  # fmt: skip


def best_chain(states: Sequence[str], signs: Sequence[Signs]) -> list[str]:
    """The sample of every run; `states` are the samples in their order."""
    if not signs:
        return []
    score = [WEIGHTS["start with the first"], *[0.0] * (len(states) - 1)]
    back: list[list[int]] = []
    steps, settled = list[int](), False
    for r, sign in enumerate(signs):
        quiet = not (sign.pulls or sign.changes or sign.other)
        if r and not (quiet and settled):  # where nothing is said twice in a row, the second step is as the first
            steps, fresh = _step(states, score, sign)
            score, settled = fresh, quiet and fresh == score
        if r:
            back.append(steps)
        for sample, ways in sign.pulls.items():
            score[states.index(sample)] += _worth(ways)
    chain = [max(range(len(states)), key=lambda k: score[k])]
    for steps in reversed(back):
        chain.append(steps[chain[-1]])
    return [states[k] for k in reversed(chain)]


def _worth(ways: Iterable[str]) -> float:
    return sum([WEIGHTS.get(way, 0.0) for way in ways])


def _leaving(sign: Signs) -> list[str]:
    """What changing the sample is worth in a run, whichever it changes to."""
    return ["change", *sign.changes, *(["other: change"] if sign.other else [])]


def _step(states: Sequence[str], score: list[float], sign: Signs) -> tuple[list[int], list[float]]:
    """For every state the best state before it, and what the pair is worth."""
    leaving = _worth(_leaving(sign)) if sign.changes or sign.other else WEIGHTS["change"]
    stay = WEIGHTS["other: stay"] if sign.other else 0.0
    steps, fresh = [], []
    for now, state in enumerate(states):
        move = leaving + (0.0 if sign.other or state in sign.pulls else WEIGHTS["unnamed"])
        worths = [value + move for value in score]
        worths[now] = score[now] + stay
        if now:
            worths[now - 1] = score[now - 1] + (move + WEIGHTS["to the next in order"])
        worth = max(worths)
        steps.append(now if worths[now] == worth else worths.index(worth))
        fresh.append(worth)
    return steps, fresh
