"""Chapters in a copy of the recording, as ffprobe finds them."""

import os
from collections.abc import Callable
from dataclasses import replace
from pathlib import Path

import pytest

from notesmith.errors import MediaError, MissingError, OutputError
from notesmith.publishing.episode import Episode, Media
from notesmith.publishing.gathering import read_media
from notesmith.publishing.muxing import mux, plan
from notesmith.records import Notes, Section
from tests.publishing.clients.conftest import expected, probed, run

pytestmark = [pytest.mark.client("ffmpeg", "ffprobe"), pytest.mark.slow]

WithMedia = Callable[[str], Episode]
KINDS = (".mp4", ".m4a", ".mov", ".mkv", ".mka", ".webm", ".mp3", ".ogg", ".opus", ".flac")


def streams(path: Path) -> list[str]:
    """A hash of every stream of sound or picture."""
    told = run("ffmpeg", "-v", "error", "-i", f"file:{path}", "-map", "0:a", "-map", "0:v?", "-c", "copy", "-f",
               "streamhash", "-")  # fmt: skip
    return told.splitlines()


def title(path: Path) -> str:
    """The title of a recording."""
    return run("ffprobe", "-v", "error", "-show_entries", "format_tags=title:stream_tags=title", "-of", "csv=p=0",
               f"file:{path}").strip()  # fmt: skip


@pytest.mark.parametrize("kind", KINDS)
def test_a_copy_holds_the_chapters_and_all_that_was_in_it(kind: str, with_media: WithMedia, tmp_path: Path) -> None:
    """Times to the millisecond, titles to the letter, sound and picture bit by bit, the title of the recording."""
    episode = with_media(kind)
    assert episode.media
    copy = mux(plan(episode, tmp_path))
    assert probed(copy) == expected(episode)
    assert streams(copy) == streams(episode.media.path)
    assert title(copy) == title(episode.media.path)
    assert [path.name for path in tmp_path.iterdir()] == [f"hard.chapters{kind}"]


@pytest.mark.parametrize("kind", KINDS)
def test_chapters_take_the_place_of_those_it_had(kind: str, with_media: WithMedia, tmp_path: Path) -> None:
    """No old one stays beside them."""
    first = mux(plan(with_media(kind), tmp_path))
    episode = replace(with_media(kind), media=read_media(first))
    episode = replace(episode, notes=episode.notes.model_copy(update={"sections": episode.notes.sections[:2]}))
    (tmp_path / "again").mkdir()
    again = mux(plan(episode, tmp_path / "again"))
    assert probed(again) == expected(episode)


def test_an_mp3_gets_no_more_chapters_than_it_can_count(with_media: WithMedia, tmp_path: Path) -> None:
    """Its table of contents counts them in one byte."""
    episode = with_media(".mp3")
    many = tuple(
        Section(id=f"s{k}", start=k * 0.4, end=k * 0.4, quote="x", span=(k, k + 1), confidence=1.0, why=(),
                kind="tasting" if k % 2 else "aroma", sample=None)
        for k in range(300)
    )  # fmt: skip
    found = probed(mux(plan(replace(episode, notes=episode.notes.model_copy(update={"sections": many})), tmp_path)))
    assert 2 < len(found) <= 255


def test_a_copy_is_not_replaced_unasked(with_media: WithMedia, tmp_path: Path) -> None:
    """Nor is anything left of the attempt."""
    (tmp_path / "hard.chapters.mp3").write_text("mine")
    with pytest.raises(OutputError, match="is there already"):
        mux(plan(with_media(".mp3"), tmp_path))
    assert [path.read_text() for path in tmp_path.iterdir()] == ["mine"]


def test_the_recording_itself_is_never_replaced(with_media: WithMedia, tmp_path: Path) -> None:
    """Not even with --force."""
    copy = mux(plan(with_media(".mp3"), tmp_path))
    episode = replace(with_media(".mp3"), media=read_media(copy))
    with pytest.raises(OutputError, match="the recording itself"):
        mux(plan(episode, tmp_path, force=True))


def test_captions_without_times_give_no_chapters(empty: Notes, tmp_path: Path) -> None:
    """And no copy that only looks as if it had some."""
    with pytest.raises(MediaError, match="no chapters"):
        mux(plan(Episode(empty, media=Media(tmp_path / "a.mp4", 1000)), tmp_path))


@pytest.mark.parametrize("name", ["a.wav", "a.txt", "a"])
def test_a_kind_that_holds_no_chapters_is_refused(name: str, episode: Episode, tmp_path: Path) -> None:
    """In one line that says which do."""
    with pytest.raises(MediaError, match=r"cannot hold chapters; give one of .*\.mkv"):
        mux(plan(replace(episode, media=Media(tmp_path / name, 1000)), tmp_path))


def test_what_is_no_recording_is_refused(tmp_path: Path) -> None:
    """In one line, whatever ffprobe had to say."""
    (tmp_path / "a.mp4").write_text("no sound")
    with pytest.raises(MediaError, match=r"a\.mp4: ffprobe could not read") as caught:
        read_media(tmp_path / "a.mp4")
    assert "\n" not in str(caught.value)


def test_without_ffmpeg_it_says_what_to_install(
    with_media: WithMedia, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """And does nothing."""
    episode = with_media(".mp3")
    monkeypatch.setitem(os.environ, "PATH", str(tmp_path))
    with pytest.raises(MissingError, match="needs the program ffmpeg; install ffmpeg"):
        mux(plan(episode, tmp_path))
    assert not list(tmp_path.iterdir())
