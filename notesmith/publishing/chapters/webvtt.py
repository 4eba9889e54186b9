"""Chapters as WebVTT (W3C), for a page's `<track kind="chapters">`."""

from notesmith.publishing.chapters.model import chapters_of
from notesmith.publishing.episode import Episode
from notesmith.publishing.vtt import cue


def render(episode: Episode) -> str | None:
    """Write a cue a chapter, its title as plain text: browsers take tags in a title for nothing and lose them."""
    cues = [
        cue(chapter.start_ms, chapter.end_ms, chapter.title, name=f"chapter-{number}")
        for number, chapter in enumerate(episode.once(chapters_of), start=1)
    ]
    return "\n\n".join(["WEBVTT", *cues]) + "\n" if cues else None
