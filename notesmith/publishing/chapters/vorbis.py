"""Chapters as Vorbis comments, for FLAC, Ogg Vorbis and Opus (the chapter extension published by Xiph)."""

from collections.abc import Iterable, Iterator

from notesmith.publishing.chapters.model import Chapter, at_most, chapters_of
from notesmith.publishing.episode import Episode
from notesmith.publishing.vtt import clock

MOST = 999


def render(episode: Episode) -> str | None:
    """Write a comment a line, as `vorbiscomment` and `metaflac` read them from a file."""
    return "".join(f"{name}={value}\n" for name, value in comments(episode.once(chapters_of))) or None


def comments(chapters: Iterable[Chapter]) -> Iterator[tuple[str, str]]:
    """Names and values: each chapter's start as hh:mm:ss.mmm, and its title; three digits count them."""
    for number, chapter in enumerate(at_most(tuple(chapters), MOST), start=1):
        yield f"CHAPTER{number:03}", clock(chapter.start_ms)
        yield f"CHAPTER{number:03}NAME", chapter.title
