"""Who is not meant to speak to the page: each attack of the table, and what it meets."""

import http.client
import socket
import time
import tomllib
from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path
from typing import Any
from urllib.parse import urlsplit

import pytest

from tests.review.page.browsing import served
from tests.review.page.conftest import Recording

ATTACKS = tomllib.loads((Path(__file__).parents[2] / "cases" / "review" / "attacks.toml").read_text("utf-8"))["attack"]


@dataclass(frozen=True)
class Open:
    """A server whose page was opened by its rightful owner."""

    port: int
    token: str
    cookie: str
    recording: Recording

    @property
    def host(self) -> str:
        """Where it is served."""
        return f"127.0.0.1:{self.port}"

    def ask(
        self, method: str = "GET", path: str = "/", *, headers: dict[str, str] | None = None,
        cookie: str | None = None, body: str | None = None,
    ) -> http.client.HTTPResponse:  # fmt: skip
        """Ask as told; a header that is empty is left out."""
        connection = http.client.HTTPConnection("127.0.0.1", self.port, timeout=20)
        held = self.cookie if cookie is None else cookie and f"{self.cookie.split('=')[0]}={cookie}"
        told = {"Host": self.host, "Cookie": held} | ({"Origin": f"http://{self.host}"} if method == "POST" else {})
        connection.putrequest(method, path, skip_host=True, skip_accept_encoding=True)
        whole = told | ({"Content-Length": str(len(body or ""))} if method == "POST" else {}) | (headers or {})
        for name, value in whole.items():
            if value:
                connection.putheader(name, value)
        connection.endheaders((body or "").encode() or None)
        return connection.getresponse()


@pytest.fixture(scope="module")
def opened(noted: Path) -> Iterator[Open]:
    """The page, opened."""
    with served(noted / "pegs.notes.json") as (address, _):
        split = urlsplit(address)
        connection = http.client.HTTPConnection("127.0.0.1", split.port or 0)
        connection.request("GET", f"{split.path}?{split.query}")
        answer = connection.getresponse()
        cookie = answer.headers["Set-Cookie"]
        assert {"HttpOnly", "SameSite=strict", "Path=/"} <= set(cookie.split("; "))
        yield Open(split.port or 0, split.query.removeprefix("token="), cookie.split(";")[0], Recording(noted))


@pytest.mark.parametrize("attack", ATTACKS, ids=[attack["name"] for attack in ATTACKS])
def test_an_attack_meets_what_the_table_says(attack: dict[str, Any], opened: Open) -> None:
    """The status is as told, and nothing was written."""
    told = {name: value for name, value in attack.items() if name in ("method", "headers", "cookie", "body")}
    answer = opened.ask(path=attack.get("path", "/").replace("TOKEN", opened.token), **told)
    assert answer.status == attack["status"]
    assert opened.recording.edits() == []


def test_every_answer_is_sealed(opened: Open) -> None:
    """Pages, files, media and refusals alike carry the headers; no two nonces are the same."""
    nonces = set()
    for path in ("/", "/static/review.js", "/r/1/media", "/nothing", "/r/1/note?id=x&seen=0"):
        headers = opened.ask(path=path).headers
        policy = headers["Content-Security-Policy"]
        assert policy.startswith("default-src 'none'; script-src 'nonce-")
        assert "unsafe" not in policy
        assert headers["X-Content-Type-Options"] == "nosniff"
        assert headers["Referrer-Policy"] == "no-referrer"
        assert headers["Cache-Control"] == "no-store"
        nonces.add(policy.split("'")[3])
    assert len(nonces) == 5


@pytest.mark.skipif(not Path("/proc/net/tcp").exists(), reason="the system does not tell who listens where")
def test_only_this_machine_is_listened_to(opened: Open) -> None:
    """The port is bound to the loopback address and to no other."""
    lines = [line.split() for line in Path("/proc/net/tcp").read_text("ascii").splitlines()[1:]]
    assert {one[1] for one in lines if one[3] == "0A" and one[1].endswith(f":{opened.port:04X}")} == {
        f"0100007F:{opened.port:04X}"
    }


def test_a_body_that_grows_without_end_is_cut_off(opened: Open) -> None:
    """It is refused once it is too long, whatever length it did not tell."""
    with socket.create_connection(("127.0.0.1", opened.port), timeout=20) as line:
        head = f"POST /r/1/edit HTTP/1.1\r\nHost: {opened.host}\r\nCookie: {opened.cookie}\r\n"
        line.sendall(f"{head}Origin: http://{opened.host}\r\nTransfer-Encoding: chunked\r\n\r\n".encode())
        chunk = b"4000\r\n" + b"a" * 0x4000 + b"\r\n"
        for _ in range(5):
            line.sendall(chunk)
        assert line.recv(100).startswith(b"HTTP/1.1 413")


def test_a_head_that_grows_without_end_is_cut_off(opened: Open) -> None:
    """A request may take 16 KB to say what it wants."""
    with socket.create_connection(("127.0.0.1", opened.port), timeout=20) as line:
        line.sendall(b"GET / HTTP/1.1\r\n" + b"X: " + b"a" * 70_000)
        assert line.recv(100).startswith(b"HTTP/1.1 400")


@pytest.mark.slow
def test_slow_clients_are_hung_up_on_and_hold_nobody_up(opened: Open) -> None:
    """Forty that never finish their request or its body, while the page is answered at once."""
    head = f"POST /r/1/edit HTTP/1.1\r\nHost: {opened.host}\r\nCookie: {opened.cookie}\r\n"
    whole = f"{head}Origin: http://{opened.host}\r\nContent-Length: 99\r\n\r\n"
    lines = [socket.create_connection(("127.0.0.1", opened.port), timeout=20) for _ in range(40)]
    for number, line in enumerate(lines):
        line.sendall((head if number % 2 else whole).encode())
    begun = time.monotonic()
    assert opened.ask().status == 200
    assert time.monotonic() - begun < 2
    answers = [line.recv(100) for line in lines]
    assert time.monotonic() - begun < 15
    assert {answer[:12] for answer in answers} == {b"", b"HTTP/1.1 408"}
    for line in lines:
        line.close()


def test_a_recording_is_sent_in_ranges(opened: Open) -> None:
    """A player seeks by asking for a part, the end of it or what is not there."""
    for asked, status in {"bytes=100-199": 206, "bytes=-50": 206, "bytes=99999999-": 416}.items():
        answer = opened.ask(path="/r/1/media", headers={"Range": asked})
        assert answer.status == status
    answer = opened.ask(path="/r/1/media", headers={"Range": "bytes=100-199"})
    assert (len(answer.read()), answer.headers["Content-Type"]) == (100, "audio/wav")
