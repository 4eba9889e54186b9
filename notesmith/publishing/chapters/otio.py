"""Chapters as markers on an OpenTimelineIO timeline, for editors."""

from notesmith.publishing.chapters.model import chapters_of
from notesmith.publishing.episode import Episode
from notesmith.publishing.markers import Marker, timeline


def render(episode: Episode) -> str | None:
    """Write a marker a chapter."""
    chapters = episode.once(chapters_of)
    records = [(chapter.section,) if chapter.section else () for chapter in chapters]
    return timeline(
        episode,
        [Marker(one.start_ms, one.end_ms, one.title, "", ids) for one, ids in zip(chapters, records, strict=True)],
    )
