"""WebVTT (W3C). Read by hand: no parser of the format tells where in the source a word stands."""

import re
from collections.abc import Iterator

from notesmith.transcript.formats.marked_text import read_marked
from notesmith.transcript.formats.timing_lines import Block, timing_of
from notesmith.transcript.passages import Passage, Reading, lines_of

_SIGNATURE = re.compile(r"\s*WEBVTT(?=[ \t\r\n]|\Z)")
_ASIDE = re.compile(r"(?:NOTE|STYLE|REGION)(?:[ \t:]|$)")


def recognises(text: str) -> bool:
    """Whether the text opens with the word WEBVTT."""
    return _SIGNATURE.match(text) is not None


def read(text: str) -> Reading:
    """Read voices, word times and character references; notes, styles and regions are left out."""
    reading = Reading("webvtt", ())
    reading.passages = _passages(text, reading.warnings)
    return reading


def _passages(text: str, warnings: list[str]) -> Iterator[Passage]:
    for block in _blocks(text, warnings):
        yield from read_marked(text, block.lines, block.start_ms, block.end_ms)


def _blocks(text: str, warnings: list[str]) -> Iterator[Block]:
    """Only an empty line ends a block: rolling captions hold lines of one space."""
    block: Block | None = None
    aside, loose = True, 0  # the header is an aside
    for line in lines_of(text):
        timing = timing_of(text, line, warnings)
        if timing or line.start == line.end:
            if block:
                yield block
            loose = 0 if timing else _warn_of_loose(loose, line.number, warnings)
            block, aside = timing, False
        elif block:
            block.lines.append(line)
        elif text.startswith("X-TIMESTAMP-MAP", line.start):
            warnings.append(f"line {line.number}: X-TIMESTAMP-MAP shifts a live stream's times; it was not applied")
        elif not aside:
            aside = loose == 0 and _ASIDE.match(text[line.start : line.end]) is not None
            loose += not aside
    if block:
        yield block
    _warn_of_loose(loose, line.number, warnings)


def _warn_of_loose(loose: int, number: int, warnings: list[str]) -> int:
    if loose:
        warnings.append(f"line {number - loose}: text outside any cue was left out")
    return 0
