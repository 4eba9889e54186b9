"""Which sample is named or pointed at?"""

import pytest

from notesmith.lexicon import Lexicon
from notesmith.listening.hearing import Hearing, Mention
from notesmith.listening.names import names_of
from notesmith.records import Sheet, SheetSample
from tests.listening.conftest import Case, Hear, cases, sheet_of


def worded(heard: Hearing, mention: Mention) -> str:
    """A mention as the cases write it."""
    sample = mention.samples[0] if mention.kind in ("name", "ordinal") else mention.kind
    return f"{heard.said(mention.start, mention.end)}: {sample}" + " (in a row)" * mention.crowded


def names(*samples: SheetSample) -> dict[tuple[str, ...], str]:
    """What the samples of a sheet may be called."""
    return {name.words: name.sample for name in names_of(Sheet(samples=samples), Lexicon.load())}


def test_a_sheet_without_samples_names_nothing(hear: Hear) -> None:
    """Nothing is named where there is nothing to name."""
    assert hear("The red is dry, the second one too, both are.", Sheet()).mentions == []


@pytest.mark.parametrize("case", cases("mentions"))
def test_mentions(case: Case, hear: Hear) -> None:
    """The talk names and points as the case says, and nowhere else."""
    heard = hear(case["talk"], sheet_of(case, "red", "blue", "green"))
    assert [worded(heard, m) for m in heard.mentions] == case["says"]


def test_mentions_do_not_overlap(hear: Hear) -> None:
    """No word is part of two mentions, and they stand in the order of the talk."""
    heard = hear("The other red one, the blue cup, this green one.", Sheet(samples=(SheetSample(id="red"),)))
    ends = [m.end for m in heard.mentions]
    assert all(end <= m.start for end, m in zip(ends, heard.mentions[1:], strict=False))


def test_a_name_of_two_samples_names_neither() -> None:
    """What two samples are called tells nothing."""
    found = names(SheetSample(id="A", aliases=("the tin",)), SheetSample(id="B", aliases=("the tin",)))
    assert ("the", "tin") not in found


def test_a_name_may_lose_its_article_and_its_vessel() -> None:
    """`The blue cup` is also called `blue cup` and `blue`."""
    found = names(SheetSample(id="A", aliases=("the blue cup",)))
    assert {("the", "blue", "cup"), ("blue", "cup"), ("blue",)} <= found.keys()


def test_a_number_is_also_called_by_its_word() -> None:
    """A number on the sheet may be spoken."""
    assert names(SheetSample(id="7"))[("seven",)] == "7"


def test_a_three_digit_code_is_also_called_by_its_digits() -> None:
    """A code may be read out digit by digit."""
    assert names(SheetSample(id="315"))[("three", "one", "five")] == "315"


def test_a_code_of_a_letter_and_a_number_is_also_called_in_two_words() -> None:
    """K7 may be printed as one word, or as it is spoken."""
    assert {("k7",), ("k", "7"), ("k", "seven")} <= names(SheetSample(id="K7")).keys()


def test_a_vessel_is_not_left_alone_of_two() -> None:
    """`The spoon bowl` is called neither `bowl` nor by anything that others stand in, too."""
    assert ("bowl",) not in names(SheetSample(id="spoon", aliases=("the spoon bowl",)))


def test_no_spoken_number_for_a_word() -> None:
    """A sample called by a word is called by no number."""
    assert [words for words in names(SheetSample(id="otter")) if words != ("otter",)] == []
