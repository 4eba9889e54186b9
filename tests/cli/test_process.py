"""The command as a process of its own: what it loads, how fast it is, what a closed pipe does to it."""

import subprocess
import sys
import time
from pathlib import Path

import pytest

ONE_COMMAND = "import typer\napp = typer.Typer()\n@app.command()\ndef hello(name: str) -> None:\n    ...\napp()\n"


def python(*arguments: str) -> subprocess.CompletedProcess[str]:
    """Run this Python to its end."""
    return subprocess.run([sys.executable, *arguments], capture_output=True, text=True, check=False)


def test_help_loads_no_pipeline() -> None:
    """Neither spaCy nor the records: help is there at once."""
    run = python("-X", "importtime", "-m", "notesmith", "--help")
    assert run.returncode == 0
    loaded = {line.rsplit("|", 1)[-1].strip().split(".")[0] for line in run.stderr.splitlines()}
    assert not loaded & {"spacy", "numpy", "pydantic", "rapidfuzz"}


def test_a_closed_pipe_is_quiet() -> None:
    """`notesmith schema | head -1` ends without a word."""
    command = [sys.executable, "-m", "notesmith", "schema"]
    with subprocess.Popen(command, stdout=subprocess.PIPE, stderr=subprocess.PIPE) as run:
        assert run.stdout is not None
        assert run.stderr is not None
        run.stdout.close()
        assert run.stderr.read() == b""


def test_an_unknown_option_is_a_usage_error() -> None:
    """Exit status 2, as everywhere."""
    assert python("-m", "notesmith", "notes", "--nonsense").returncode == 2


@pytest.mark.benchmark
def test_help_is_nearly_as_fast_as_the_smallest_program(tmp_path: Path) -> None:
    """At most half as long again as a typer program of one command; the best of seven runs each, taken in turns."""
    small = tmp_path / "one.py"
    small.write_text(ONE_COMMAND)
    runs = [(timed(str(small), "--help"), timed("-m", "notesmith", "--help")) for _ in range(7)]
    assert min(ours for _, ours in runs) <= 1.5 * min(theirs for theirs, _ in runs)


def timed(*arguments: str) -> float:
    """Seconds that a run takes."""
    begun = time.perf_counter()
    assert python(*arguments).returncode == 0
    return time.perf_counter() - begun
