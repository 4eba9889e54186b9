"""The page's server killed at random moments: an edit that it answered is on the disk."""

import http.client
import multiprocessing
import os
import random
import signal
from collections.abc import Iterator
from multiprocessing.connection import Connection
from pathlib import Path
from threading import Timer
from urllib.parse import urlencode, urlsplit

import pytest

from notesmith.publishing import json_text
from notesmith.review.corrections import corrections_path, read_corrections
from notesmith.review.edits import Change

from .conftest import CASES, Bench

pytest.importorskip("uvicorn")  # loaded here once, and not by each of the servers
from notesmith.review.opening import open_notes
from notesmith.review.page import Table, application
from notesmith.review.server import serve

KILLS, LONGEST_S = 200, 0.15


def _serve(notes: Path, told: Connection) -> None:
    serve(application(Table([open_notes(notes)])), 0, told.send)


def _answered(address: str, record: str, run: int) -> Iterator[str]:
    """Make edits as a page does, as long as there are answers; yields what each said that was answered."""
    split = urlsplit(address)
    page = http.client.HTTPConnection(split.netloc, timeout=5)
    try:
        page.request("GET", f"{split.path}?{split.query}")
        opened = page.getresponse()
        opened.read()
        headers = {
            "Cookie": opened.headers["Set-Cookie"].split(";")[0], "Origin": f"http://{split.netloc}",
            "Content-Type": "application/x-www-form-urlencoded",
        }  # fmt: skip
        for number in range(100_000):
            product = f"Quarry Gate {run}-{number}"
            form = {"do": "change", "id": record, "field": "product", "value": product, "seen": "0"}
            page.request("POST", "/r/1/edit", urlencode(form), headers)
            answer = page.getresponse()
            said = answer.read().decode()
            assert answer.status == 200
            assert "Not done" not in said
            yield product
    except (OSError, http.client.HTTPException):
        return
    finally:
        page.close()


@pytest.fixture
def notes(tmp_path: Path, cups: Bench) -> Path:
    """Notes with their captions beside them."""
    (tmp_path / "cups.vtt").write_bytes((CASES / "cups.vtt").read_bytes())
    path = tmp_path / "cups.notes.json"
    path.write_text(json_text.render(cups.notes), "utf-8")
    return path


def _products(path: Path) -> set[object]:
    return {edit.set["product"] for edit in read_corrections(path) if isinstance(edit, Change)}


@pytest.mark.slow
def test_no_answered_edit_is_lost_to_a_kill_of_the_server(notes: Path, cups: Bench) -> None:
    """At 200 random moments; the file parses after each, and the next server goes on with it."""
    path, chance, context = corrections_path(notes.with_name("cups.vtt")), random.Random(5), _forking()
    answered, total = set[str](), 0
    for run in range(KILLS):
        here, there = context.Pipe(duplex=False)
        server = context.Process(target=_serve, args=(notes, there))
        server.start()
        address = here.recv()
        kill = Timer(chance.random() * LONGEST_S, os.kill, (server.pid, signal.SIGKILL))
        edits = _answered(address, cups.notes.reveals[0].id, run)
        answered.add(next(edits))
        kill.start()
        answered |= (rest := set(edits))
        total += 1 + len(rest)
        server.join()
        assert answered <= _products(path)
        if len(answered) > 200:  # begin anew before the file grows long
            path.unlink()
            answered.clear()
    assert total > 2 * KILLS, "most servers were killed before they were asked for much"


def _forking() -> multiprocessing.context.ForkContext:
    """Processes that begin as copies of this one: 200 servers that import everything anew would take minutes."""
    return multiprocessing.get_context("fork")
