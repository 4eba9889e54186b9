"""Who may speak to the page: a guard before the application, for a server that only this machine can reach.

What is checked, in order: the Host header (against names that lead here by a foreign page), the method, the size
that a body claims, the one-time token or the cookie it is traded for, and for writes where they come from.
"""

import asyncio
import hmac
import secrets
from dataclasses import dataclass, field
from http.cookies import CookieError, SimpleCookie

from starlette.datastructures import Headers, MutableHeaders, QueryParams
from starlette.responses import HTMLResponse, PlainTextResponse, Response
from starlette.types import ASGIApp, Message, Receive, Scope, Send

MAX_BODY = 64 * 1024
"""The most bytes of a body that is taken in: an edit has a few hundred."""
BODY_TIME = 10.0
"""Seconds in which a body must have come."""
OPENING = "/open"
ENTERED = (
    '<!doctype html><html lang="en"><meta charset="utf-8"><meta http-equiv="refresh" content="0;url=/">'
    '<link rel="icon" href="/static/icon.svg"><title>notesmith</title><p><a href="/">Open the notes</a></p></html>'
)


@dataclass
class Key:
    """What opens the page: a token good for one opening, and the cookie that it is traded for."""

    token: str = field(default_factory=lambda: secrets.token_urlsafe(32))
    secret: str = field(default_factory=lambda: secrets.token_urlsafe(32), repr=False)
    cookie: str = field(default_factory=lambda: f"notesmith_{secrets.token_hex(4)}")
    """The cookie's name, one for each run: a browser does not tell the cookies of two ports apart."""

    def spend(self, token: str) -> bool:
        """Whether the token opens the page; it does so once."""
        good = bool(self.token) and hmac.compare_digest(token.encode(), self.token.encode())
        if good:
            self.token = ""
        return good

    def is_held(self, header: str) -> bool:
        """Whether the Cookie header shows the secret."""
        try:
            shown = SimpleCookie(header).get(self.cookie)
        except CookieError:
            return False
        return shown is not None and hmac.compare_digest(shown.value.encode(), self.secret.encode())


@dataclass(frozen=True)
class Guard:
    """Lets through what comes from our own page, and gives every answer the headers that keep it closed."""

    app: ASGIApp
    host: str
    """The only Host there is: `127.0.0.1` and the port."""
    key: Key

    async def __call__(self, scope: Scope, receive: Receive, send: Send) -> None:
        """Answer, or pass on what is in order."""
        if scope["type"] != "http":
            return
        nonce = secrets.token_urlsafe(16)
        scope.setdefault("state", {})["nonce"] = nonce
        headers = Headers(scope=scope)
        shut = _Sealed(send, nonce)
        answer = self._refused(scope, headers) or self._entered(scope) or self._stranger(scope, headers)
        if answer:
            await answer(scope, receive, shut)
            return
        await self._with_body(scope, receive, shut)

    def _refused(self, scope: Scope, headers: Headers) -> Response | None:
        if headers.getlist("host") != [self.host]:
            return _no(400, "this page is only served as " + self.host)
        if scope["method"] not in ("GET", "HEAD", "POST"):
            return _no(405, "only GET and POST are answered")
        if _claimed(headers) > MAX_BODY:
            return _no(413, f"at most {MAX_BODY} bytes are taken in")
        return None

    def _entered(self, scope: Scope) -> Response | None:
        """The answer to the opening address: the cookie, on a page of our own.

        A redirect would not do: a browser that was sent here by another program's page keeps a strict cookie back.
        """
        if scope["path"] != OPENING:
            return None
        token = QueryParams(scope["query_string"]).get("token", "")
        if scope["method"] != "GET" or not self.key.spend(token):
            return _no(403, "this address opens the page once; run notesmith review again for another")
        answer = HTMLResponse(ENTERED)
        answer.set_cookie(self.key.cookie, self.key.secret, httponly=True, samesite="strict", path="/")
        return answer

    def _stranger(self, scope: Scope, headers: Headers) -> Response | None:
        if not self.key.is_held("; ".join(headers.getlist("cookie"))):
            return _no(403, "open the page by the address that notesmith review tells")
        if scope["method"] != "POST":
            return None
        ours = headers.getlist("origin") == [f"http://{self.host}"]
        if not ours or headers.get("sec-fetch-site", "same-origin") != "same-origin":
            return _no(403, "another page may not write here")
        return None

    async def _with_body(self, scope: Scope, receive: Receive, send: Send) -> None:
        """Pass on with the whole body read, so that a slow or endless one ends here."""
        try:
            body = await asyncio.wait_for(_whole(receive), BODY_TIME)
        except TimeoutError:
            return await _no(408, "the body did not come in time", close=True)(scope, receive, send)
        if body is None:
            return await _no(413, f"at most {MAX_BODY} bytes are taken in", close=True)(scope, receive, send)
        return await self.app(scope, _Replayed(body, receive), send)


@dataclass
class _Replayed:
    """A body already read, given out once; after it whatever else comes."""

    body: bytes
    receive: Receive
    given: bool = False

    async def __call__(self) -> Message:
        if self.given:
            return await self.receive()
        self.given = True
        return {"type": "http.request", "body": self.body, "more_body": False}


@dataclass(frozen=True)
class _Sealed:
    """Sends on with the headers that every answer carries."""

    send: Send
    nonce: str

    async def __call__(self, message: Message) -> None:
        if message["type"] == "http.response.start":
            headers = MutableHeaders(scope=message)
            for name, value in closed(self.nonce).items():
                headers[name] = value
        await self.send(message)


def closed(nonce: str) -> dict[str, str]:
    """The headers that let a page do nothing but show itself and speak to its own server."""
    policy = (
        "default-src 'none'", f"script-src 'nonce-{nonce}'", f"style-src 'nonce-{nonce}'", "img-src 'self'",
        "media-src 'self'", "connect-src 'self'", "form-action 'self'", "base-uri 'none'", "frame-ancestors 'none'",
    )  # fmt: skip
    return {
        "Content-Security-Policy": "; ".join(policy),
        "X-Content-Type-Options": "nosniff",
        "X-Frame-Options": "DENY",
        "Referrer-Policy": "no-referrer",
        "Cache-Control": "no-store",
        "Cross-Origin-Opener-Policy": "same-origin",
        "Cross-Origin-Resource-Policy": "same-origin",
    }


async def _whole(receive: Receive) -> bytes | None:
    """The body; None where it grows too long."""
    body = b""
    while len(body) <= MAX_BODY:
        message = await receive()
        body += message.get("body", b"")
        if not message.get("more_body"):
            return body if len(body) <= MAX_BODY else None
    return None


def _claimed(headers: Headers) -> int:
    claimed = headers.get("content-length", "0")
    return int(claimed) if claimed.isdecimal() and len(claimed) < 16 else MAX_BODY + 1


def _no(status: int, why: str, *, close: bool = False) -> Response:
    return PlainTextResponse(f"notesmith: {why}\n", status, {"connection": "close"} if close else None)
