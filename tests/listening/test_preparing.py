"""In which preparation was it perceived?"""

from notesmith.listening.hearing import Hearing
from notesmith.listening.preparing import Preparing
from notesmith.records import Sheet, SheetPreparation, SheetSample
from tests.listening.conftest import Hear

SHEET = Sheet(
    category="tea",
    samples=(SheetSample(id="red"), SheetSample(id="blue")),
    preparations=(SheetPreparation(id="flask"), SheetPreparation(id="iced", aliases=("over ice",))),
)
TOLD = "[0:00] Welcome. I'll have them from the flask and then over ice.\n[0:20] Now, the red. In the mouth it's sweet."


def preparations(heard: Hearing) -> dict[str, str | None]:
    """The preparation of every term."""
    return {heard.said(p.description.start, p.description.end): p.preparation for p in heard.perceptions}


def test_what_was_only_announced_is_not_yet_tasted(hear: Hear) -> None:
    """Both are told before anything is tasted: the first of the sheet comes first."""
    assert preparations(hear(TOLD, SHEET))["sweet"] != "iced"


def lead(heard: Hearing) -> float:
    """By how much the second preparation leads over the first, for the last perception after one in the first."""
    before, last = heard.perceptions[-2:]
    row = Preparing(heard).table(last, before.description.start + 1)[1]
    return float(row[2] - row[1])


def test_a_name_speaks_for_turning_to_another(hear: Hear) -> None:
    """After `over ice` another preparation is likelier than after no word of it."""
    named, plain = (f"{TOLD}\n[0:40] Okay, the red {how}. It's salty in the mouth." for how in ("over ice", "again"))
    assert lead(hear(named, SHEET)) > lead(hear(plain, SHEET)) + 1


def test_a_sheet_without_preparations_has_none(hear: Hear) -> None:
    """No preparation is made up."""
    assert set(preparations(hear(TOLD, Sheet(samples=SHEET.samples))).values()) == {None}
