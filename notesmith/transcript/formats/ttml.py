"""TTML and its profile IMSC (W3C): nested times, frames, ticks, agents; styling and regions are left out."""

import re
from collections.abc import Iterator
from dataclasses import dataclass
from fractions import Fraction

from notesmith.clock import parse_clock
from notesmith.errors import CaptionError
from notesmith.transcript.formats.located_xml import Element, parse_xml
from notesmith.transcript.passages import Passage, Piece, Reading, Turns

_OPENING = re.compile(r"\s*<(?:\?xml[\s?]|!DOCTYPE\s+tt[\s>\[]|(?:[\w.-]+:)?tt[\s>/])")
_HTML = re.compile(r"<(?:!DOCTYPE\s+)?html[\s>]", re.IGNORECASE)
_CLOCK = re.compile(r"(\d{2,}:\d{2}:\d{2})(?:(\.\d+)|:(\d{2,})(?:\.\d+)?)?")
_OFFSET = re.compile(r"(\d+(?:\.\d+)?)(h|ms|m|s|f|t)")
_RATIO = re.compile(r"([1-9]\d{0,5})[ :]+([1-9]\d{0,5})")
_UNTIMED = ("metadata", "set", "head")


@dataclass(frozen=True, slots=True)
class _Span:
    """When an element is shown, in ms; who speaks in it."""

    begin: int
    end: int | None
    agent: str | None


def recognises(text: str) -> bool:
    """Whether the text opens as XML (HTML aside) or as a `tt` element."""
    return _OPENING.match(text) is not None and _HTML.search(text, 0, 1000) is None


def read(text: str) -> Reading:
    """Read a passage for each `p` and speaker in it; timed spans time their words."""
    root = parse_xml(text)
    bodies = root.elements("body")
    if root.name != "tt":
        raise CaptionError(f"XML, but its root is <{root.name}>, not TTML", mend="export WebVTT or SubRip instead")
    reader = _Reader(root)
    return Reading("ttml", (passage for body in bodies for passage in reader.passages(body, _Span(0, None, None))))


class _Reader:
    def __init__(self, root: Element) -> None:
        rate = Fraction(_number(root, "frameRate", 30))
        tick_rate = _number(root, "tickRate", int(rate) if "frameRate" in root.attributes else 1)
        self.unit_ms = {"h": Fraction(3_600_000), "m": Fraction(60_000), "s": Fraction(1000), "ms": Fraction(1)}
        self.unit_ms |= {"f": 1000 / (rate * _multiplier(root)), "t": Fraction(1000, tick_rate)}
        self.agents = {
            agent.attributes.get("id", ""): next((name.text() for name in agent.elements("name")), "")
            for head in root.elements("head")
            for holder in [head, *head.elements("metadata")]
            for agent in holder.elements("agent")
        }

    def passages(self, element: Element, around: _Span) -> Iterator[Passage]:
        """Walk the containers; times count from the container's begin, in a sequence from the sibling before."""
        span = self.span(element, around)
        if element.name == "p":
            yield from self.paragraph(element, span)
            return
        origin = span
        for child in element.children:
            if isinstance(child, Element) and child.name not in _UNTIMED:
                yield from self.passages(child, origin)
                origin = self.following(element, child, origin)

    def following(self, container: Element, child: Element, origin: _Span) -> _Span:
        if container.attributes.get("timeContainer") != "seq":
            return origin
        done = self.span(child, origin)
        return _Span(done.begin if done.end is None else done.end, origin.end, origin.agent)

    def span(self, element: Element, around: _Span) -> _Span:
        """The element's times, inside those around it; where end and dur are both given the earlier counts."""
        begin, end, dur = (self.time(element, key) for key in ("begin", "end", "dur"))
        start = around.begin + (begin or 0)
        ends = [
            around.end,
            None if end is None else around.begin + end,
            None if dur is None else start + dur,
        ]
        agent = self.speaker(element.attributes.get("agent")) or around.agent
        return _Span(start, min((end for end in ends if end is not None), default=None), agent)

    def paragraph(self, element: Element, span: _Span) -> list[Passage]:
        turns = Turns(span.begin, span.end, span.agent)
        self.inner(element, span, None, turns)
        passages = turns.passages()
        if "begin" not in element.attributes:
            for passage in passages:
                times = [word.start_ms for line in passage.lines for word in line if word.start_ms is not None]
                passage.start_ms = min(times, default=passage.start_ms)
        return passages

    def inner(self, element: Element, span: _Span, ms: int | None, turns: Turns) -> None:
        for child in element.children:
            if isinstance(child, Piece):
                turns.speaker(span.agent)
                turns.add(child._replace(ms=ms))
            elif child.name == "br":
                turns.new_line()
            elif child.name not in _UNTIMED:
                within = self.span(child, span)
                self.inner(child, within, within.begin if "begin" in child.attributes else ms, turns)

    def speaker(self, agents: str | None) -> str | None:
        return ", ".join(self.agents.get(agent) or agent for agent in (agents or "").split()) or None

    def time(self, element: Element, key: str) -> int | None:
        """A time expression in ms: clock time, clock time with frames, or a number with its unit."""
        text = element.attributes.get(key)
        if text is None:
            return None
        try:
            return self.ms(text.strip())
        except ValueError:
            raise CaptionError(f"{key}={text[:40]!r} is no time", mend="write times as hh:mm:ss.mmm") from None

    def ms(self, text: str) -> int:
        if clock := _CLOCK.fullmatch(text):
            return parse_clock(clock[1] + (clock[2] or "")) + round(int(clock[3] or 0) * self.unit_ms["f"])
        offset = _OFFSET.fullmatch(text)
        if offset is None:
            raise ValueError(text)
        return round(Fraction(offset[1]) * self.unit_ms[offset[2]])


def _multiplier(root: Element) -> Fraction:
    text = root.attributes.get("frameRateMultiplier", "1 1")
    match = _RATIO.fullmatch(text.strip())
    if match is None:
        raise CaptionError(f"frameRateMultiplier={text[:40]!r} is no ratio", mend="write it as 1000 1001")
    return Fraction(int(match[1]), int(match[2]))


def _number(root: Element, key: str, default: int) -> int:
    text = root.attributes.get(key, str(default)).strip()
    if not re.fullmatch(r"[1-9]\d{0,9}", text):
        raise CaptionError(f"{key}={text[:40]!r} is no rate", mend="write a whole number above zero")
    return int(text)
