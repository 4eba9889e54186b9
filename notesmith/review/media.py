"""The recording, as a browser plays it: found by the notes' name, sent in the ranges that are asked for."""

import mimetypes
from pathlib import Path

from notesmith.errors import MediaError

KINDS = {
    ".aac": "audio/aac", ".flac": "audio/flac", ".m4a": "audio/mp4", ".mka": "audio/webm", ".mp3": "audio/mpeg",
    ".oga": "audio/ogg", ".ogg": "audio/ogg", ".opus": "audio/ogg", ".wav": "audio/wav", ".weba": "audio/webm",
    ".m4v": "video/mp4", ".mkv": "video/webm", ".mov": "video/mp4", ".mp4": "video/mp4", ".ogv": "video/ogg",
    ".webm": "video/webm",
}  # fmt: skip
"""What browsers are told of a recording; Matroska is shown to them as the WebM that it extends."""


def kind_of(path: Path) -> str:
    """The media type of a recording.

    Raises:
        MediaError: it is not there, or its ending is none of a recording.

    >>> kind_of(Path(__file__))  # doctest: +ELLIPSIS
    Traceback (most recent call last):
    notesmith.errors.MediaError: ...media.py: is no recording that a browser plays; ...
    """
    if not path.is_file():
        raise MediaError("is not there", where=str(path), mend="check the name, or leave --media out")
    kind = KINDS.get(path.suffix.lower()) or mimetypes.guess_type(path.name)[0] or ""
    if not kind.startswith(("audio/", "video/")):
        mend = "name a recording such as talk.mp3, talk.mp4 or talk.webm"
        raise MediaError("is no recording that a browser plays", where=str(path), mend=mend)
    return kind


def beside(captions: Path) -> Path | None:
    """The recording that lies beside captions and is named like them; None where there is none, or more than one."""
    found = [path for suffix in KINDS if (path := captions.with_suffix(suffix)).is_file()]
    return found[0] if len(found) == 1 else None
