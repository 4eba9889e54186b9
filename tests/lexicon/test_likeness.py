"""Which concepts are offered for words the lexicon lacks, and which words stay open."""

import tomllib
from pathlib import Path
from typing import Any

import pytest

from notesmith.lexicon import Lexicon
from notesmith.lexicon.likeness import OFFERED, THRESHOLD, Likenesses, likeness

CASES = tomllib.loads((Path(__file__).parents[1] / "cases" / "lexicon" / "nearest.toml").read_text("utf-8"))["case"]


@pytest.fixture(scope="module")
def ours() -> Likenesses:
    """Our own lexicon, ready to be asked."""
    return Likenesses(Lexicon.load())


@pytest.mark.parametrize("case", CASES, ids=lambda case: case["name"])
def test_the_nearest_concept_is_offered_or_none(case: dict[str, Any], ours: Likenesses) -> None:
    """A misprint finds its concept; a far-fetched likeness stays open."""
    assert [near.concept for near in ours.nearest(case["words"])[:1]] == [case[key] for key in case if key == "concept"]


def test_few_concepts_are_offered_the_nearest_first(ours: Likenesses) -> None:
    """Each concept once, none below the threshold."""
    offered = ours.nearest("pepery")
    scores = [near.score for near in offered]
    assert 1 < len(offered) <= OFFERED
    assert len({near.concept for near in offered}) == len(offered)
    assert scores == sorted(scores, reverse=True)
    assert scores[-1] >= THRESHOLD


def test_an_empty_lexicon_offers_nothing(tmp_path: Path) -> None:
    """Without labels every word stays open."""
    (tmp_path / "concepts.toml").write_text("", "utf-8")
    assert Likenesses(Lexicon.read(tmp_path)).nearest("lemon") == ()


@pytest.mark.parametrize("pair", [("lemmon", "lemon"), ("wet chalk", "chalk"), ("", "chalk"), ("dry hey", "dry hay")])
def test_likeness_is_the_same_both_ways(pair: tuple[str, str]) -> None:
    """And lies between 0 and 1."""
    score = likeness(*pair)
    assert score == likeness(*reversed(pair))
    assert 0 <= score <= 1
