"""The episode that tables are made of."""

import pytest

from notesmith.publishing.episode import Episode
from notesmith.records import Notes


@pytest.fixture
def episode(small: Notes) -> Episode:
    """One of every record."""
    return Episode(small)


HOSTILE = [
    "=cmd|'/c calc'!A1", "+1+1", "-1+1", "@SUM(A1)", "\t=1+1", "\r=1+1", "\u00a0=1+1", "＝1+1", "a; =1+1", "a;=1+1",
    "#N/A", "1e5", "007", "true", "<script>", "-->", "a\u202eb", "two\nlines", 'a "quote", a comma', "x" * 10_000,
    "🍵 龙井", "\x00\x1b[31m", "\ufffe\uffff",
]  # fmt: skip
"""What captions and sheets may hold that a spreadsheet must not run, and must not make something else of."""
