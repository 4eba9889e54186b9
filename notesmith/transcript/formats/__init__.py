"""The formats that are read: one module each, told apart by what the text holds, never by the file's name."""

import re
from types import ModuleType

from notesmith.errors import CaptionError
from notesmith.transcript.formats import json_file, plain, podcast_html, sbv, stamped, subrip, ttml, webvtt

FORMATS: tuple[tuple[str, ModuleType], ...] = (
    ("WebVTT", webvtt),
    ("SubRip", subrip),
    ("SBV", sbv),
    ("TTML", ttml),
    ("JSON", json_file),
    ("a podcast's HTML transcript", podcast_html),
    ("lines that open with a time", stamped),
)
"""Every format with a mark of its own, each `recognises(text)` and `read(text)`; a text that bears two is refused."""

_LOOKED_AT = 1_000_000
_NOT_READ = (
    (r"Scenarist_SCC", "SCC captions"),
    (r"\[Script Info\]", "ASS captions"),
    (r"\{\d+\}\{\d+\}", "MicroDVD captions"),
    (r"<SAMI", "SAMI captions"),
    (r"\{\\rtf", "a rich text document"),
    (r"<(?:!|\?|[A-Za-z][\w:.-]*[ >])", "XML or HTML that is no transcript"),
)


def format_of(text: str) -> ModuleType:
    """The one format a text is written in; plain text where it bears no mark.

    Raises CaptionError for a text that could be read in two ways, or is in a format that is not read.
    """
    head = text[:_LOOKED_AT]
    found = [(name, module) for name, module in FORMATS if module.recognises(head)]
    if len(found) > 1:
        readings = " or ".join(name for name, _module in found)
        raise CaptionError(f"this could be read as {readings}", mend="keep the lines of one of them")
    if found:
        return found[0][1]
    for opening, name in _NOT_READ:
        if re.match(rf"\s*{opening}", text, re.IGNORECASE):
            raise CaptionError(f"this is {name}, which is not read", mend="export WebVTT or SubRip instead")
    return plain
