"""What is the talk about just now: which sample, which preparation?"""

import pytest

from notesmith.listening.chain import best_chain
from notesmith.listening.hearing import Hearing
from notesmith.listening.pointing import Signs, heads, is_aside
from notesmith.records import Sheet, SheetPreparation, SheetSample
from tests.listening.conftest import Case, Hear, cases, sheet_of

PAIR = Sheet(samples=(SheetSample(id="left"), SheetSample(id="right")))


def topics(heard: Hearing) -> list[str]:
    """What each description is said of, as the cases write it."""
    about = [(heard.said(d.start, d.end), heard.topics[heard.run_of[d.start]].sample) for d in heard.descriptions]
    return [f"{term}: {sample or '-'}" for term, sample in about]


def test_talk_without_a_description_still_has_a_topic(hear: Hear) -> None:
    """Every word belongs to a run, whether anything is described or not."""
    heard = hear("Hello.", PAIR)
    assert [heard.run_of, [topic.sample for topic in heard.topics]] == [[0, 0], ["left"]]


@pytest.mark.parametrize("case", cases("topics"))
def test_topic(case: Case, hear: Hear) -> None:
    """Every description is said of the sample the case says."""
    assert topics(hear(case["talk"], sheet_of(case, "left", "right"))) == case["says"]


def test_a_chain_begins_with_the_first_sample() -> None:
    """Where nothing points anywhere, the first sample of the sheet is meant."""
    assert best_chain(["A", "B"], [Signs(), Signs()]) == ["A", "A"]


def test_a_chain_follows_a_name_and_stays() -> None:
    """A sample named surely as a subject is what the runs after it are about too."""
    named = Signs(pulls={"B": ["name surely", "subject"]})
    assert best_chain(["A", "B"], [Signs(), named, Signs()]) == ["A", "B", "B"]


def test_a_chain_looks_ahead() -> None:
    """What is named strongly later is not left for what is set beside it earlier."""
    beside = Signs(pulls={"B": ["set beside"]})
    assert best_chain(["A", "B"], [Signs(), beside, Signs()]) == ["A", "A", "A"]


@pytest.mark.parametrize(
    ("talk", "aside", "head"),
    [
        ("Left is dry.", False, True),
        ("It's drier than the left.", True, False),
        ("Unlike the left it's dry.", True, False),
        ("Compared to the left it's dry.", True, False),
        ("I go back to the left.", False, False),
        ("Okay, left is dry.", False, True),
    ],
)
def test_asides_and_heads(talk: str, aside: bool, head: bool, hear: Hear) -> None:
    """A name is at the head of its thought, inside it, or only what another is set beside."""
    heard = hear(talk, PAIR)
    mention = heard.mentions[0]
    assert (is_aside(heard.words, mention), heads(heard.words, mention)) == (aside, head)


def test_preparation_is_the_one_last_named(hear: Hear) -> None:
    """A preparation holds until another is named; before the first, there is none."""
    sheet = Sheet(
        samples=(SheetSample(id="left"),),
        preparations=(SheetPreparation(id="iced", aliases=("over ice",)), SheetPreparation(id="flask")),
    )
    heard = hear("It's sweet. Now over ice. It's dry. Then flask. It's smoky.", sheet)
    found = [heard.topics[heard.run_of[d.start]].preparation for d in heard.descriptions]
    assert found == [None, "iced", "flask"]


def test_a_sheet_without_preparations_has_none(hear: Hear) -> None:
    """No preparation is made up."""
    assert {topic.preparation for topic in hear("Over ice it's sweet.", PAIR).topics} == {None}
