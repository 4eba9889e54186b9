"""Plain lines that open with a time: `[0:07] text`, `1:02:03 text`, or the time alone above its text."""

import re
from collections.abc import Iterator

from notesmith.clock import CLOCK, parse_clock
from notesmith.errors import CaptionError
from notesmith.transcript.passages import LINE_START, Line, Passage, Piece, Reading, lines_of, words_of

_STAMP = re.compile(
    rf"[ \t]*(?P<open>[\[(])?[ \t]*(?P<start>{CLOCK})(?:[ \t]*[-–][ \t]*(?P<end>{CLOCK}))?[ \t]*"
    r"(?(open)[\])])(?:[ \t]*[-–:|](?=[ \t]|$))?(?=[ \t]|$)(?![ \t]*-->)"
)
_STAMP_LINE = re.compile(LINE_START + _STAMP.pattern.replace("$", "(?:$|\r)"), re.MULTILINE)
_FEW = 0.1
_MANY = 0.5


def recognises(text: str) -> bool:
    """Whether the lines open with times. Raises CaptionError where only some do, so that both readings are open."""
    stamps = sum(1 for _ in _STAMP_LINE.finditer(text))
    if stamps == 0:
        return False
    lines = [line for line in lines_of(text) if text[line.start : line.end].strip()]
    opens = _STAMP.match(text, lines[0].start, lines[0].end) is not None
    if (opens and stamps > 1) or stamps >= _MANY * len(lines):
        return True
    if stamps < 2 or stamps < _FEW * len(lines):
        return False
    raise CaptionError(
        f"{stamps} of {len(lines)} lines open with a time: this could be timed lines under a heading, or plain text",
        mend="start the first line with a time such as [0:00], or take the times out",
    )


def read(text: str) -> Reading:
    """Read a cue at each time; a line without one goes on with the cue above it."""
    reading = Reading("stamped", ())
    reading.passages = _passages(text, reading.warnings)
    return reading


def _passages(text: str, warnings: list[str]) -> Iterator[Passage]:
    passage: Passage | None = None
    for line in lines_of(text):
        stamp = _STAMP.match(text, line.start, line.end)
        if stamp:
            if passage and passage.lines:
                yield passage
            passage = _opened(stamp, line)
        start = stamp.end() if stamp else line.start
        words = words_of([Piece(text[start : line.end], start, line.end)])
        if words and passage:
            passage.lines.append(words)
        elif words:
            warnings.append(f"line {line.number}: text above the first time was left out")
    if passage and passage.lines:
        yield passage


def _opened(stamp: re.Match[str], line: Line) -> Passage:
    try:
        end = stamp["end"] and parse_clock(stamp["end"])
        return Passage(parse_clock(stamp["start"]), end or None, None, [])
    except ValueError as error:
        raise CaptionError(str(error), where=f"line {line.number}", mend="write times as m:ss or h:mm:ss") from None
