"""SubRip (.srt), and WebVTT that lost its first line: numbered blocks with a timing line."""

from collections.abc import Iterator

from notesmith.transcript.formats import webvtt
from notesmith.transcript.formats.timing_lines import TIMING_AT_LINE_START, Block, read_blocks, timing_of
from notesmith.transcript.passages import Line, Reading, lines_of


def recognises(text: str) -> bool:
    """Whether a line `start --> end` stands somewhere and the text does not call itself WebVTT."""
    return not webvtt.recognises(text) and TIMING_AT_LINE_START.search(text) is not None


def read(text: str) -> Reading:
    """Read forgivingly: counters may be missing or wrong, and a cue may hold empty lines."""
    return read_blocks("subrip", text, _blocks)


def _blocks(text: str, warnings: list[str]) -> Iterator[Block]:
    block = Block(0, None, None)
    for line in lines_of(text):
        timing = timing_of(text, line, warnings)
        if timing is None:
            block.lines.append(line)
            continue
        _drop_counter(text, block.lines)
        if block.line:
            yield block
        elif any(text[line.start : line.end].strip() for line in block.lines):
            warnings.append("line 1: text before the first cue was left out")
        block = timing
    yield block


def _drop_counter(text: str, lines: list[Line]) -> None:
    """Take the next cue's number off the end: a line of digits, alone or after an empty line."""
    while lines and not text[lines[-1].start : lines[-1].end].strip():
        lines.pop()
    if not lines or not text[lines[-1].start : lines[-1].end].strip().isdigit():
        return
    if len(lines) == 1 or not text[lines[-2].start : lines[-2].end].strip():
        lines.pop()
