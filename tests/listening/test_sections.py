"""Chapters: where they begin, of what kind they are, and that they fill the recording."""

from itertools import pairwise
from typing import Any

import pytest

from notesmith.listening.hearing import Hearing
from notesmith.listening.sections import find_sections
from notesmith.records import Sheet
from tests.listening.conftest import Hear, cases, sheet_of, unpunctuated

SLACK_S = 10
ONE = Sheet.model_validate({"samples": [{"id": "A"}]})
CASES = cases("sections")


def starts(hearing: Hearing) -> list[float]:
    """The seconds at which the chapters begin."""
    return [hearing.words[section.start].ms / 1000 for section in hearing.sections]


def test_no_talk_has_no_sections(hear: Hear) -> None:
    """Silence has no chapters."""
    heard = hear("[0:00] Okay.", ONE)
    heard.words = []
    find_sections(heard)
    assert heard.sections == []


def test_a_few_words_are_one_section(hear: Hear) -> None:
    """Talk shorter than a chapter is one chapter."""
    heard = hear("[0:00] Okay, it is sweet.", ONE)
    assert [(s.start, s.end) for s in heard.sections] == [(0, len(heard.words))]


@pytest.mark.parametrize("case", CASES)
@pytest.mark.parametrize("bare", [False, True], ids=["punctuated", "unpunctuated"])
def test_sections_begin_where_they_should(hear: Hear, case: dict[str, Any], *, bare: bool) -> None:
    """Every chapter that is looked for begins within ten seconds of its place, with and without punctuation."""
    heard = hear(unpunctuated(case["talk"]) if bare else case["talk"], sheet_of(case))
    found = list(zip([s.kind for s in heard.sections], starts(heard), strict=True))
    for kind, start in case["sections"]:
        assert any(k == kind and abs(s - start) <= SLACK_S for k, s in found), (kind, start, found)
    assert not {kind for kind, _ in found}.intersection(case.get("never", ()))


@pytest.mark.parametrize("case", CASES)
def test_sections_fill_the_recording(hear: Hear, case: dict[str, Any]) -> None:
    """Each chapter ends where the next begins, none is shorter than a viewer would want, each says why it is one."""
    heard = hear(case["talk"], sheet_of(case))
    sections = heard.sections
    assert (sections[0].start, sections[-1].end) == (0, len(heard.words))
    assert all(a.end == b.start for a, b in pairwise(sections))
    assert all(b - a >= 18 for a, b in pairwise(starts(heard)))
    assert all(0 < s.confidence <= 1 and s.grounds[0].start < s.grounds[0].end for s in sections)


@pytest.mark.parametrize("case", CASES[:1])
def test_chapters_about_one_sample_name_it(hear: Hear, case: dict[str, Any]) -> None:
    """A chapter in which one sample is tasted says which."""
    heard = hear(case["talk"], sheet_of(case))
    assert {"left", "right"} <= {s.sample for s in heard.sections if s.kind in ("aroma", "tasting")}
