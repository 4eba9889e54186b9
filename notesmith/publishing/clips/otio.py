"""Clips as markers on an OpenTimelineIO timeline, for editors."""

from notesmith.publishing.clips.moments import clips_of
from notesmith.publishing.episode import Episode
from notesmith.publishing.markers import Marker, timeline


def render(episode: Episode) -> str | None:
    """Write a marker a clip; its name says why, its comment holds the words."""
    return timeline(
        episode,
        [
            Marker(clip.start_ms, clip.end_ms, "; ".join(clip.what), " … ".join(clip.words), clip.records)
            for clip in episode.once(clips_of)
        ],
    )
