"""An episode with titles that are hard to keep, and recordings made on the spot."""

import json
import subprocess
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest

from notesmith.publishing.chapters.model import Chapter, chapters_of
from notesmith.publishing.episode import Episode
from notesmith.publishing.gathering import read_media
from notesmith.records import Notes, Preference, Repair, Reveal, Section, Sheet, SheetSample
from notesmith.transcript.reading import parse_captions
from notesmith.transcript.talk import Talk

LENGTH_S = 130
HARD = "=;#\\ 'n' <b>&amp; --> 茶 🍵 \\"
CAPTIONS = b"""1
00:00:03,945 --> 00:00:30,000
Ana: So the guy one & its lid, then the <other> one.

2
00:00:30,500 --> 00:01:00,000
Bram: It is all smoke, and that goes on for quite a while, longer than two lines of captions would ever hold.

3
00:01:00,000 --> 00:02:05,000
Ana: Then the bowl. I like it best.
"""
Probe = Callable[[Path], list[tuple[float, str]]]


def run(*arguments: str | Path) -> str:
    """Run a program that has to succeed, and answer what it says."""
    return subprocess.run([str(part) for part in arguments], check=True, capture_output=True, text=True).stdout


@pytest.fixture(scope="session")
def recording(tmp_path_factory: pytest.TempPathFactory) -> Callable[[str], Path]:
    """Make a recording of a kind: some with a picture, all with sound and a title."""
    folder = tmp_path_factory.mktemp("recordings")

    def make(suffix: str) -> Path:
        path = folder / f"-Ana's tasting{suffix}"
        if not path.exists():
            picture = ["-f", "lavfi", "-i", f"color=s=16x16:r=1:d={LENGTH_S}"]
            sound = ["-f", "lavfi", "-i", f"sine=r=48000:d={LENGTH_S}", "-b:a", "32k", "-metadata", "title=Two cups"]
            seen = picture if suffix in (".mp4", ".mov", ".mkv", ".webm") else []
            run("ffmpeg", "-v", "error", *seen, *sound, f"file:{path}")
        return path

    return make


@pytest.fixture
def episode() -> Episode:
    """Four chapters, at times that are no whole seconds."""
    captions = parse_captions(CAPTIONS, "hard.srt")
    text = Talk.from_captions(captions).text
    told = [("opening", None, 0.0, 3.945), ("method", None, 3.945, 30.0), ("tasting", HARD, 30.517, 60.0),
            ("verdict", None, 60.999, 125.0)]  # fmt: skip
    heard = {"quote": "guy one", "span": spanned(text, "guy one"), "confidence": 1.0, "why": ()}
    best = {"quote": "I like it best.", "span": spanned(text, "I like it best."), "confidence": 1.0, "why": (),
            "start": 61.0, "end": 64.5}  # fmt: skip
    notes = Notes(
        transcript="hard.srt", sheet=Sheet(samples=(SheetSample(id=HARD),)), sheet_drafted=False, samples=(HARD,),
        observations=(), comparisons=(), facts=(), ignored=(), warnings=(),
        sections=tuple(
            Section(id=f"s{k}", start=start, end=end, quote="x", span=(k, k + 1), confidence=1.0, why=(),
                    kind=kind, sample=sample)
            for k, (kind, sample, start, end) in enumerate(told)
        ),
        preferences=(Preference(id="p1", **best, preferred=HARD, over=(), scope="overall", degree=None, taster=None),),
        reveals=(Reveal(id="v1", **best | {"start": 20.0, "end": 22.0}, sample=HARD, product="an 'oolong'"),),
        repairs=(Repair(id="r1", start=3.945, end=30.0, **heard, heard="guy one", meant="gai<wan"),),
    )  # fmt: skip
    return Episode(notes, captions, CAPTIONS)


def spanned(text: str, words: str) -> tuple[int, int]:
    """Where words stand in a text."""
    return text.index(words), text.index(words) + len(words)


@pytest.fixture
def with_media(episode: Episode, recording: Callable[[str], Path]) -> Callable[[str], Episode]:
    """The episode with a recording of a kind."""

    def make(suffix: str) -> Episode:
        media = read_media(recording(suffix))
        return Episode(episode.notes, episode.captions, episode.source, media)

    return make


def told(chapters: tuple[Chapter, ...]) -> list[tuple[float, str]]:
    """Start in seconds and title of each chapter."""
    return [(chapter.start_ms / 1000, chapter.title) for chapter in chapters]


def expected(episode: Episode) -> list[tuple[float, str]]:
    """What a client should find."""
    return told(chapters_of(episode))


def probed(path: Path) -> list[tuple[float, str]]:
    """The chapters that ffprobe finds in a recording."""
    found = json.loads(run("ffprobe", "-v", "error", "-show_chapters", "-of", "json", f"file:{path}"))["chapters"]
    return [(float(chapter["start_time"]), _title(chapter)) for chapter in found]


def _title(chapter: dict[str, Any]) -> str:
    # After a title that ends in a backslash there is a space, so that ffmpeg does not read on.
    return str(chapter.get("tags", {}).get("title", "")).rstrip()
