"""A hearing of invented talk: one caption a line, `[m:ss] words`; and the cases that a taster could edit."""

import re
import tomllib
from collections.abc import Callable, Iterator
from pathlib import Path
from typing import Any

import pytest

from notesmith.lexicon import Lexicon
from notesmith.listening.hearing import Hearing
from notesmith.listening.pipeline import listen
from notesmith.records import Sheet
from notesmith.transcript import Captions, Talk, parse_captions

Hear = Callable[[str, Sheet], Hearing]
Case = dict[str, Any]
CASES = Path(__file__).parents[1] / "cases" / "listening"


def captions_of(text: str) -> Captions:
    """Captions of talk; lines without a time follow each other every five seconds; text with arrows is SubRip."""
    if "-->" in text:
        return parse_captions(text.encode(), "talk.srt")
    lines = [line for line in text.strip().splitlines() if line.strip()]
    timed = [
        line if line.startswith("[") else f"[{5 * k // 60}:{5 * k % 60:02}] {line}" for k, line in enumerate(lines)
    ]
    return parse_captions("\n".join(timed).encode(), "talk.txt")


@pytest.fixture
def hear() -> Hear:
    """Listens to talk written down as `captions_of` reads it."""

    def listened(text: str, sheet: Sheet) -> Hearing:
        return listen(Talk.from_captions(captions_of(text)), sheet, Lexicon.load(), by_rules=True)

    return listened


def cases(name: str, table: str = "case") -> list[Any]:
    """The cases of one file, each a test of its own name; a known failure is expected to fail, and has to."""
    loaded = tomllib.loads((CASES / f"{name}.toml").read_text("utf-8"))[table]
    return [_marked(case, case["name"], case.get("known_failure")) for case in loaded]


def cases_in_every_form(name: str, table: str = "case") -> list[Any]:
    """The cases as printed, with curly apostrophes, and as a recogniser prints them: lower case, no punctuation.

    `punctuation_tells = true` leaves the last form out: without its punctuation such talk means something else.
    `known_failure_unpunctuated` is a known failure of that form; empty where it is right though the printed form fails.
    """
    loaded = tomllib.loads((CASES / f"{name}.toml").read_text("utf-8"))[table]
    return [param for case in loaded for param in _forms(case)]


def _forms(case: Case) -> Iterator[Any]:
    failure = case.get("known_failure")
    yield _marked(case, case["name"], failure)
    if "'" in case["talk"]:
        yield _marked({**case, "talk": case["talk"].replace("'", "’")}, f"{case['name']}, curly", failure)
    if not case.get("punctuation_tells"):
        bare = {**case, "talk": unpunctuated(case["talk"]), "says": [said.lower() for said in case["says"]]}
        yield _marked(bare, f"{case['name']}, unpunctuated", case.get("known_failure_unpunctuated", failure))


def _marked(case: Case, name: str, failure: str | None) -> Any:
    return pytest.param(case, id=name, marks=[pytest.mark.xfail(reason=failure, strict=True)] if failure else [])


def unpunctuated(text: str) -> str:
    """Talk as a recogniser without punctuation prints it; the time at the head of a line stays."""
    return re.sub(r"(?m)(^\[[\d:]+\])|[^\w\s'-]", lambda found: found[1] or "", text.lower())


def sheet_of(case: Case, *otherwise: str) -> Sheet:
    """The sheet of a case: `samples` by id or as tables; where it names none, these."""
    samples = [{"id": s} if isinstance(s, str) else s for s in case.get("samples", otherwise)]
    rest = {key: case[key] for key in ("category", "tasters", "preparations") if key in case}
    return Sheet.model_validate({"samples": samples, **rest})
