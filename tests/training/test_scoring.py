"""How notes are scored against an annotation."""

from collections import Counter

import pytest

from training.scoring import Record, f1, interval, tally


def said(term: str, start: float = 10.0, sample: str | None = "A", presence: str = "present", **other: str) -> Record:
    """A perception of a cue of four seconds."""
    record = {"term": term, "start": start, "end": start + 4, "sample": sample, "presence": presence, "voice": "taster"}
    return {**record, "facet": "flavour", "intensity": None, **other}


def test_nothing_agrees_with_nothing() -> None:
    """Empty input first."""
    assert tally([], []) == Counter(annotated=0, noted=0, found=0, right=0)


@pytest.mark.parametrize(
    ("noted", "found", "right"),
    [
        (said("smoky"), 1, 1),
        (said("a smoky"), 1, 1),  # idle words do not count
        (said("smoke"), 1, 1),  # another form of the word
        (said("smoky", start=15.5), 1, 1),  # a second and a half after the cue
        (said("smoky", start=17), 0, 0),
        (said("salty"), 0, 0),
        (said("smoky", sample="B"), 1, 0),
        (said("smoky", presence="absent"), 1, 0),
        (said("smoky", voice="quoted"), 1, 0),
        (said("smoky", facet="aroma"), 1, 1),
    ],
)
def test_one_term(noted: Record, found: int, right: int) -> None:
    """A term is found by its words and its time; it is right with sample, presence and voice."""
    counts = tally([said("smoky")], [noted])
    assert (counts["found"], counts["right"]) == (found, right)


def test_a_pair_is_made_once_and_best_first() -> None:
    """Of two like notes the one that agrees in more is paired, and the other is too many."""
    counts = tally([said("smoky")], [said("smoky", sample="B"), said("smoky")])
    assert (counts["noted"], counts["found"], counts["right"]) == (2, 1, 1)


def test_precision_and_recall_by_hand() -> None:
    """Three of four noted are right and three of six annotated are found: P 0.75, R 0.5, F1 0.6."""
    assert f1(3, 4, 6) == pytest.approx(2 * 0.75 * 0.5 / (0.75 + 0.5))


def test_the_interval_holds_the_score_and_does_not_change() -> None:
    """All recordings alike leave no doubt; unlike ones do, and the same seed draws the same."""
    alike = [Counter(annotated=10, noted=10, right=5)] * 8
    unlike = [Counter(annotated=10, noted=10, right=right) for right in (1, 9, 2, 8, 5, 5, 4, 6)]
    low, high = interval(unlike, "right")
    assert interval(alike, "right") == (0.5, 0.5)
    assert low < 0.5 < high
    assert interval(unlike, "right") == (low, high)
