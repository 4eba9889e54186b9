"""What every format reader hands on: passages of lines of words, each word with its place in the source."""

import re
from collections.abc import Iterable, Iterator
from dataclasses import dataclass, field
from itertools import islice
from typing import NamedTuple

from notesmith.errors import CaptionError
from notesmith.transcript.limits import MAX_LINES, MAX_WORDS
from notesmith.transcript.model import Word

# Zero-width marks (joiners, direction marks, soft hyphen) would hide a word from the lexicon.
_INVISIBLE = dict.fromkeys([0xAD, 0x200B, 0x200C, 0x200D, 0x200E, 0x200F, 0x2060, 0xFEFF])
_WORD = re.compile(r"\S+")
LINE_START = r"(?:^|(?<=\r))"
"""The start of a line in a pattern read with re.MULTILINE, where CR alone may end lines too."""
_LINE = re.compile(r"([^\r\n]*)(?:\r\n|\r|\n|\Z)")


class Piece(NamedTuple):
    """Decoded text, the source span it came from and, where the file tells it, the time it is spoken (ms).

    A piece as long as its span stands there literally; any other is one escape or entity.
    """

    text: str
    start: int
    end: int
    ms: int | None = None


class Line(NamedTuple):
    """A line of the source: its number from 1 and its span without the line end."""

    number: int
    start: int
    end: int


@dataclass(slots=True)
class Passage:
    """A cue as a format reader found it; start_ms is None where the file gives no time."""

    start_ms: int | None
    end_ms: int | None
    speaker: str | None
    lines: list[list[Word]]
    echoes: list[tuple[int, int, int]] = field(default_factory=list)
    """Further places of the source that hold a word of this passage: the word's source_start, and the copy's span."""


@dataclass(slots=True)
class Reading:
    """What a format reader made of a text: the format's name, its passages (perhaps lazily), its warnings.

    The warnings are complete only once the passages have been consumed.
    """

    format: str
    passages: Iterable[Passage]
    warnings: list[str] = field(default_factory=list)


def lines_of(source: str) -> Iterator[Line]:
    """The lines of a text, whichever of LF, CR or CRLF ends them. Raises CaptionError past the limit."""
    for number, match in enumerate(_LINE.finditer(source), start=1):
        if number > MAX_LINES:
            raise CaptionError(f"more than {MAX_LINES:,} lines", mend="split the recording")
        yield Line(number, *match.span(1))


def words_of(pieces: Iterable[Piece]) -> list[Word]:
    """Split pieces into words at white space; a word may run over several pieces and starts when its first does."""
    words: list[Word] = []
    unfinished: list[Piece] = []
    for piece in pieces:
        if piece.text[:1].isspace():
            _finish(words, unfinished)
        if len(piece.text) == piece.end - piece.start:
            _split(words, unfinished, piece)
        elif not piece.text.isspace():
            unfinished.append(piece)
    _finish(words, unfinished)
    return words


def _split(words: list[Word], unfinished: list[Piece], piece: Piece) -> None:
    """Split a literal piece; its last word stays unfinished if the piece ends with it."""
    text, offset, ms = piece.text, piece.start, piece.ms
    plain = text.isascii()
    for match in islice(_WORD.finditer(text), MAX_WORDS + 1):
        start, end = match.span()
        if plain and not unfinished and end < len(text):  # most words, and so without detour
            words.append(Word(match[0], ms, offset + start, offset + end))
            continue
        unfinished.append(Piece(match[0], offset + start, offset + end, ms))
        if end < len(text):
            _finish(words, unfinished)
    if len(words) > MAX_WORDS:
        raise CaptionError(f"more than {MAX_WORDS:,} words", mend="split the recording")


def _finish(words: list[Word], parts: list[Piece]) -> None:
    """Join the parts of a word, if there are any."""
    text = parts[0].text if len(parts) == 1 else "".join(part.text for part in parts)
    text = text if text.isascii() else text.translate(_INVISIBLE)
    if text:
        words.append(Word(text, parts[0].ms, parts[0].start, parts[-1].end))
    parts.clear()


class Turns:
    """Gathers the pieces of one cue into a passage for each speaker in it, line by line."""

    def __init__(self, start_ms: int | None, end_ms: int | None, speaker: str | None = None) -> None:
        self._start_ms, self._end_ms = start_ms, end_ms
        self._added = 0
        self._turns: list[tuple[str | None, list[list[Piece]]]] = [(speaker, [[]])]

    def new_line(self) -> None:
        """Start the next line of the cue."""
        self._turns[-1][1].append([])

    def speaker(self, name: str | None) -> None:
        """Give what follows to another speaker."""
        if name != self._turns[-1][0]:
            self._turns.append((name, [[]]))

    def add(self, piece: Piece) -> None:
        """Add a piece to the current line."""
        self._turns[-1][1][-1].append(piece)
        self._added += 1
        if self._added > MAX_WORDS:
            raise CaptionError(f"a cue of more than {MAX_WORDS:,} marks", mend="export the captions again")

    def passages(self) -> list[Passage]:
        """The passages that hold words; a later speaker of the cue starts at the first word's own time, if known."""
        found: list[Passage] = []
        for speaker, pieces in self._turns:
            lines = [words for words in map(words_of, pieces) if words]
            if lines:
                start = lines[0][0].start_ms if found and lines[0][0].start_ms is not None else self._start_ms
                found.append(Passage(start, self._end_ms, speaker, lines))
        return found
