"""Chapters as a list of times, for a description: players make links of it where it keeps their rules."""

from notesmith.publishing.chapters.model import chapters_of, without_short
from notesmith.publishing.episode import Episode

LEAST_MS = 10_000
FEWEST = 3


def render(episode: Episode) -> str | None:
    """Write `0:00 Title` lines: the first at 0, at least three, each 10 seconds or longer; else nothing."""
    lines = stamps(episode)
    return "\n".join(lines) + "\n" if lines else None


def stamps(episode: Episode) -> tuple[str, ...]:
    """The lines of the list, all in one form of time; none where the recording has too few chapters."""
    # A second longer than asked for: the times are rounded down.
    chapters = without_short(episode.once(chapters_of), LEAST_MS + 1_000)
    if len(chapters) < FEWEST:
        return ()
    with_hours = chapters[-1].start_ms >= 3_600_000
    return tuple(f"{_stamp(chapter.start_ms, with_hours)} {chapter.title}" for chapter in chapters)


def _stamp(ms: int, with_hours: bool) -> str:
    minutes, seconds = divmod(ms // 1000, 60)
    return f"{minutes // 60}:{minutes % 60:02}:{seconds:02}" if with_hours else f"{minutes}:{seconds:02}"
