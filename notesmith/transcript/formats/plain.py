"""Plain text with no times: one passage a line, on an assumed clock. It has no mark of its own to be known by."""

from notesmith.transcript.passages import Passage, Piece, Reading, lines_of, words_of


def read(text: str) -> Reading:
    """Read each line that holds words; the passages carry no times."""
    lines = (words_of([Piece(text[line.start : line.end], line.start, line.end)]) for line in lines_of(text))
    return Reading("plain", (Passage(None, None, None, [words]) for words in lines if words))
