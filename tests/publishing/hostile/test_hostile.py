"""Every kind that is published, with every hostile text: it comes out inert, and whole or cut in plain sight."""

import re
from collections.abc import Iterator
from itertools import product

import pytest

from notesmith.publishing.kinds import KINDS, Kind
from notesmith.publishing.plain import one_line
from tests.publishing.hostile.conftest import TEXTS, episode_with
from tests.publishing.hostile.reading import BY_SUFFIX

SHOWN = 20
"""Characters of a text that must be shown even where what follows is cut."""
QUICK = ("script", "arrow", "formula", "turned", "newlines")
NO_XML = dict.fromkeys([0xFFFE, 0xFFFF], "�")
# Charts wrap and cut their labels; a description that is cut at whole entries may leave out a long one.
MAY_LEAVE_OUT = ("charts-", "show-notes-text", "for-the-author")


def _table() -> Iterator[object]:
    """Every kind with every text; pictures and the rarer texts are left to the slow tests."""
    for kind, name in product(KINDS, TEXTS):
        takes_time = "png" in kind.suffix or name not in QUICK
        yield pytest.param(kind, name, marks=[pytest.mark.slow] if takes_time else [], id=f"{kind.name}-{name}")


@pytest.mark.parametrize(("kind", "name"), list(_table()))
def test_a_hostile_text_comes_out_inert_and_whole(kind: Kind, name: str) -> None:
    """Read as its clients read it, the file shows the text and does nothing else with it."""
    made = kind.make(episode_with(name))
    if made is None:
        pytest.skip("nothing to say")
    content = made.encode() if isinstance(made, str) else made
    read = next(read for suffix, read in BY_SUFFIX if f"NAME.{kind.suffix}".endswith(suffix))
    shown = [*map(_plain, read(content))]
    if not kind.name.startswith(MAY_LEAVE_OUT) and "png" not in kind.suffix:
        text = TEXTS[name]
        forms = (text, one_line(text), one_line(text).translate(NO_XML))
        wanted = {_plain(form)[:SHOWN] for form in forms}
        assert any(text in line for text in wanted for line in shown), f"{wanted} is not shown"


def _plain(text: str) -> str:
    """What the eye sees of a text: letters and signs, without white space and what has no width."""
    return re.sub(r"[\s\u00ad\u200b-\u200f\u2028-\u202e\u2060-\u2069\ufeff]+", "", text)
