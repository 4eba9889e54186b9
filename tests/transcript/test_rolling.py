"""Rolling captions, made from known words in every shape in which they are met, folded back to those words."""

import difflib
import random
from collections.abc import Callable, Iterator

import pytest
from hypothesis import given
from hypothesis import strategies as st

from notesmith.clock import format_clock_exact
from notesmith.transcript import Captions, parse_captions

COMMON = "the a it is very very not so yes yes yeah and sour sweet cup one two like really green of in my".split()
ROWS = st.lists(st.sampled_from(["yes", "no", "so", "sour"]), min_size=1, max_size=6)
WORDS, SEEDS = 400, 40
Shown = tuple[int, int, list[str]]
"""A cue: its times in ms, and its lines."""


def _rows(seed: int) -> list[list[str]]:
    """Lines of talk full of real repetition: doubled words, lines of one word, lines said twice."""
    chance = random.Random(seed)
    rows: list[list[str]] = []
    while sum(map(len, rows)) < WORDS:
        row = ["yeah"] if chance.random() < 0.08 else chance.choices(COMMON, k=chance.randint(2, 9))
        row = [f"{word}{chance.randint(0, 99)}" if chance.random() < 0.3 else word for word in row]
        rows.append(list(rows[-1]) if rows and chance.random() < 0.02 else row)
    return rows


def _tagged(row: list[str], start: int) -> str:
    times = (format_clock_exact(start + 200 * k).rjust(12, "0") for k in range(1, len(row)))
    return row[0] + "".join(f"<{time}><c> {word}</c>" for time, word in zip(times, row[1:], strict=True))


def _window(rows: list[list[str]], write: Callable[[list[str], int], str]) -> Iterator[Shown]:
    """Two lines that scroll, and after each step a cue of 10 ms that holds the new line alone."""
    at, above = 0, " "
    for row in rows:
        end = at + 300 * len(row) + 500
        yield at, end, [above, write(row, at)]
        above = " ".join(row)
        yield end, end + 10, [above, " "]
        at = end


def tagged_window(rows: list[list[str]]) -> Iterator[Shown]:
    """Shape a: a window of two lines with word times."""
    return _window(rows, _tagged)


def plain_window(rows: list[list[str]]) -> Iterator[Shown]:
    """Shape b: the same after a conversion that dropped tags and lines of one space."""
    for start, end, lines in _window(rows, lambda row, _start: " ".join(row)):
        yield start, end, [line for line in lines if line.strip()]


def sliding(rows: list[list[str]]) -> Iterator[Shown]:
    """Shape c: one line, the words of the cue before and then new ones."""
    for k, row in enumerate(rows):
        yield 2000 * k, 2000 * k + 2000, [" ".join((rows[k - 1] if k else []) + row)]


def ordinary(rows: list[list[str]]) -> Iterator[Shown]:
    """Shape d: captions that do not roll at all."""
    for k, row in enumerate(rows):
        yield 2000 * k, 2000 * k + 2000, [" ".join(row)]


def painted(rows: list[list[str]]) -> Iterator[Shown]:
    """Shape e: a line that grows word by word, then starts anew."""
    at = 0
    for row in rows:
        for k in range(len(row)):
            yield at, at + 300, [" ".join(row[: k + 1])]
            at += 300


SHAPES = [tagged_window, plain_window, sliding, ordinary, painted]


def _vtt(cues: Iterator[Shown]) -> bytes:
    blocks = (
        f"{format_clock_exact(start).rjust(12, '0')} --> {format_clock_exact(end).rjust(12, '0')}\n" + "\n".join(lines)
        for start, end, lines in cues
    )
    return ("WEBVTT\n\n" + "\n\n".join(blocks) + "\n").encode()


def _srt(cues: Iterator[Shown]) -> bytes:
    return _vtt(cues).replace(b"WEBVTT\n\n", b"")


def _words(captions: Captions) -> list[str]:
    return [word.text for cue in captions.cues for word in cue.words]


def _lost_and_added(said: list[str], read: list[str]) -> tuple[int, int]:
    edits = difflib.SequenceMatcher(None, said, read, autojunk=False).get_opcodes()
    changed = [edit for edit in edits if edit[0] != "equal"]
    return sum(e[2] - e[1] for e in changed), sum(e[4] - e[3] for e in changed)


@pytest.mark.parametrize("write", [_vtt, _srt])
@pytest.mark.parametrize("shape", SHAPES)
def test_loses_and_adds_under_a_thousandth(
    shape: Callable[[list[list[str]]], Iterator[Shown]], write: Callable[[Iterator[Shown]], bytes]
) -> None:
    """Over 40 talks of 400 words, fewer than one word in a thousand is lost, and none is added."""
    lost = added = total = 0
    for seed in range(SEEDS):
        rows = _rows(seed)
        said = [word for row in rows for word in row]
        seen = _lost_and_added(said, _words(parse_captions(write(shape(rows)), "talk")))
        lost, added, total = lost + seen[0], added + seen[1], total + len(said)
    assert (lost < total / 1000, added) == (True, 0)


@given(st.lists(ROWS, min_size=1, max_size=12))
def test_tagged_window_is_folded_exactly(rows: list[list[str]]) -> None:
    """However much the talk repeats itself, a window with hold cues gives back exactly what was said."""
    assert _words(parse_captions(_vtt(tagged_window(rows)), "talk")) == [word for row in rows for word in row]


@pytest.mark.parametrize("seed", range(5))
def test_words_keep_their_own_times(seed: int) -> None:
    """After folding, the first word of a line has its cue's time and each tag times the next word."""
    rows = _rows(seed)
    starts = [start for start, _end, lines in tagged_window(rows) if lines[1] != " "]
    captions = parse_captions(_vtt(tagged_window(rows)), "talk.vtt")
    assert [cue.start_ms for cue in captions.cues] == starts
    for cue in captions.cues:
        expected = [cue.start_ms + 200 * k for k in range(len(cue.words))]
        assert [cue.start_ms if word.start_ms is None else word.start_ms for word in cue.words] == expected


def test_every_copy_is_an_echo() -> None:
    """Every word of the file is either kept or the echo of one that is."""
    captions = parse_captions(_srt(plain_window(_rows(1))), "talk.srt")
    in_file = [line.split() for line in captions.source_text.splitlines() if line and "-->" not in line]
    assert len(captions.echoes) + len(_words(captions)) == sum(map(len, in_file))
