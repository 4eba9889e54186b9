"""The line `start --> end` that WebVTT and SubRip share, and the lines that belong to it."""

import re
from collections.abc import Callable, Iterable, Iterator
from dataclasses import dataclass, field

from notesmith.clock import parse_clock
from notesmith.errors import CaptionError
from notesmith.transcript.formats.marked_text import read_marked
from notesmith.transcript.passages import LINE_START, Line, Passage, Reading

# Points and commas, one to three digits and missing hours are all met in files of either name.
_TIME = r"-?\s?(?:\d+:)?\d{1,3}:\d{1,2}(?:[.,:]\d{1,9})?"
_TIMING = re.compile(rf"[ \t]*({_TIME})[ \t]*-->[ \t]*({_TIME})(?=[ \t]|$)")
TIMING_AT_LINE_START = re.compile(rf"{LINE_START}[ \t]*{_TIME}[ \t]*-->[ \t]*{_TIME}", re.MULTILINE)


@dataclass(slots=True)
class Block:
    """A timing line (times in ms; start None where the line cannot be read) and the text lines under it."""

    line: int
    start_ms: int | None
    end_ms: int | None
    lines: list[Line] = field(default_factory=list)


def timing_of(source: str, line: Line, warnings: list[str]) -> Block | None:
    """Read a line as a timing line, or return None where it is none.

    A line of the right shape whose times cannot be read (minutes over 59) is warned of and kept without time.
    Raises CaptionError for a time below zero.
    """
    if source.find("-->", line.start, line.end) < 0:
        return None
    match = _TIMING.match(source[line.start : line.end])
    if match is None:
        return None
    if match[1].startswith("-") or match[2].startswith("-"):
        raise CaptionError("a time below zero", where=f"line {line.number}", mend="shift the captions to start at 0:00")
    try:
        return Block(line.number, _ms(match[1]), _ms(match[2]))
    except ValueError as error:
        warnings.append(f"line {line.number}: {error}; the cue was put right after the one before it")
        return Block(line.number, None, None)


def broken_timing_of(source: str, line: Line, warnings: list[str]) -> Block | None:
    """Read a line that has the arrow but is no timing line as a cue without time, where no cue is open to hold it."""
    if source.find("-->", line.start, line.end) < 0:
        return None
    warnings.append(f"line {line.number}: a time that cannot be read; the cue was put right after the one before it")
    return Block(line.number, None, None)


def _ms(text: str) -> int:
    minutes, _colon, seconds = text.strip().rpartition(":")
    if minutes.count(":") == 2:  # 00:00:01:500, a comma mistyped
        minutes, seconds = text.strip().rsplit(":", 1)
        return parse_clock(f"{minutes}.{seconds}")
    whole, point, fraction = seconds.replace(",", ".").partition(".")
    return parse_clock(f"{minutes}:{whole.zfill(2)}{point}{fraction}")


def read_blocks(name: str, text: str, blocks: Callable[[str, list[str]], Iterable[Block]]) -> Reading:
    """Read marked text cue by cue, as a format cuts its text into them; warnings come as the cues are read."""
    reading = Reading(name, ())

    def passages() -> Iterator[Passage]:
        for block in blocks(text, reading.warnings):
            yield from read_marked(text, block.lines, block.start_ms, block.end_ms)

    reading.passages = passages()
    return reading
