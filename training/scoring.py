"""How well notes agree with an annotation: pairs of like records, and what was right in them.

A term is found where a noted one stands in the annotated cue or within two seconds of it and shares its words; it is
right where sample, presence and voice are the annotator's too.
"""

import re
from collections import Counter
from collections.abc import Sequence
from typing import Any

import numpy as np

Record = dict[str, Any]
SLACK_S = 2.0
NO_END_S = 25.0  # how long a cue is taken to last whose end is not told
IDLE = frozenset("a an the of and or with to in on it its it's that this some any bit kind sort like very".split())
RIGHT = ("sample", "presence", "voice")
JUDGED = (*RIGHT, "facet", "intensity")


def tally(annotated: Sequence[Record], noted: Sequence[Record]) -> Counter[str]:
    """Counts of one recording: annotated, noted, found, right, and how many of the found are right in each field."""
    pairs = paired(annotated, noted)
    counts = Counter(annotated=len(annotated), noted=len(noted), found=len(pairs))
    counts["right"] = sum(all(a[field] == b[field] for field in RIGHT) for a, b in pairs)
    for field in JUDGED:
        counts[field] = sum(a[field] == b[field] for a, b in pairs)
    return counts


def f1(hits: int, noted: int, annotated: int) -> float:
    """The harmonic mean of precision and recall; 0 where there is nothing.

    >>> f1(6, 8, 12)
    0.6
    >>> f1(0, 0, 0)
    0.0
    """
    return 2 * hits / (noted + annotated) if noted + annotated else 0.0


def interval(tallies: Sequence[Counter[str]], hits: str, draws: int = 1000, seed: int = 7) -> tuple[float, float]:
    """The 95 % bootstrap interval of F1 over recordings (percentiles; Efron and Tibshirani 1993)."""
    table = np.array([[t[hits], t["noted"], t["annotated"]] for t in tallies])
    drawn = np.random.default_rng(seed).integers(len(table), size=(draws, len(table)))
    sums = table[drawn].sum(axis=1)
    scores = 2 * sums[:, 0] / np.maximum(1, sums[:, 1] + sums[:, 2])
    low, high = np.percentile(scores, [2.5, 97.5])
    return float(low), float(high)


def paired(annotated: Sequence[Record], noted: Sequence[Record]) -> list[tuple[Record, Record]]:
    """One to one, those first that agree in most, then those nearest in time."""
    alike = [
        (-sum(a[field] == b[field] for field in RIGHT), abs(a["start"] - b["start"]), i, j)
        for i, a in enumerate(annotated)
        for j, b in enumerate(noted)
        if _near(a, b) and _same_term(a["term"], b["term"])
    ]
    taken_a, taken_b, pairs = set(), set(), []
    for _, _, i, j in sorted(alike):
        if i not in taken_a and j not in taken_b:
            taken_a.add(i)
            taken_b.add(j)
            pairs.append((annotated[i], noted[j]))
    return pairs


def _near(a: Record, b: Record) -> bool:
    end = a.get("end") or a["start"] + NO_END_S
    return bool(a["start"] - SLACK_S <= b["start"] <= end + SLACK_S)


def _same_term(a: str, b: str) -> bool:
    """All words of one in the other, or half of all of them shared; forms of one word count as the same."""
    one, other = _words(a), _words(b)
    shared = sum(any(_same_word(x, y) for y in other) for x in one)
    return bool(one and other) and (shared >= min(len(one), len(other)) or 2 * shared >= len(one) + len(other) - shared)


def _words(text: str) -> list[str]:
    words = re.findall(r"\w+", text.lower())
    return [word for word in words if word not in IDLE] or words


def _same_word(a: str, b: str) -> bool:
    short, long = sorted((a, b), key=len)
    shared = next((k for k, (x, y) in enumerate(zip(short, long, strict=False)) if x != y), len(short))
    return a == b or (shared >= 3 and shared >= len(short) - 1 and len(long) - shared <= 4)
