"""Writers killed at random moments: what they were told is kept is kept."""

import multiprocessing
import os
import random
import signal
import time
from multiprocessing.connection import Connection
from pathlib import Path

import pytest

from notesmith.review.corrections import append, read_corrections
from notesmith.review.edits import Alias

KILLS, LONGEST_S = 200, 0.03


def _write_until_killed(path: Path, writer: str, acknowledge: Connection) -> None:
    for number in range(1_000_000):
        edit = Alias(id=f"{writer}-{number}", at="2031-05-01T09:00:00+00:00", of="one", alias="the first " * 20)
        append(path, edit)
        acknowledge.send_bytes(edit.id.encode())


def _received(pipe: Connection) -> list[str]:
    told = []
    while pipe.poll():
        try:
            told.append(pipe.recv_bytes().decode())
        except EOFError:
            break
    return told


@pytest.mark.slow
def test_no_acknowledged_edit_is_lost_to_a_kill(tmp_path: Path) -> None:
    """Two writers at once, one killed at each of 200 random moments; the file parses after each, and holds all."""
    path, chance = tmp_path / "talk.corrections.json", random.Random(5)
    context, acknowledged = multiprocessing.get_context("fork"), set[str]()
    for kill in range(KILLS):
        writers = []
        for name in ("a", "b"):
            here, there = context.Pipe(duplex=False)
            writer = context.Process(target=_write_until_killed, args=(path, f"{kill}{name}", there))
            writer.start()
            there.close()
            writers.append((writer, here))
        time.sleep(chance.random() * LONGEST_S)
        for writer, here in writers:
            assert writer.pid is not None
            os.kill(writer.pid, signal.SIGKILL)
            writer.join()
            acknowledged |= set(_received(here))
            assert acknowledged <= {edit.id for edit in read_corrections(path)}
        if len(acknowledged) > 1_000:  # begin anew before the file grows long
            path.unlink()
            acknowledged.clear()
