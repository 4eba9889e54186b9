"""SBV: blocks of text under a line `0:00:01.000,0:00:03.000`."""

import re
from collections.abc import Iterator

from notesmith.clock import parse_clock
from notesmith.errors import CaptionError
from notesmith.transcript.formats.timing_lines import Block, read_blocks
from notesmith.transcript.passages import LINE_START, Line, Reading, lines_of

_TIME = r"-?\d{1,4}:\d{2}:\d{2}\.\d{1,3}"
_TIMING = re.compile(rf"{LINE_START}[ \t]*({_TIME}),({_TIME})[ \t]*(?=[\r\n]|\Z)", re.MULTILINE)


def recognises(text: str) -> bool:
    """Whether a line of two times with a comma between them stands somewhere."""
    return _TIMING.search(text) is not None


def read(text: str) -> Reading:
    """Read a cue under each timing line."""
    return read_blocks("sbv", text, _blocks)


def _blocks(text: str, warnings: list[str]) -> Iterator[Block]:
    block: Block | None = None
    for line in lines_of(text):
        match = _TIMING.match(text, line.start, line.end)
        if match:
            if block:
                yield block
            block = _opened(match, line)
        elif block:
            block.lines.append(line)
        elif text[line.start : line.end].strip():
            warnings.append(f"line {line.number}: text before the first cue was left out")
    if block:
        yield block


def _opened(match: re.Match[str], line: Line) -> Block:
    try:
        return Block(line.number, parse_clock(match[1]), parse_clock(match[2]))
    except ValueError as error:
        raise CaptionError(str(error), where=f"line {line.number}", mend="write times as h:mm:ss.mmm") from None
