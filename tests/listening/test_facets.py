"""On which side of the sample?"""

import pytest

from notesmith.listening.facets import read_facet
from notesmith.listening.hearing import Hearing, Stage
from notesmith.records import Facet, Sheet
from tests.listening.conftest import Case, Hear, cases, sheet_of


def sided(heard: Hearing) -> list[str]:
    """The facet of each description, as the cases write it."""
    sides = []
    for d in heard.descriptions:
        stage = heard.topics[heard.run_of[d.start]].stage
        facet = read_facet(heard, d, heard.clauses[heard.clause_of[d.start]], stage)
        sides.append(f"{heard.said(d.start, d.end)}: {facet}")
    return sides


def test_no_side_where_nothing_describes(hear: Hear) -> None:
    """A nose alone is no aroma."""
    assert sided(hear("On the nose.", Sheet())) == []


@pytest.mark.parametrize("case", cases("facets"))
def test_facet(case: Case, hear: Hear) -> None:
    """Each describing word is on the side the case says."""
    assert sided(hear(case["talk"], sheet_of(case))) == case["says"]


@pytest.mark.parametrize(
    ("stage", "facet"), [("aroma", "aroma"), ("tasting", "flavour"), ("appearance", "aroma")]
)
def test_stage_decides_what_the_words_leave_open(stage: Stage, facet: Facet, hear: Hear) -> None:
    """Honey is smelled or tasted as the stage has it, and never seen."""
    heard = hear("Honey.", Sheet())
    assert read_facet(heard, heard.descriptions[0], heard.clauses[0], stage) == facet
