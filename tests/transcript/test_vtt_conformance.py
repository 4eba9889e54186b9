"""WebVTT as a parser not ours reads it: the same cues, times and words."""

import json
import random
import subprocess
from pathlib import Path

import pytest

from notesmith.clock import format_clock_exact
from notesmith.transcript.formats import webvtt
from notesmith.transcript.formats.marked_text import read_marked

SCRIPT = Path(__file__).parents[1] / "node" / "cues.mjs"
CASES = Path(__file__).parents[1] / "cases" / "captions"
Cues = list[tuple[int | None, int | None, list[str]]]

pytestmark = pytest.mark.node


def _theirs(path: Path) -> Cues:
    done = subprocess.run(["node", SCRIPT, path], capture_output=True, check=True, text=True, timeout=60)
    return [
        (round(cue["start"] * 1000), round(cue["end"] * 1000), cue["text"].replace("\u00ad", "").split())
        for cue in json.loads(done.stdout)
    ]


def _ours(path: Path) -> Cues:
    text = path.read_text(encoding="utf-8")
    found: Cues = []
    for block in webvtt._blocks(text, []):
        lines = (line for passage in read_marked(text, block.lines, block.start_ms, None) for line in passage.lines)
        found.append((block.start_ms, block.end_ms, [word.text for line in lines for word in line]))
    return found


@pytest.mark.parametrize("name", ["voices.vtt", "word-times.vtt", "rolling.vtt"])
def test_case_files(name: str) -> None:
    """The case files are read alike."""
    assert _ours(CASES / name) == _theirs(CASES / name)


def test_typed_signs_are_kept_on_purpose() -> None:
    """Where somebody typed a lone bracket the standard drops words; times agree and we keep the words."""
    ours, theirs = _ours(CASES / "typed-signs.vtt"), _theirs(CASES / "typed-signs.vtt")
    assert [cue[:2] for cue in ours] == [cue[:2] for cue in theirs]
    assert len(ours[0][2]) > len(theirs[0][2])
    assert ours[1] == theirs[1]


def _cue(chance: random.Random, start: int) -> str:
    end = start + 3000
    marked = ["<i>very</i>", "<b.loud>so</b>", "tea", "&amp;", "<c>thin</c>", "un<u>even</u>", "&lt;3", "3 &gt; 2"]
    words = chance.choices(marked, k=chance.randint(1, 9))
    words.insert(len(words) // 2, f"<{_clock(start + 1000)}>timed")
    text = chance.choice([" ", "\n"]).join(words)
    voiced = chance.choice([text, f"<v Orla>{text}", f"<v.first Piet Janse>{text}</v>"])
    number = chance.choice(["", f"{start}\n"])
    return f"{number}{_clock(start)} --> {_clock(end)}{chance.choice(['', ' align:start position:10%'])}\n{voiced}\n"


def _clock(ms: int) -> str:
    return format_clock_exact(ms).rjust(12, "0")


@pytest.mark.parametrize("line_end", ["\n", "\r\n", "\r"])
def test_made_files(tmp_path: Path, line_end: str) -> None:
    """Three hundred made cues with notes between them, in every kind of line end, are read alike."""
    chance = random.Random(8)
    blocks = ["WEBVTT made by a test\n"]
    for k in range(300):
        blocks.append(_cue(chance, 5000 * k))
        if chance.random() < 0.1:
            blocks.append(f"NOTE cue {k} was poured\nslowly\n")
    path = tmp_path / "made.vtt"
    path.write_bytes("\n".join(blocks).replace("\n", line_end).encode())
    ours = _ours(path)
    assert len(ours) == 300
    assert ours == _theirs(path)
