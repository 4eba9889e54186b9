"""From a caption file to captions: decode, tell the format, put in order, fold what rolls, find who speaks."""

from pathlib import Path

from notesmith.errors import CaptionError
from notesmith.transcript.decode import decode
from notesmith.transcript.formats import format_of
from notesmith.transcript.limits import MAX_BYTES
from notesmith.transcript.model import Captions, Cue, Echo
from notesmith.transcript.ordering import gathered, in_order, start_of
from notesmith.transcript.passages import Passage
from notesmith.transcript.rolling import fold
from notesmith.transcript.speakers import with_speakers

_MOST_WARNINGS = 20


def read_captions(path: Path | str) -> Captions:
    """Read a caption file of any known format.

    Raises CaptionError, in one line, for whatever cannot be read or could be read in two ways.
    """
    path = Path(path)
    try:
        with path.open("rb") as file:
            data = file.read(MAX_BYTES + 1)
    except IsADirectoryError:
        raise CaptionError("this is a folder", where=str(path), mend="name the caption file in it") from None
    except (OSError, ValueError) as error:
        what = getattr(error, "strerror", None) or str(error)
        raise CaptionError(f"cannot be opened ({what.lower()})", where=str(path), mend="check the name") from None
    return parse_captions(data, str(path))


def parse_captions(data: bytes, name: str) -> Captions:
    """Read captions from bytes; the name only serves messages, the content tells the format.

    Raises CaptionError as read_captions does.
    """
    try:
        return _parsed(data, name)
    except CaptionError as error:
        where = f"{name}, {error.where}" if error.where else name
        raise CaptionError(error.what, where=where, mend=error.mend) from None


def _parsed(data: bytes, name: str) -> Captions:
    if len(data) > MAX_BYTES:
        raise CaptionError(f"larger than {MAX_BYTES >> 20} MB", mend="give the caption file, not the recording")
    text, warnings = decode(data)
    reading = format_of(text).read(text)
    passages = gathered(reading.passages)
    timed = any(passage.start_ms is not None for passage in passages)
    passages = in_order(passages, reading.warnings)
    passages = with_speakers(fold(passages) if timed else passages)
    return _captions(name, reading.format, passages, text, timed, _first(warnings + reading.warnings))


def _first(warnings: list[str]) -> list[str]:
    """The warnings, each once and not more than a person would read."""
    once = list(dict.fromkeys(warnings))
    return once if len(once) <= _MOST_WARNINGS else [*once[:_MOST_WARNINGS], f"and {len(once) - _MOST_WARNINGS} more"]


def _captions(
    name: str, form: str, passages: list[Passage], text: str, timed: bool, warnings: list[str]
) -> Captions:
    cues = tuple(_cue(passage) for passage in passages)
    words = [word for cue in cues for word in cue.words]
    if not words:
        raise CaptionError("no words are captioned", mend="export the captions again")
    index = {word.source_start: k for k, word in enumerate(words)}
    echoes = (echo for passage in passages for echo in passage.echoes)
    found = sorted((index[of], start, end) for of, start, end in echoes if of in index)
    word_timed = any(word.start_ms is not None for word in words)
    return Captions(name, form, cues, text, timed, word_timed, tuple(warnings), tuple(Echo(*echo) for echo in found))


def _cue(passage: Passage) -> Cue:
    words = tuple(word for line in passage.lines for word in line)
    return Cue(start_of(passage), passage.end_ms, passage.speaker, words)
