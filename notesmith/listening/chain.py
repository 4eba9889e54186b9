"""The best chain of samples over a whole recording, from the signs of its runs (Viterbi)."""

from collections.abc import Mapping, Sequence

from notesmith.listening.pointing import Signs

WEIGHTS: dict[str, float] = {
    "change": -4.0, "other: stay": -2.0, "other: change": 1.5, "to the next in order": 1.0, "unnamed": -2.0,
    "start with the first": 0.5, "nothing": -3.0,
    "name surely": 1.0, "name perhaps": 0.0, "ordinal perhaps": 0.0,
    "named alone": 4.0, "named first": 4.0, "subject": 4.0, "subject of the past": 1.5, "predicate": 3.0, "predicate of the past": 1.0,
    "after a preposition": 1.5, "named in passing": 2.0, "in a row of names": 0.5, "among several": 1.0, "last of several": 0.5,
    "set beside": -1.0, "the next one": 3.0, "this one": 0.5, "looking or smelling again": 1.0, "long pause": 0.5,
}  # fmt: skip


def best_chain(
    states: Sequence[str | None], signs: Sequence[Signs], weights: Mapping[str, float] = WEIGHTS,
    allowed: Mapping[int, str | None] | None = None,
) -> list[str | None]:
    """The sample of every run. `states` are the samples in their order and None for none of them.

    `allowed` holds runs to a known sample; it serves for fitting the weights.
    """
    count = len(states)
    score = [weights["nothing"] if s is None else (weights["start with the first"] if k == 0 else 0.0) for k, s in enumerate(states)]
    back: list[list[int] | None] = []
    for r, sign in enumerate(signs):
        if allowed is not None and r in allowed:
            score = [v if states[k] == allowed[r] else v - 1e6 for k, v in enumerate(score)]
        if r:
            step, score = _step(states, score, sign, weights)
            back.append(step)
        else:
            back.append(None)
        for sample, ways in sign.pulls.items():
            score[states.index(sample)] += sum(weights.get(w, 0.0) for w in ways)
        if allowed is not None and r in allowed:
            score = [v if states[k] == allowed[r] else v - 1e6 for k, v in enumerate(score)]
    state = max(range(count), key=lambda k: score[k])
    chain = []
    for steps in reversed(back):
        chain.append(state)
        state = steps[state] if steps else state
    return [states[k] for k in reversed(chain)]


def change_signs(states: Sequence[str | None], before: int, now: int, sign: Signs) -> list[str]:
    """The names of the weights that going from one state to another is worth."""
    if before == now:
        return ["other: stay"] if sign.other else []
    found = _leaving(sign)
    if states[now] is None:
        found.append("nothing")
    elif states[now] not in sign.pulls:
        found.append("unnamed")
    if now == before + 1 and states[now] is not None:
        found.append("to the next in order")
    return found


def _leaving(sign: Signs) -> list[str]:
    """What changing the sample is worth in a run, whichever it changes to."""
    return ["change", *sign.changes, *(["other: change"] if sign.other else [])]


def _step(
    states: Sequence[str | None], score: list[float], sign: Signs, weights: Mapping[str, float]
) -> tuple[list[int], list[float]]:
    """For every state the best state before it, and what the pair is worth."""
    leaving = sum(weights.get(w, 0.0) for w in _leaving(sign))
    stay = weights["other: stay"] if sign.other else 0.0
    in_order = weights["to the next in order"]
    steps, fresh = [], []
    for now, state in enumerate(states):
        move = leaving + (weights["nothing"] if state is None else 0.0 if state in sign.pulls else weights["unnamed"])
        best, worth = now, score[now] + stay
        for before, value in enumerate(score):
            if before != now:
                moved = value + move + (in_order if before == now - 1 and state is not None else 0.0)
                if moved > worth:
                    best, worth = before, moved
        steps.append(best)
        fresh.append(worth)
    return steps, fresh
