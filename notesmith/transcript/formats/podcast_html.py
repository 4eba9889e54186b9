"""The HTML form of Podcast Namespace transcripts: `<cite>` who speaks, `<time>` when, `<p>` what is said."""

import re
from collections.abc import Iterator
from html import unescape

from notesmith.clock import parse_clock
from notesmith.errors import CaptionError
from notesmith.transcript.formats.marked_text import ENTITY
from notesmith.transcript.passages import Passage, Piece, Reading, Turns

_OPENING = re.compile(r"\s*<[!?A-Za-z]")
_MARKS = re.compile(r"<(?:cite|time)[\s>]", re.IGNORECASE)
_TTML = re.compile(r"<(?:[\w.-]+:)?tt[\s>]")
_TOKEN = re.compile(
    r"<(?P<close>/?)(?P<tag>[A-Za-z][A-Za-z0-9]*)(?:[\s/][^<>]*)?>|<[!?][^<>]*>"
    rf"|(?P<entity>{ENTITY})|(?P<text>[^<&]+|[<&])"
)
_UNSPOKEN = ("script", "style", "head")


def recognises(text: str) -> bool:
    """Whether the text opens with a tag and names speakers or times in `<cite>` or `<time>`."""
    return bool(_OPENING.match(text) and _MARKS.search(text)) and _TTML.search(text, 0, 1000) is None


def read(text: str) -> Reading:
    """Read a passage for each `<p>`, with the last `<cite>` and the `<time>` since the `<p>` before."""
    return Reading("podcast html", _Page(text).passages())


class _Page:
    def __init__(self, source: str) -> None:
        self.source = source
        self.speaker: str | None = None
        self.start_ms: int | None = None
        self.said: list[Piece] = []
        self.label: str | None = None
        self.labelled: list[str] = []
        self.spoken = False
        self.unspoken: str | None = None

    def passages(self) -> Iterator[Passage]:
        for token in _TOKEN.finditer(self.source):
            if token["tag"]:
                yield from self.tag(token["tag"].lower(), not token["close"], token.start())
            elif token["text"] or token["entity"]:
                self.add(Piece(unescape(token.group()) if token["entity"] else token.group(), *token.span()))
        yield from self.flush()

    def tag(self, name: str, opens: bool, at: int) -> Iterator[Passage]:
        if self.unspoken or name in _UNSPOKEN:
            self.unspoken = name if opens and not self.unspoken else None if name == self.unspoken else self.unspoken
        elif name == "br":
            self.add(Piece("\n", at, at))
        elif name == "p":
            yield from self.flush()
            self.spoken = opens
        elif name in ("cite", "time"):
            yield from self.flush()
            if not opens:
                self.close_label(at)
            self.label = name if opens else None
            self.labelled.clear()

    def add(self, piece: Piece) -> None:
        if self.label:
            self.labelled.append(piece.text)
        elif self.spoken and not self.unspoken:
            self.said.append(piece)

    def close_label(self, at: int) -> None:
        text = " ".join("".join(self.labelled).split())
        if self.label == "cite":
            self.speaker = text.removesuffix(":").strip() or None
        elif self.label == "time":
            try:
                self.start_ms = parse_clock(text)
            except ValueError as error:
                where = f"line {self.source.count(chr(10), 0, at) + 1}"
                raise CaptionError(str(error), where=where, mend="write times as m:ss or h:mm:ss") from None

    def flush(self) -> Iterator[Passage]:
        turns = Turns(self.start_ms, None, self.speaker)
        for piece in self.said:
            turns.add(piece)
        passages = turns.passages()
        self.said = []
        if passages:
            self.start_ms = None
        yield from passages
