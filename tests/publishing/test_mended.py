"""Words from captions as they were meant."""

import pytest

from notesmith.publishing.mended import Span, mended
from notesmith.records import Repair

TALK = "it is a stringent and way gan"


def repair(heard: str, meant: str) -> Repair:
    """What the captions of the talk got wrong."""
    start = TALK.index(heard)
    return Repair(
        id="r", start=None, end=None, quote=heard, span=(start, start + len(heard)), confidence=1, why=(),
        heard=heard, meant=meant,
    )  # fmt: skip


REPAIRS = (repair("way gan", "hui gan"), repair("a stringent", "astringent"))


def test_nothing_is_nothing() -> None:
    """No words, nothing to mend."""
    assert mended(REPAIRS, (0, 0), "") == ""


@pytest.mark.parametrize(
    ("span", "meant"),
    [((0, 5), "it is"), ((6, 17), "[astringent]"), ((6, 7), "[astringent]"), ((22, 25), "[hui gan]"),
     ((17, 22), " and "), ((0, 29), "it is [astringent] and [hui gan]")],
)  # fmt: skip
def test_what_was_misheard_stands_mended(span: Span, meant: str) -> None:
    """Where any of it lies in the span, in square brackets; what lies beside it stays as it is."""
    assert mended(REPAIRS, span, TALK[slice(*span)]) == meant
