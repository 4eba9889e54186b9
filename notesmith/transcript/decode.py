"""From bytes to text: UTF-8, UTF-16 with its mark, else Windows-1252 with a warning; anything binary is refused."""

import re

from notesmith.errors import CaptionError

_NOT_CAPTIONS = (
    (b"%PDF-", "a PDF document"),
    (b"PK\x03\x04", "a zip archive or office document"),
    (b"\x1f\x8b", "a gzip archive"),
    (b"\x1aE\xdf\xa3", "a Matroska or WebM video"),
    (b"OggS", "an Ogg audio file"),
    (b"fLaC", "a FLAC audio file"),
    (b"RIFF", "a WAV or AVI file"),
    (b"ID3", "an MP3 audio file"),
    (b"\x89PNG", "an image"),
    (b"\xff\xd8\xff", "an image"),
)
_CONTROL = re.compile(rb"[\x00-\x08\x0e-\x1a\x1c-\x1f\x7f]")
_LOOKED_AT = 65_536
_MEND = "give the caption file (WebVTT, SubRip, SBV, TTML, JSON, HTML or text)"


def decode(data: bytes) -> tuple[str, list[str]]:
    """Decode a file without its byte order mark; also returns warnings.

    Raises CaptionError for an empty file and for what is not text.
    """
    if not data.strip():
        raise CaptionError("the file is empty", mend="export the captions again")
    if data.startswith((b"\xff\xfe", b"\xfe\xff")):
        return _utf_16(data), []
    _refuse_binary(data)
    try:
        return data.decode("utf-8-sig"), []
    except UnicodeDecodeError as error:
        warning = f"byte {error.start} is not UTF-8, so the file was read as Windows-1252; check its accented letters"
        return data.decode("cp1252", errors="replace"), [warning]


def _utf_16(data: bytes) -> str:
    try:
        text = data.decode("utf-16")
    except UnicodeDecodeError:
        raise CaptionError("the file is marked as UTF-16 but is not", mend="save it again as UTF-8") from None
    if "\0" in text:
        raise CaptionError("the file is not text", mend=_MEND)
    return text


def _refuse_binary(data: bytes) -> None:
    head = data[:_LOOKED_AT]
    kind = next((kind for magic, kind in _NOT_CAPTIONS if data.startswith(magic)), None)
    kind = "an MP4 or MOV video" if data[4:8] == b"ftyp" else kind
    control = len(_CONTROL.findall(head))
    if data.startswith(b"%PDF-") or b"\0" in data or control * 100 > len(head):
        raise CaptionError(f"this is {kind}, not captions" if kind else "the file is not text", mend=_MEND)
