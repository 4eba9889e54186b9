"""What may be claimed: n, the weakest link, and what would settle it are in every claim."""

import pytest

from notesmith.sensory.claims import (
    Circumstances,
    Claim,
    claim_alike,
    claim_difference,
    claim_pair,
    claim_ranking,
    weakest,
)
from notesmith.sensory.difference import judge
from notesmith.sensory.protocols import DUO_TRIO, TRIANGLE
from notesmith.sensory.ranking import concordance

FAIR = Circumstances(tasters=40, blind=True, balanced=True, cups=3)


@pytest.mark.parametrize(
    ("held", "words"),
    [(Circumstances(1, False, False, 1, True), "after the reveal"), (Circumstances(1, False, False, 1), "knew"),
     (Circumstances(1, True, False, 1), "one cup"), (Circumstances(1, True, False, 3), "one taster"),
     (Circumstances(20, True, False, 3), "order was not balanced"),
     (Circumstances(20, None, True, 3), "whether it was blind"),
     (Circumstances(5, True, True, 3), "only 5 tasters"), (FAIR, "not all who drink it")],
)  # fmt: skip
def test_weakest_link(held: Circumstances, words: str) -> None:
    """The worst of all is told: the reveal, sight, one cup, one taster, the order, few tasters."""
    assert words in weakest(held)


def test_no_difference_is_no_likeness() -> None:
    """A test too small to find anything does not say that there is nothing."""
    claim = claim_difference(judge(5, 12, TRIANGLE), FAIR)
    assert "does not show that there is none" in claim.says
    assert claim.settles == "To find a difference of d′ 1 nine times in ten, 283 trials of a triangle test are needed."


def test_large_test_that_finds_nothing() -> None:
    """A test that would have found a difference says that it is small at most."""
    assert "if there is one, it is small" in claim_difference(judge(105, 300, TRIANGLE), FAIR).settles


def test_alike() -> None:
    """58 of 100 duo-trios are alike enough for a third, 59 are not."""
    assert claim_alike(judge(58, 100, DUO_TRIO), 1 / 3, FAIR).says.startswith("Alike enough")
    assert claim_alike(judge(59, 100, DUO_TRIO), 1 / 3, FAIR).says.startswith("Not shown to be alike")


def test_either_side_may_win() -> None:
    """The one ahead is named first, with its count."""
    claim = claim_pair(("P", "Q"), (3, 1, 14), 0.01, FAIR)
    assert claim.says == "Q was preferred to P, 14 to 3, 1 for neither (n = 18, p = 0.010)."


def test_tasters_who_disagree() -> None:
    """Where agreement is slight many more rankings would be needed, and their number is told."""
    claim = claim_ranking(concordance([[1, 2, 3], [3, 1, 2], [1, 3, 2]]), "P", FAIR)
    assert claim.says.startswith("No sample is shown to be ranked above another (n = 3 rankings")
    assert claim.settles == "With this much agreement about 27 rankings would be enough."


@pytest.mark.parametrize(
    "claim",
    [claim_difference(judge(10, 15, TRIANGLE), FAIR), claim_difference(judge(5, 15, TRIANGLE), FAIR),
     claim_alike(judge(20, 75, TRIANGLE), 0.2, FAIR), claim_alike(judge(40, 75, TRIANGLE), 0.2, FAIR),
     claim_pair(("P", "Q"), (15, 0, 5), 0.04, FAIR), claim_pair(("P", "Q"), (9, 0, 8), 1.0, FAIR)],
)  # fmt: skip
def test_every_claim_is_whole(claim: Claim) -> None:
    """The n and p, the weakest link and the next step are said."""
    assert "(n = " in claim.says
    assert "p " in claim.says
    assert claim.weakest
    assert claim.settles.endswith(".")
