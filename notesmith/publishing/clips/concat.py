"""Clips as a list that ffmpeg's concat reader plays one after the other."""

from notesmith.publishing.clips.moments import Clip, clips_of
from notesmith.publishing.episode import Episode
from notesmith.publishing.plain import one_line


def render(episode: Episode) -> str | None:
    """Write the list; it names the recording by its file name alone, so put the two side by side.

    `ffmpeg -f concat -safe 0 -i NAME.clips.ffconcat clips.mp4` then makes one file of all clips.
    """
    clips = episode.once(clips_of)
    if not clips or episode.media is None:
        return None
    file = _quoted(f"./{episode.media.path.name}")
    return "\n".join(["ffconcat version 1.0", *(_entry(clip, file) for clip in clips)]) + "\n"


def _entry(clip: Clip, file: str) -> str:
    inpoint, outpoint = (f"{ms // 1000}.{ms % 1000:03}" for ms in (clip.start_ms, clip.end_ms))
    return f"# {one_line('; '.join(clip.what))}\nfile {file}\ninpoint {inpoint}\noutpoint {outpoint}"


def _quoted(text: str) -> str:
    r"""The text in single quotes, as ffmpeg reads them.

    >>> print(_quoted("Ana's cups.mp4"))
    'Ana'\''s cups.mp4'
    """
    return "'" + text.replace("'", "'\\''") + "'"
