"""What editors get: markers in OpenTimelineIO's own reader, and a list that ffmpeg plays."""

import json
from collections.abc import Callable
from pathlib import Path

import pytest

from notesmith.publishing.chapters import otio as chapters_otio
from notesmith.publishing.chapters.model import chapters_of
from notesmith.publishing.clips import concat
from notesmith.publishing.clips import otio as clips_otio
from notesmith.publishing.clips.moments import clips_of
from notesmith.publishing.episode import Episode
from tests.publishing.clients.conftest import run


def marked(text: str | None, folder: Path) -> list[tuple[int, int, str]]:
    """Start, length and name of the markers that the reader finds, in milliseconds."""
    otio = pytest.importorskip("opentimelineio")
    (folder / "a.otio").write_text(text or "", "utf-8")
    timeline = otio.adapters.read_from_file(str(folder / "a.otio"))
    (clip,) = timeline.find_clips()
    ranges = [(marker.marked_range, marker.name) for marker in clip.markers]
    return [
        (round(found.start_time.to_seconds() * 1000), round(found.duration.to_seconds() * 1000), name)
        for found, name in ranges
    ]


def test_chapters_are_markers(episode: Episode, tmp_path: Path) -> None:
    """With their times and titles."""
    chapters = [(one.start_ms, one.end_ms - one.start_ms, one.title) for one in chapters_of(episode)]
    assert marked(chapters_otio.render(episode), tmp_path) == chapters


def test_clips_are_markers(episode: Episode, tmp_path: Path) -> None:
    """With the reasons for them as names."""
    clips = [(clip.start_ms, clip.end_ms - clip.start_ms, "; ".join(clip.what)) for clip in clips_of(episode)]
    assert clips
    assert marked(clips_otio.render(episode), tmp_path) == clips


@pytest.mark.client("ffmpeg", "ffprobe")
def test_ffmpeg_plays_the_clips_one_after_the_other(with_media: Callable[[str], Episode], tmp_path: Path) -> None:
    """For as long as they take together."""
    episode = with_media(".flac")
    assert episode.media
    (tmp_path / episode.media.path.name).symlink_to(episode.media.path)
    (tmp_path / "a.ffconcat").write_text(concat.render(episode) or "", "utf-8")
    run("ffmpeg", "-v", "error", "-f", "concat", "-safe", "0", "-i", tmp_path / "a.ffconcat", tmp_path / "a.wav")
    told = run("ffprobe", "-v", "error", "-show_entries", "format=duration", "-of", "json", tmp_path / "a.wav")
    clips_s = sum(clip.end_ms - clip.start_ms for clip in clips_of(episode)) / 1000
    assert float(json.loads(told)["format"]["duration"]) == pytest.approx(clips_s, abs=0.3)
