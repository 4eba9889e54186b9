"""The server of the page: on this machine only, at a port of its own, with no patience for who dawdles."""

import asyncio
import socket
from collections.abc import Callable
from typing import Any

import uvicorn
from starlette.types import ASGIApp
from uvicorn.protocols.http.h11_impl import H11Protocol

from notesmith.errors import OutputError
from notesmith.review.security import OPENING, Guard, Key

HOST = "127.0.0.1"
HEADER_TIME = 10.0
"""Seconds in which a request must have said what it wants."""
MOST_AT_ONCE = 64
"""Requests and connections served side by side; one page needs seven."""


class Punctual(H11Protocol):
    """Hangs up on a connection whose request does not come to its end in time."""

    _deadline: asyncio.TimerHandle | None = None

    def connection_made(self, transport: asyncio.Transport) -> None:  # type: ignore[override]
        """Begin to wait for the first request."""
        super().connection_made(transport)
        self._wait()

    def data_received(self, data: bytes) -> None:
        """Stop waiting once a request is whole enough to be answered, and wait again for the next."""
        super().data_received(data)
        if self.cycle is not None and not self.cycle.response_complete:
            self._stop()
        elif self._deadline is None:
            self._wait()

    def connection_lost(self, exc: Exception | None) -> None:
        """Nothing more is waited for."""
        self._stop()
        super().connection_lost(exc)

    def _wait(self) -> None:
        self._deadline = self.loop.call_later(HEADER_TIME, self.transport.close)

    def _stop(self) -> None:
        if self._deadline:
            self._deadline.cancel()
            self._deadline = None


def listen(port: int = 0) -> socket.socket:
    """A socket of this machine only; port 0 takes whichever is free.

    Raises:
        OutputError: the port is taken.
    """
    taken = socket.socket()
    taken.setsockopt(socket.SOL_SOCKET, socket.SO_REUSEADDR, 1)
    try:
        taken.bind((HOST, port))
    except (OSError, OverflowError):
        taken.close()
        raise OutputError(f"port {port} is taken", mend="name another, or leave --port out") from None
    return taken


def serve(app: ASGIApp, port: int, opened: Callable[[str], Any]) -> None:
    """Serve until interrupted; `opened` is told the address that opens the page, once it is answered.

    Raises:
        OutputError: the port is taken.
    """
    taken, key = listen(port), Key()
    host = f"{HOST}:{taken.getsockname()[1]}"
    settings = uvicorn.Config(
        Guard(app, host, key), http=Punctual, ws="none", lifespan="off", log_level="error", access_log=False,
        server_header=False, proxy_headers=False, limit_concurrency=MOST_AT_ONCE, timeout_keep_alive=30,
        timeout_graceful_shutdown=1, h11_max_incomplete_event_size=16 * 1024,
    )  # fmt: skip
    server = _Telling(settings, lambda: opened(f"http://{host}{OPENING}?token={key.token}"))
    with taken:
        server.run(sockets=[taken])


class _Telling(uvicorn.Server):
    """A server that says when it answers."""

    def __init__(self, config: uvicorn.Config, told: Callable[[], Any]) -> None:
        super().__init__(config)
        self._told = told

    async def startup(self, sockets: list[socket.socket] | None = None) -> None:
        """Start, then say so."""
        await super().startup(sockets)
        self._told()
