"""The page and what it is asked: every answer is HTML, and every question names a recording by its number."""

import threading
from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass, field
from functools import lru_cache
from importlib.resources import files
from pathlib import Path
from typing import Any
from urllib.parse import parse_qsl

from jinja2 import Environment, FileSystemLoader, StrictUndefined
from starlette.applications import Starlette
from starlette.concurrency import run_in_threadpool
from starlette.requests import Request
from starlette.responses import FileResponse, HTMLResponse, PlainTextResponse, Response
from starlette.routing import Route

from notesmith.errors import NotesmithError
from notesmith.review.card import card_of, neighbours, sheet_card, words_card
from notesmith.review.changes import changes, groups
from notesmith.review.sitting import Sitting, State
from notesmith.review.wishes import WishError, edit_of

HERE = Path(str(files("notesmith.review")))
STATIC = {
    "htmx.min.js": "text/javascript", "review.js": "text/javascript", "review.css": "text/css",
    "icon.svg": "image/svg+xml",
}  # fmt: skip
"""Every file that is served, and nothing else."""
MOST_FIELDS = 20
Said = str | None


@dataclass
class Table:
    """All recordings under review, counted from 1, and whose turn it is to ask."""

    sittings: Sequence[Sitting]
    lock: threading.Lock = field(default_factory=threading.Lock)


def application(table: Table) -> Starlette:
    """The application; it has to stand behind the guard."""
    return Starlette(
        routes=[
            Route("/", _home(table)),
            Route("/static/{name}", _static),
            Route("/r/{number:int}", _asked(table, _page)),
            Route("/r/{number:int}/media", _media(table)),
            Route("/r/{number:int}/note", _asked(table, _note)),
            Route("/r/{number:int}/next", _asked(table, _next)),
            Route("/r/{number:int}/words", _asked(table, _words)),
            Route("/r/{number:int}/sheet", _asked(table, _sheet)),
            Route("/r/{number:int}/edit", _asked(table, _edit), methods=["POST"]),
            Route("/r/{number:int}/undo", _asked(table, _undo), methods=["POST"]),
            Route("/r/{number:int}/redo", _asked(table, _redo), methods=["POST"]),
        ]
    )


@dataclass(frozen=True)
class Asking:
    """One question to one recording."""

    request: Request
    table: Table
    number: int
    sitting: Sitting
    form: Mapping[str, str]

    def html(self, template: str, **told: Any) -> HTMLResponse:
        """A page or a part of one."""
        nonce = self.request.state.nonce
        text = _templates().get_template(template).render(nonce=nonce, number=self.number, sitting=self.sitting, **told)
        return HTMLResponse(text)


Answering = Callable[[Asking], Response]


def _asked(table: Table, answer: Answering) -> Callable[[Request], Any]:
    """An endpoint that answers beside the server's loop, one question at a time: edits keep their order."""

    async def endpoint(request: Request) -> Response:
        text = await request.body() if request.method == "POST" else request.scope["query_string"]
        try:
            told = dict(parse_qsl(text.decode(), keep_blank_values=True, max_num_fields=MOST_FIELDS))
        except ValueError:
            return PlainTextResponse("notesmith: what was sent cannot be read\n", 400)
        return await run_in_threadpool(locked, request, told)

    def locked(request: Request, told: Mapping[str, str]) -> Response:
        number = int(request.path_params["number"])
        if not 1 <= number <= len(table.sittings):
            return PlainTextResponse("notesmith: there is no such recording\n", 404)
        with table.lock:
            try:
                sitting = table.sittings[number - 1]
                sitting.refresh()
                return answer(Asking(request, table, number, sitting, told))
            except NotesmithError as error:
                return PlainTextResponse(f"notesmith: {error}\n", 409)

    return endpoint


def _home(table: Table) -> Callable[[Request], Any]:
    alone = _asked(table, _page)

    async def home(request: Request) -> Response:
        if len(table.sittings) == 1:
            request.path_params["number"] = 1
            only: Response = await alone(request)
            return only
        return await run_in_threadpool(queue, request)

    def queue(request: Request) -> Response:
        with table.lock:
            for sitting in table.sittings:
                sitting.refresh()
            template = _templates().get_template("queue.html.j2")
            text = template.render(nonce=request.state.nonce, sittings=table.sittings)
        return HTMLResponse(text)

    return home


async def _static(request: Request) -> Response:
    name = request.path_params["name"]
    if name not in STATIC:
        return PlainTextResponse("notesmith: there is no such file\n", 404)
    return FileResponse(HERE / "static" / name, media_type=STATIC[name])


def _page(asking: Asking) -> Response:
    sitting = asking.sitting
    state = sitting.state
    first = next(iter(sitting.waiting()), "")
    return asking.html(
        "page.html.j2", state=state, cues=state.telling.cues(), groups=groups(sitting, state),
        card=_card(sitting, first), queued=len(asking.table.sittings) > 1, said=_welcome(sitting),
    )  # fmt: skip


