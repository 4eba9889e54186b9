"""The one place where times are read, written and computed. Every time is an integer of milliseconds.

>>> parse_clock("1:02:03.5")
3723500
>>> format_clock(3723500), format_clock(83000), format_clock_exact(83040)
('1:02:03', '1:23', '0:01:23.040')
"""

import math
import re

CLOCK = r"(?:\d{1,4}:\d{1,2}|\d{1,5}):\d{2}(?:[.,]\d{1,9})?"
"""The pattern of a clock string: m:ss or h:mm:ss, with or without a fraction after a point or a comma."""

_CLOCK_PARTS = re.compile(r"(?:(\d{1,4}):(?=\d{1,2}:))?(\d{1,5}):(\d{2})(?:[.,](\d{1,9}))?")


def parse_clock(text: str) -> int:
    """Read m:ss or h:mm:ss (fraction after a point or a comma) into milliseconds; further digits are cut off.

    Minutes may pass 59 where no hours are written. Raises ValueError for anything else.
    """
    match = _CLOCK_PARTS.fullmatch(text.strip())
    if match is None:
        raise ValueError(f"not a clock time: {text.strip()!r}")
    hours, minutes, seconds, fraction = match.groups()
    if int(seconds) > 59 or (hours is not None and int(minutes) > 59):
        raise ValueError(f"minutes or seconds over 59: {text.strip()!r}")
    whole = (int(hours or 0) * 60 + int(minutes)) * 60 + int(seconds)
    return whole * 1000 + int((fraction or "0")[:3].ljust(3, "0"))


def seconds_to_ms(seconds: float | str) -> int:
    """Turn seconds (a number, or a string such as "1.2" or "1.200s") into milliseconds.

    Raises ValueError for what is no number, is not finite or is below zero.

    >>> seconds_to_ms(1.04), seconds_to_ms("1.200s")
    (1040, 1200)
    """
    value = float(seconds.strip().removesuffix("s")) if isinstance(seconds, str) else float(seconds)
    if not math.isfinite(value) or value < 0:
        raise ValueError(f"not a time: {seconds}")
    return round(value * 1000)


def format_clock(ms: int) -> str:
    """Write milliseconds as m:ss, or h:mm:ss from one hour on, rounded down to the second."""
    minutes, seconds = divmod(ms // 1000, 60)
    hours, minutes = divmod(minutes, 60)
    return f"{hours}:{minutes:02}:{seconds:02}" if hours else f"{minutes}:{seconds:02}"


def format_clock_exact(ms: int) -> str:
    """Write milliseconds as h:mm:ss.mmm."""
    minutes, seconds = divmod(ms // 1000, 60)
    return f"{minutes // 60}:{minutes % 60:02}:{seconds:02}.{ms % 1000:03}"
