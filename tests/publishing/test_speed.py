"""How long publishing takes beside taking the notes: the processor's time of both commands, the less of two rounds."""

import resource
import shutil
import subprocess
import sys
from pathlib import Path

import pytest

from tests.test_speed import DEMO, an_hour_of_talk

ROUNDS = 2


def seconds_of(*arguments: str | Path) -> float:
    """The processor's time, in seconds, that one command of the program takes from its start to its end."""
    before = resource.getrusage(resource.RUSAGE_CHILDREN)
    command = [sys.executable, "-m", "notesmith", *map(str, arguments), "--force"]
    subprocess.run(command, check=True, capture_output=True)
    after = resource.getrusage(resource.RUSAGE_CHILDREN)
    return after.ru_utime + after.ru_stime - before.ru_utime - before.ru_stime


@pytest.mark.benchmark
def test_publishing_an_hour_takes_no_longer_than_taking_its_notes(tmp_path: Path) -> None:
    """Everything: pages, pictures, tables and all, each command as it is typed."""
    talk, notes = tmp_path / "hour.txt", tmp_path / "hour.notes.json"
    talk.write_bytes(an_hour_of_talk())
    shutil.copy(DEMO / "pegs.sheet.toml", tmp_path / "hour.sheet.toml")
    taking, publishing = [], []
    for _ in range(ROUNDS):
        taking.append(seconds_of("notes", talk, "--format", "json", "-o", notes))
        publishing.append(seconds_of("publish", notes, "--to", tmp_path / "episode"))
    assert min(publishing) <= min(taking), (publishing, taking)
