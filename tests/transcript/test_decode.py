"""From bytes to text."""

import pytest

from notesmith.errors import CaptionError
from notesmith.transcript.decode import decode


def test_utf_8_mark_is_dropped() -> None:
    """The byte order mark of UTF-8 is no part of the text."""
    assert decode("\ufeffthé".encode()) == ("thé", [])


def test_utf_16_by_its_mark() -> None:
    """UTF-16 of either order is read by its mark."""
    assert decode(b"\xfe\xff" + "thé".encode("utf-16-be")) == decode(b"\xff\xfe" + "thé".encode("utf-16-le"))


def test_windows_1252_with_a_warning() -> None:
    """Bytes that are not UTF-8 are read as Windows-1252, and said to be."""
    text, warnings = decode("crème “brûlée”".encode("cp1252"))
    assert text == "crème “brûlée”"
    assert "Windows-1252" in warnings[0]


@pytest.mark.parametrize(
    ("data", "kind"),
    [
        (b"", "empty"),
        (b" \r\n\t", "empty"),
        (b"%PDF-1.7\n%text", "PDF"),
        (b"PK\x03\x04\x14\x00\x08", "zip"),
        (b"\x00\x00\x00\x20ftypisom\x00\x00", "MP4"),
        (b"ID3\x04\x00\x00\x00", "MP3"),
        (b"\x1aE\xdf\xa3\x01\x00", "Matroska"),
        (b"RIFF\x24\x00\x00\x00WAVE", "WAV"),
        (b"OggS\x00\x02", "Ogg"),
        (b"WEBVTT\n\n\x00", "not text"),
        (b"\x01\x02\x03abc", "not text"),
        ("1\n".encode("utf-16-le"), "not text"),
        (b"\xff\xfea", "UTF-16"),
    ],
)
def test_refused(data: bytes, kind: str) -> None:
    """What is no text is refused by what it is."""
    with pytest.raises(CaptionError, match=kind):
        decode(data)