def _welcome(sitting: Sitting) -> str:
    lost = sitting.state.lost
    told = f"{len(sitting.waiting())} notes deserve a look. Press ? for the keys."
    return f"{told} {len(lost)} earlier corrections found no words: {lost[0]}" if lost else told


def _media(table: Table) -> Callable[[Request], Any]:
    """The recording, in the ranges asked for; it waits for nothing, so that it plays on while an edit is made."""

    async def media(request: Request) -> Response:
        number = int(request.path_params["number"])
        known = table.sittings[number - 1].media if 1 <= number <= len(table.sittings) else None
        if known is None:
            return PlainTextResponse("notesmith: there is no such recording\n", 404)
        return FileResponse(known[0], media_type=known[1])

    return media


def _note(asking: Asking) -> Response:
    return _answer(asking, _card(asking.sitting, asking.form.get("id", "")))


def _next(asking: Asking) -> Response:
    return _answer(asking, _following(asking, asking.form.get("id", ""), back="back" in asking.form))


def _following(asking: Asking, after: str, *, back: bool = False) -> Any:
    """The card of the note that deserves a look after this one; begun anew at the end."""
    due = list(asking.sitting.due)
    place = due.index(after) if after in due else -1
    turned = [*due[place + 1 :], *due[: max(place, 0)]] if not back else [*due[:place][::-1], *due[place:][::-1]]
    found = next((record_id for record_id in turned if asking.sitting.waits(record_id)), None)
    return _card(asking.sitting, found) if found else None


def _words(asking: Asking) -> Response:
    return _answer(asking, words_card(asking.sitting.state, asking.form))


def _sheet(asking: Asking) -> Response:
    return _answer(asking, sheet_card(asking.sitting, asking.form))


def _undo(asking: Asking) -> Response:
    return _turned(asking, done=asking.sitting.undo, word="Undone", nothing="There is nothing to undo.")


def _redo(asking: Asking) -> Response:
    return _turned(asking, done=asking.sitting.redo, word="Done again", nothing="There is nothing to do again.")


def _turned(asking: Asking, done: Callable[[], bool], word: str, nothing: str) -> Response:
    before = asking.sitting.state
    if not done():
        return _answer(asking, _card(asking.sitting, asking.form.get("id", "")), nothing)
    touched = _touched(before, asking.sitting.state) or asking.form.get("id", "")
    return _answer(asking, _card(asking.sitting, touched), f"{word}.")


def _edit(asking: Asking) -> Response:
    sitting = asking.sitting
    before, held = sitting.state, asking.form.get("id", "")
    try:
        sitting.make(edit_of(before, asking.form))
    except WishError as error:
        return _answer(asking, _card(sitting, held), f"Not done: {error}.")
    lost = [one for one in sitting.state.lost if one not in before.lost]
    if lost:
        sitting.undo()
        return _answer(asking, _card(sitting, held), f"Not done: {lost[0].reason}.")
    touched = _touched(before, sitting.state)
    card = _following(asking, held) if "next" in asking.form else _card(sitting, touched or held)
    return _answer(asking, card, _done(asking, before))


def _done(asking: Asking, before: State) -> str:
    words = {"confirm": "Right as it is", "delete": "Deleted", "change": "Changed", "add": "Added", "also": "Added"}
    changed = sum(record is not before.by_id.get(record.id) for record in asking.sitting.state.records)
    many = f" ({changed} notes)" if changed > 1 else ""
    return f"{words.get(asking.form.get('do', ''), 'Done')}{many}. Press u to undo."


def _touched(before: State, now: State) -> str:
    """The first record that is otherwise now, or the one after a record that is gone."""
    found = next((record.id for record in now.records if record is not before.by_id.get(record.id)), None)
    return found or ""


def _card(sitting: Sitting, record_id: str) -> Any:
    record = sitting.state.by_id.get(record_id)
    return card_of(sitting, record, neighbours(sitting.state, record)) if record else None


def _answer(asking: Asking, card: Any, said: Said = None) -> Response:
    """The card, and every part of the page that is no longer as the page shows it."""
    sitting, seen = asking.sitting, asking.form.get("seen", "")
    known = sitting.states.get(int(seen)) if seen.isdecimal() and len(seen) < 9 else None
    if known is None:
        return Response(headers={"HX-Refresh": "true"})
    changed = changes(sitting, known, sitting.state)
    return asking.html("answer.html.j2", state=sitting.state, card=card, changed=changed, said=said)


@lru_cache(maxsize=1)
def _templates() -> Environment:
    loader = FileSystemLoader(HERE / "templates")
    return Environment(
        loader=loader, autoescape=True, undefined=StrictUndefined, trim_blocks=True, lstrip_blocks=True,
        auto_reload=False,
    )  # fmt: skip
