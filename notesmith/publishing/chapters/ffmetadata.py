"""Chapters as FFMETADATA, the text form in which ffmpeg reads them."""

import re
from collections.abc import Iterable

from notesmith.publishing.chapters.model import Chapter, chapters_of
from notesmith.publishing.episode import Episode


def render(episode: Episode) -> str | None:
    """Write the chapters of an episode."""
    chapters = episode.once(chapters_of)
    return write(chapters) if chapters else None


def write(chapters: Iterable[Chapter]) -> str:
    """Write chapters; times are milliseconds, and each block is START, END, title: in another order titles are lost."""
    return "\n".join([";FFMETADATA1", *map(_block, chapters)]) + "\n"


def _block(chapter: Chapter) -> str:
    times = f"START={chapter.start_ms}\nEND={chapter.end_ms}"
    return f"[CHAPTER]\nTIMEBASE=1/1000\n{times}\ntitle={escaped(chapter.title)}"


def escaped(text: str) -> str:
    r"""The text with a backslash before each sign that the form reads as its own.

    >>> print(escaped("a=b; \\#c"))
    a\=b\; \\\#c
    """
    escaped_text = re.sub(r"([=;#\\\n])", r"\\\1", text)
    # At the end of a line even an escaped backslash makes ffmpeg read on, so a space comes after it.
    return f"{escaped_text} " if text.endswith("\\") else escaped_text
