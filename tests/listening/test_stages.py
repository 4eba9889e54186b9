"""What is being done with the sample?"""

import pytest

from notesmith.listening.hearing import Hearing
from notesmith.listening.stages import decide_stages
from notesmith.records import Sheet
from tests.listening.conftest import Case, Hear, cases, sheet_of


def stages(heard: Hearing) -> list[str | None]:
    """The stage at the end of each caption."""
    last = {word.cue: heard.topics[heard.run_of[i]].stage for i, word in enumerate(heard.words)}
    return [last[cue] for cue in sorted(last)]


def test_no_runs_have_no_stages(hear: Hear) -> None:
    """Where nothing is said, nothing is done."""
    assert decide_stages(hear("Hello.", Sheet()), [], []) == []


@pytest.mark.parametrize("case", cases("stages"))
def test_stage(case: Case, hear: Hear) -> None:
    """Each line ends in the stage the case says."""
    assert stages(hear(case["talk"], sheet_of(case, "left", "right"))) == case["says"]
