"""A hearing of invented talk: one caption a line, `[m:ss] words`."""

from collections.abc import Callable

import pytest

from notesmith.lexicon import Lexicon
from notesmith.listening.hearing import Hearing
from notesmith.listening.pipeline import listen
from notesmith.records import Sheet
from notesmith.transcript import Talk, parse_captions

Hear = Callable[[str, Sheet], Hearing]


@pytest.fixture
def hear() -> Hear:
    """Listens to talk; lines without a time follow each other every five seconds."""

    def listened(text: str, sheet: Sheet) -> Hearing:
        lines = [line for line in text.strip().splitlines() if line.strip()]
        timed = [
            line if line.startswith("[") else f"[{5 * k // 60}:{5 * k % 60:02}] {line}" for k, line in enumerate(lines)
        ]
        captions = parse_captions("\n".join(timed).encode(), "talk.txt")
        return listen(Talk.from_captions(captions), sheet, Lexicon.load())

    return listened
