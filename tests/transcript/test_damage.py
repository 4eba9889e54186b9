"""Damaged files: read as far as that is sound, or refused in one line; never a traceback."""

import json
import random
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from notesmith.errors import CaptionError
from notesmith.transcript import Captions, Talk, parse_captions

CASES = Path(__file__).parents[1] / "cases" / "captions"
BITS = ["-->", "<", "</v>", "&", '"', "\\", "{", "]", "\n\n", "\r", ":", ",", "-", "99", "\u00ad", "\ufeff", "é"]


def _read(data: bytes) -> Captions | None:
    """Captions, or None where the file is refused; anything else that is raised fails the test."""
    try:
        return parse_captions(data, "talk")
    except CaptionError:
        return None


def _damaged(text: str, count: int) -> Iterator[str]:
    chance = random.Random(5)
    for _ in range(count):
        at, length = chance.randrange(len(text)), chance.choice([0, 1, 1, 5, 40])
        yield text[:at] + chance.choice(["", chance.choice(BITS)]) + text[at + length :]


def test_one_wound(case: Path) -> None:
    """A file with one cut or one stray sign is read into a whole talk or refused."""
    for text in _damaged(case.read_text(encoding="utf-8"), 150):
        captions = _read(text.encode())
        if captions:
            talk = Talk.from_captions(captions)
            assert talk.text.encode()
            assert all(word.start < word.end for word in talk.words)


def test_cut_short(case: Path) -> None:
    """A file that breaks off anywhere is read as far as it goes or refused."""
    data = case.read_bytes()
    for end in range(0, len(data), max(1, len(data) // 60)):
        _read(data[:end])


@pytest.mark.parametrize("suffix", [".vtt", ".srt"])
def test_words_survive_wounds(suffix: str) -> None:
    """Of 600 files with one wound each, at least 99 % of the words are read and hardly a file refused."""
    cues = [f"00:{k:02}:00{{0}}000 --> 00:{k:02}:09{{0}}000\ncue {k} says these seven words\n" for k in range(40)]
    text = {
        ".vtt": "WEBVTT\n\n" + "\n".join(cues).format("."),
        ".srt": "\n".join(f"{k}\n{cue}" for k, cue in enumerate(cues, 1)).format(","),
    }[suffix]
    read = [captions for damaged in _damaged(text, 600) if (captions := _read(damaged.encode()))]
    kept = sum(len(cue.words) for captions in read for cue in captions.cues)
    assert kept > 0.99 * 240 * len(read)
    assert len(read) > 0.99 * 600


@given(st.binary(max_size=200))
def test_any_bytes(data: bytes) -> None:
    """Whatever the bytes, the answer is captions or a CaptionError."""
    captions = _read(data)
    assert captions is None or captions.cues


@given(st.text(alphabet="0123456789:.,->[](){}<>/&;\"' \n\rWEBVTTvabc\\", max_size=200))
def test_any_signs(text: str) -> None:
    """Whatever the arrangement of the formats' own signs, likewise."""
    captions = _read(text.encode())
    assert captions is None or captions.cues


def _twisted(value: Any, chance: random.Random) -> Any:
    """The same JSON with here and there a value of another kind."""
    if chance.random() < 0.05:
        return chance.choice([None, True, -1, 0.5, 1e308, "", "soon", [], {}, [None], [[1]], {"a": 1}])
    if isinstance(value, dict):
        return {key: _twisted(item, chance) for key, item in value.items()}
    return [_twisted(item, chance) for item in value] if isinstance(value, list) else value


@pytest.mark.parametrize("path", sorted(CASES.glob("*.json")), ids=lambda path: path.name)
def test_json_with_values_of_other_kinds(path: Path) -> None:
    """A transcript whose values are of the wrong kind is read or refused."""
    document = json.loads(path.read_text(encoding="utf-8"))
    for seed in range(300):
        captions = _read(json.dumps(_twisted(document, random.Random(seed))).encode())
        assert captions is None or captions.cues
