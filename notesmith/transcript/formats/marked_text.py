"""The text inside a WebVTT or SubRip cue: voices, word times, styling tags and character references.

Only tags that these formats know are tags: `a < b` and `<laughs>` stay what somebody typed. Every pattern
stops at the next opening bracket, so a hostile line costs linear time.
"""

import re
from collections.abc import Iterable
from html import unescape

from notesmith.clock import parse_clock
from notesmith.transcript.passages import Line, Passage, Piece, Turns

ENTITY = r"&(?:\#\d{1,7}|\#[xX][0-9a-fA-F]{1,6}|[A-Za-z][A-Za-z0-9]{1,30});"
_TOKEN = re.compile(
    rf"""
    <(?P<time>(?:\d{{1,4}}:)?\d{{1,2}}:\d{{2}}[.,]\d{{3}})>
    | <(?P<close>/?)(?P<tag>v|c|i|b|u|s|em|strong|lang|ruby|rt|font|span|br)(?P<rest>[.\s/][^<>]*)?>
    | (?P<override>\{{\\[^{{}}]*\}})
    | (?P<entity>{ENTITY})
    | (?P<text>[^<&{{]+|[<&{{])
    """,
    re.VERBOSE | re.IGNORECASE,
)
_WORD_TIME = re.compile(r"<(?:\d{1,4}:)?\d{1,2}:\d{2}[.,]\d{3}>")


def read_marked(source: str, lines: Iterable[Line], start_ms: int | None, end_ms: int | None) -> list[Passage]:
    """Read the lines of one cue into a passage for each voice; words before the first word time start with the cue."""
    lines = list(lines)
    turns = Turns(start_ms, end_ms)
    word_timed = any(_WORD_TIME.search(source, line.start, line.end) for line in lines)
    state = _State(turns, start_ms if word_timed else None)
    for line in lines:
        turns.new_line()
        state.read(source, line.start, line.end)
    return turns.passages()


class _State:
    def __init__(self, turns: Turns, ms: int | None) -> None:
        self.turns, self.ms, self.in_ruby_text = turns, ms, False

    def read(self, source: str, start: int, end: int) -> None:
        for token in _TOKEN.finditer(source, start, end):
            kind = token.lastgroup
            if kind in {"text", "entity"}:
                text = unescape(token.group()) if kind == "entity" else token.group()
                if not self.in_ruby_text:
                    self.turns.add(Piece(text, *token.span(), self.ms))
            elif token["time"]:
                self.ms = _time(token["time"], self.ms)
            elif token["tag"]:
                self.tag(token["tag"].lower(), not token["close"], token["rest"] or "")

    def tag(self, name: str, opens: bool, rest: str) -> None:
        if name == "v":
            self.turns.speaker(_annotation(rest) if opens else None)
        elif name == "rt":  # how a character is read aloud, not a further word
            self.in_ruby_text = opens
        elif name == "br":
            self.turns.new_line()


def _time(text: str, before: int | None) -> int | None:
    try:
        return parse_clock(text)
    except ValueError:
        return before


def _annotation(rest: str) -> str | None:
    _classes, _space, name = rest.replace("\t", " ").partition(" ")
    return " ".join(unescape(name).split()) or None
