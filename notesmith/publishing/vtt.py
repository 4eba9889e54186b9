"""Cues as WebVTT (W3C) writes them."""

from notesmith.publishing.plain import one_line

_REFERENCES = str.maketrans({"&": "&amp;", "<": "&lt;", ">": "&gt;"})


def clock(ms: int) -> str:
    """Write milliseconds as hh:mm:ss.mmm, with more digits for the hours where they are needed.

    >>> clock(3_723_045)
    '01:02:03.045'
    """
    seconds, ms = divmod(ms, 1000)
    return f"{seconds // 3600:02}:{seconds // 60 % 60:02}:{seconds % 60:02}.{ms:03}"


def text_of(text: str) -> str:
    """The text on one line, as cue text; no `-->` is left, which would end the cue's text in some readers.

    >>> text_of("<b> & -->")
    '&lt;b&gt; &amp; --&gt;'
    """
    return one_line(text).translate(_REFERENCES)


def cue(start_ms: int, end_ms: int, *lines: str, name: str = "", speaker: str | None = None) -> str:
    """Write one cue; times are milliseconds, the lines are plain text."""
    voice = f"<v {text_of(speaker)}>" if speaker else ""
    shown = "\n".join(line for line in map(text_of, lines) if line)
    return "\n".join(part for part in (name, f"{clock(start_ms)} --> {clock(end_ms)}", voice + shown) if part)
