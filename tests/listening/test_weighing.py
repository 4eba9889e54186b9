"""Is a description a perception at all?"""

import pytest

from notesmith.listening.hearing import Hearing
from notesmith.listening.weighing import likelihood, weigh
from notesmith.records import Sheet
from tests.listening.conftest import Case, Hear, cases

TASTING = """
[0:00] On the nose I get honey, plum and leather, a hint of smoke, vanilla and malt.
[0:10] On the palate it's bitter, sweet and sour, with a velvety texture, and I taste apricot, caramel and cinnamon.
[0:20] A long, drying finish with notes of clove, mint and tar.
"""
AFTER = len(" ".join(line.split("] ")[1] for line in TASTING.strip().splitlines()))


def said_after(heard: Hearing, spans: list[tuple[int, int]]) -> list[str]:
    """The words of these stretches, those of the passage before left out."""
    return [heard.said(start, end) for start, end in spans if heard.words[start].start > AFTER]


def test_nothing_is_weighed_where_nothing_describes(hear: Hear) -> None:
    """Talk without a description is not weighed."""
    assert weigh(hear("Hello.", Sheet())) == []


@pytest.mark.parametrize("case", cases("weighing"))
def test_perceived(case: Case, hear: Hear) -> None:
    """Of the words that describe, these are perceived and no others."""
    heard = hear(f"{TASTING}\n[6:00] {case['talk']}", Sheet(category="tea"))
    perceived = [(p.description.start, p.description.end) for p in heard.perceptions]
    assert said_after(heard, perceived) == case["says"]


def test_the_passage_before_is_perceived(hear: Hear) -> None:
    """The passage that the cases are set after is a tasting, and long enough to be known for one."""
    assert len(hear(TASTING, Sheet(category="tea")).perceptions) >= 15


def test_what_is_left_out_says_why(hear: Hear) -> None:
    """Every description is either perceived or left out with a reason."""
    heard = hear(f"{TASTING}\n[6:00] Do you get smoke? It took a long time.", Sheet(category="tea"))
    assert len(heard.perceptions) + len(heard.left_out) == len(heard.descriptions)
    assert said_after(heard, [(o.description.start, o.description.end) for o in heard.left_out]) == ["smoke", "long"]
    assert all(o.reason for o in heard.left_out)


def test_signs_for_and_against_move_the_likelihood() -> None:
    """A sensing word speaks for a perception, the name of the product against it."""
    assert likelihood(("names the product",)) < likelihood(()) < likelihood(("sensing word",))


def test_an_unknown_sign_weighs_nothing() -> None:
    """A sign without a weight leaves the likelihood where it was."""
    assert likelihood(("no such sign",)) == likelihood(())


def test_company_makes_a_perception_likelier(hear: Hear) -> None:
    """The same words count more amid a tasting than minutes after it."""
    near = hear(f"{TASTING}\n[0:25] And chocolate.", Sheet())
    far = hear(f"{TASTING}\n[6:00] And chocolate.", Sheet())
    assert likelihood(weigh(near)[-1]) > likelihood(weigh(far)[-1])
