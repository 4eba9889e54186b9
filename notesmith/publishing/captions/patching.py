"""The caption file mended in place, by offset: every byte that no repair touches stays as it is."""

import html
import json
import re
from collections.abc import Callable, Iterable, Iterator, Mapping, Sequence
from types import MappingProxyType
from typing import NamedTuple

from notesmith.errors import CaptionError
from notesmith.publishing.captions.wording import mended_words
from notesmith.publishing.episode import Episode
from notesmith.records import Repair
from notesmith.transcript import Captions
from notesmith.transcript.model import Word
from notesmith.transcript.reading import parse_captions
from notesmith.transcript.talk import Talk

_TAG = re.compile(r"<[^<>]*>")
_MARKS = ".,;:!?…"
_BOMS = ((b"\xff\xfe", "utf-16-le"), (b"\xfe\xff", "utf-16-be"), (b"\xef\xbb\xbf", "utf-8"))
_ESCAPES: dict[str, Callable[[str], str]] = {
    "webvtt": lambda text: html.escape(text, quote=False),
    "ttml": lambda text: html.escape(text, quote=False),
    "podcast html": lambda text: html.escape(text, quote=False),
    "subrip": lambda text: text.replace("-->", "→"),
    "sbv": str,
    "stamped": str,
    "plain": str,
}


class Patch(NamedTuple):
    """Characters of the source text to be replaced."""

    start: int
    end: int
    text: str


def render(episode: Episode) -> bytes | None:
    """The caption file with the repairs in it; None where there is nothing to mend.

    A repair with which the file would no longer be read as it should is left out.
    """
    captions, source, repairs = episode.captions, episode.source, episode.notes.repairs
    if captions is None or source is None or not repairs:
        return None
    marked = episode.mark_repairs
    if (whole := _tried(captions, source, repairs, marked)) is not None:
        return whole
    kept = [repair for repair in repairs if _tried(captions, source, [repair], marked) is not None]
    return _tried(captions, source, kept, marked) if kept else None


def _tried(captions: Captions, source: bytes, repairs: Iterable[Repair], marked: bool) -> bytes | None:
    """The mended file, if it is read again as the same captions with these words changed and no others."""
    talk = Talk.from_captions(captions)
    changed = mended_words(talk, repairs, marked=marked)
    try:
        mended = _spliced(source, captions.source_text, _patches(captions, changed))
        again = parse_captions(mended, captions.name)
    except (CaptionError, UnicodeEncodeError):
        return None
    return mended if _told(again) == _told(captions, changed) else None


def _told(captions: Captions, changed: Mapping[int, str] = MappingProxyType({})) -> list[tuple[str, str | None]]:
    """Every word that a reader is told, without its marks, and its speaker; no repair touches a time."""
    spoken = [(word.text, cue.speaker) for cue in captions.cues for word in cue.words]
    return [
        (part.strip(_MARKS), speaker)
        for at, (text, speaker) in enumerate(spoken)
        for part in changed.get(at, text).split()
    ]


def _patches(captions: Captions, changed: dict[int, str]) -> list[Patch]:
    words = [word for cue in captions.cues for word in cue.words]
    places = [(at, words[at].source_start, words[at].source_end) for at in changed]
    places += [(echo.word, echo.source_start, echo.source_end) for echo in captions.echoes if echo.word in changed]
    escape = _ESCAPES.get(captions.format, lambda text: json.dumps(text, ensure_ascii=False)[1:-1])
    text = captions.source_text
    written = _without_apart(text, words, changed)
    found = [Patch(s, e, _written(text[s:e], words[at].text, written[at], escape)) for at, s, e in places]
    return [_tidied(text, patch) for patch in _joined(text, sorted(found))]


def _without_apart(text: str, words: Sequence[Word], changed: Mapping[int, str]) -> dict[int, str]:
    """The changed words, without the mark of a word that goes where the source lists the mark apart: it stays there."""
    written = dict(changed)
    for at in sorted(changed, reverse=True):
        word = words[at]
        raw = text[word.source_start : word.source_end]
        if not changed[at] and at - 1 in changed and word.text.startswith(raw):
            written[at - 1] = written[at - 1].removesuffix(word.text.removeprefix(raw))
    return written


def _written(raw: str, old: str, new: str, escape: Callable[[str], str]) -> str:
    """The word as the source writes it, with the new text in place of the old and its tags kept."""
    if raw == old:
        return escape(new)
    bare = old.strip(_MARKS)
    if bare and raw.strip(_MARKS) == bare:
        return raw.replace(bare, escape(new.strip(_MARKS)))
    return escape(new) + "".join(_TAG.findall(raw))


def _joined(text: str, patches: Iterable[Patch]) -> Iterator[Patch]:
    """Neighbouring words that both go are one patch, so that no half-empty line is left between them."""
    held: Patch | None = None
    for patch in patches:
        if held and not patch.text and not held.text and text[held.end : patch.start] in (" ", "  ", "\t"):
            held = Patch(held.start, patch.end, "")
            continue
        if held:
            yield held
        held = patch
    if held:
        yield held


def _tidied(text: str, patch: Patch) -> Patch:
    """A word that goes takes its space with it, and its line where it is alone on it: an empty one would end a cue."""
    start, end, new = patch
    if new:
        return patch
    line_start = max(text.rfind("\n", 0, start), text.rfind("\r", 0, start)) + 1
    line_end = re.compile(r"[^\r\n]*(?:\r\n|\r|\n|\Z)").match(text, end)
    if line_end and not text[line_start:start].strip() and not text[end : line_end.end()].strip():
        return Patch(line_start, line_end.end(), "")
    if text[start - 1 : start] in (" ", "\t") and start:
        return Patch(start - 1, end, "")
    return Patch(start, end + 1, "") if text[end : end + 1] in (" ", "\t") else patch


def _spliced(source: bytes, text: str, patches: Sequence[Patch]) -> bytes:
    """The bytes of the file with the patches in them, in the file's own encoding.

    Raises UnicodeEncodeError for a patch that this cannot write.
    """
    mark, codec = next(((len(bom), codec) for bom, codec in _BOMS if source.startswith(bom)), (0, _codec(source)))
    parts, at, byte = [source[:mark]], 0, mark
    for start, end, new in patches:
        kept = byte + _size(text[at:start], codec)
        parts += [source[byte:kept], new.encode(codec)]
        at, byte = end, kept + _size(text[start:end], codec)
    return b"".join([*parts, source[byte:]])


def _codec(source: bytes) -> str:
    try:
        source.decode()
    except UnicodeDecodeError:
        return "cp1252"
    return "utf-8"


def _size(text: str, codec: str) -> int:
    """How many bytes a stretch takes in the file; signs that Windows-1252 lacks were read from one byte each."""
    return len(text) if codec == "cp1252" else len(text.encode(codec))
