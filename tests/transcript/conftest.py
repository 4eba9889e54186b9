"""The caption files among the cases, and captions written out so that a person can compare them."""

from collections.abc import Callable
from pathlib import Path

import pytest

from notesmith.clock import format_clock_exact
from notesmith.transcript import Captions, Cue

CASES = Path(__file__).parents[1] / "cases" / "captions"


def _line(cue: Cue) -> str:
    end = "-" if cue.end_ms is None else format_clock_exact(cue.end_ms)
    line = f"{format_clock_exact(cue.start_ms)} {end} {cue.speaker or '-'} | {cue.text}"
    times = ["-" if word.start_ms is None else str(word.start_ms) for word in cue.words]
    return line if set(times) == {"-"} else f"{line} | {' '.join(times)}"


@pytest.fixture(scope="session")
def written() -> Callable[[Captions], str]:
    """Write captions as the cases do: format, a line for each cue, then the warnings."""

    def write(captions: Captions) -> str:
        kind = captions.format + (", words timed" if captions.word_timed else "" if captions.timed else ", untimed")
        warnings = [f"! {warning}" for warning in captions.warnings]
        return "\n".join([kind, *map(_line, captions.cues), *warnings]) + "\n"

    return write


def pytest_generate_tests(metafunc: pytest.Metafunc) -> None:
    """Run a test that asks for a `case` on every caption file of the cases."""
    if "case" in metafunc.fixturenames:
        files = sorted(path for path in CASES.iterdir() if path.is_file() and path.suffix != ".said")
        metafunc.parametrize("case", files, ids=[path.name for path in files])
