"""WebVTT (W3C). Read by hand: no parser of the format tells where in the source a word stands."""

import re
from collections.abc import Iterator

from notesmith.transcript.formats.timing_lines import Block, broken_timing_of, read_blocks, timing_of
from notesmith.transcript.passages import Line, Reading, lines_of

_SIGNATURE = re.compile(r"\s*WEBVTT(?=[ \t\r\n]|\Z)")
_ASIDE = re.compile(r"(?:NOTE|STYLE|REGION)(?:[ \t:]|$)")


def recognises(text: str) -> bool:
    """Whether the text opens with the word WEBVTT."""
    return _SIGNATURE.match(text) is not None


def read(text: str) -> Reading:
    """Read voices, word times and character references; notes, styles and regions are left out."""
    return read_blocks("webvtt", text, _blocks)


def _blocks(text: str, warnings: list[str]) -> Iterator[Block]:
    """Only an empty line ends a block: rolling captions hold lines of one space."""
    block: Block | None = None
    outside = _Outside(text, warnings)
    for line in lines_of(text):
        timing = timing_of(text, line, warnings) or (None if block else outside.broken_timing(line))
        if timing or line.start == line.end:
            if block:
                yield block
            outside.ends(line, at_cue=timing is not None)
            block = timing
        elif block:
            block.lines.append(line)
        else:
            outside.read(line)
    if block:
        yield block
    outside.ends(line, at_cue=False)


class _Outside:
    """The lines outside cues: the header, notes, styles, regions, names of cues, and text that belongs to none."""

    def __init__(self, text: str, warnings: list[str]) -> None:
        self.text, self.warnings = text, warnings
        self.aside, self.loose = True, 0  # the header is an aside

    def read(self, line: Line) -> None:
        if self.text.startswith("X-TIMESTAMP-MAP", line.start):
            what = "X-TIMESTAMP-MAP shifts a live stream's times; it was not applied"
            self.warnings.append(f"line {line.number}: {what}")
        elif not self.aside:
            self.aside = self.loose == 0 and _ASIDE.match(self.text[line.start : line.end]) is not None
            self.loose += not self.aside

    def broken_timing(self, line: Line) -> Block | None:
        return None if self.aside else broken_timing_of(self.text, line, self.warnings)

    def ends(self, line: Line, at_cue: bool) -> None:
        """A cue may have a name above it; any other loose text is lost to every player."""
        if self.loose and not at_cue:
            self.warnings.append(f"line {line.number - self.loose}: text outside any cue was left out")
        self.aside, self.loose = False, 0
