"""The best chain of samples over a whole recording, from the signs of its runs (Viterbi)."""

from collections.abc import Mapping, Sequence

from notesmith.listening.pointing import Signs

WEIGHTS: dict[str, float] = {
    "change": -0.9, "unnamed": -4.5, "nothing": -3.4, "start with the first": 0.3, "to the next in order": 1.2,
    "other: stay": 0.6, "other: change": -0.6, "the next one": 2.3, "that one": 1.9, "this one": 1.8,
    "moving word other": 1.7, "moving word last": 1.5, "subject": 1.3, "named alone": 1.2, "moving word first": 1.1,
    "moving word next": 1.0, "opening word": 0.9, "moving word back": 0.9, "name surely": 0.8,
    "moving word try": 0.7, "name perhaps": 0.7, "last of several": 0.6, "long pause": 0.5,
    "introduced together": -0.3, "named in passing": -0.5, "subject of the past": -0.6,
    "predicate of the past": -0.8, "ordinal perhaps": -0.8, "set beside": -1.9,
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
    elif states[now] not in sign.pulls and not sign.other:
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
        move = leaving + (weights["nothing"] if state is None else 0.0 if sign.other or state in sign.pulls else weights["unnamed"])
        best, worth = now, score[now] + stay
        for before, value in enumerate(score):
            if before != now:
                moved = value + move + (in_order if before == now - 1 and state is not None else 0.0)
                if moved > worth:
                    best, worth = before, moved
        steps.append(best)
        fresh.append(worth)
    return steps, fresh
