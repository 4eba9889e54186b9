"""Every format, on caption files beside which stands what they say (NAME.said)."""

import html
import json
import re
from collections.abc import Callable
from itertools import pairwise
from pathlib import Path

import pytest

from notesmith.transcript import Captions, parse_captions, read_captions

TAG = re.compile(r"</?(?:i|b|span|font)(?: [^<>]*)?>")
JSON_MARK = re.compile(r"[.,]$")


def _decoded(raw: str, captions: Captions, suffix: str) -> str:
    """What a span of the source says once its escapes, entities and inner tags are taken out."""
    if suffix == ".json":
        return str(json.loads(f'"{raw}"'))
    literal = TAG.sub("", raw) if captions.format in {"webvtt", "subrip", "ttml"} else raw
    return html.unescape(literal).replace("\u00ad", "")


def test_file_says(case: Path, written: Callable[[Captions], str]) -> None:
    """Times, speakers, words and warnings are those written beside the file."""
    assert written(read_captions(case)) == Path(f"{case}.said").read_text(encoding="utf-8")


def test_offsets_hold_the_word(case: Path) -> None:
    """Each word's span of the source is the word; a mark that a recogniser lists apart is not in it."""
    captions = read_captions(case)
    for cue in captions.cues:
        for word in cue.words:
            raw = captions.source_text[word.source_start : word.source_end]
            apart = case.name in {"items.json", "podcast-words.json"}
            expected = JSON_MARK.sub("", word.text) if apart else word.text
            assert _decoded(raw, captions, case.suffix) == expected


def test_echoes_hold_the_word(case: Path) -> None:
    """Each echo's span of the source repeats its word."""
    captions = read_captions(case)
    words = [word.text for cue in captions.cues for word in cue.words]
    for echo in captions.echoes:
        raw = captions.source_text[echo.source_start : echo.source_end]
        assert _decoded(raw, captions, case.suffix) == words[echo.word]


def test_spans_are_apart(case: Path) -> None:
    """No two words or echoes share a character of the source, so each can be corrected alone."""
    captions = read_captions(case)
    spans = [(word.source_start, word.source_end) for cue in captions.cues for word in cue.words]
    spans = sorted(spans + [(echo.source_start, echo.source_end) for echo in captions.echoes])
    assert all(before[1] <= after[0] for before, after in pairwise(spans))


@pytest.mark.parametrize("line_end", ["\r\n", "\r"])
def test_line_ends(case: Path, line_end: str, written: Callable[[Captions], str]) -> None:
    """CRLF and CR end lines as LF does."""
    data = case.read_bytes().replace(b"\n", line_end.encode())
    assert written(parse_captions(data, case.name)) == written(read_captions(case))


@pytest.mark.parametrize("name", ["talk.mp4", "talk.vtt", "talk"])
def test_name_does_not_matter(case: Path, name: str) -> None:
    """The content tells the format, whatever the file is called."""
    assert parse_captions(case.read_bytes(), name).format == read_captions(case).format


def test_utf_16_reads_the_same(case: Path, written: Callable[[Captions], str]) -> None:
    """A file saved as UTF-16 with its mark says the same."""
    data = case.read_text(encoding="utf-8").encode("utf-16")
    assert written(parse_captions(data, case.name)) == written(read_captions(case))


def test_same_bytes_same_captions(case: Path) -> None:
    """Reading twice gives equal captions."""
    assert read_captions(case) == read_captions(case)
