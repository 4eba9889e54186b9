"""Clips as a list to read: times, why, and the words."""

from notesmith.clock import format_clock_exact
from notesmith.publishing.clips.moments import Clip, clips_of
from notesmith.publishing.episode import Episode
from notesmith.publishing.plain import one_line


def render(episode: Episode) -> str | None:
    """Write a paragraph a clip, in order of time: h:mm:ss.mmm from and to, the reasons, the words, the records."""
    return "\n".join(map(_paragraph, episode.once(clips_of))) or None


def _paragraph(clip: Clip) -> str:
    lines = [f"{format_clock_exact(clip.start_ms)} – {format_clock_exact(clip.end_ms)}"]
    lines += [f"  {one_line(what)}" for what in clip.what]
    lines += [f"  “{one_line(words)}”" for words in clip.words]
    return "\n".join([*lines, f"  [{', '.join(map(one_line, clip.records))}]"]) + "\n"
