"""Recognisers that list words one by one: the words with their times, gathered into passages at pauses."""

from collections.abc import Iterator
from dataclasses import dataclass
from typing import Any

from notesmith.clock import seconds_to_ms
from notesmith.errors import CaptionError
from notesmith.transcript.formats.located_json import pieces_of
from notesmith.transcript.model import Word
from notesmith.transcript.passages import Passage, words_of

_PAUSE_MS = 700
_LONG = 40
_SENTENCE = 8


@dataclass(frozen=True, slots=True)
class SpokenWord:
    """A listed word: its text (a located string), times in ms where known, speaker, whether it is punctuation."""

    text: Any
    start_ms: int | None
    end_ms: int | None
    speaker: str | None
    punctuation: bool = False


def text_of(value: Any) -> str:
    """A value if it is a string, else nothing."""
    return value if isinstance(value, str) else ""


def ms_of(value: Any, unit: int) -> int | None:
    """A JSON time in ms: a number or a string; unit is 1000 for seconds, 1 for milliseconds; None where absent.

    Raises CaptionError for what is no time, is below zero or not finite.
    """
    if value is None:
        return None
    try:
        if isinstance(value, bool) or not isinstance(value, int | float | str):
            raise ValueError
        return round(seconds_to_ms(value) * unit / 1000)
    except (ValueError, OverflowError):
        raise CaptionError(f"{str(value)[:40]!r} is no time", mend="times count up from zero") from None


def passages_of_words(source: str, words: list[SpokenWord]) -> Iterator[Passage]:
    """Gather listed words into passages that end at a pause, a change of speaker, a sentence or 40 words."""
    gathered: list[tuple[SpokenWord, Word]] = []
    for spoken in words:
        found = words_of(piece._replace(ms=spoken.start_ms) for piece in pieces_of(source, text_of(spoken.text)))
        if gathered and found and _is_punctuation(spoken, found):
            gathered[-1] = gathered[-1][0], _glued(gathered[-1][1], found[0])
            continue
        if gathered and found and _ends_before(spoken, gathered):
            yield _passage(gathered)
            gathered = []
        gathered += [(spoken, word) for word in found]
    if gathered:
        yield _passage(gathered)


def _is_punctuation(spoken: SpokenWord, found: list[Word]) -> bool:
    return spoken.punctuation or (len(found) == 1 and not any(letter.isalnum() for letter in found[0].text))


def _glued(word: Word, mark: Word) -> Word:
    """Punctuation listed apart joins the word before it; the word's place in the source stays its own."""
    return Word(word.text + mark.text, word.start_ms, word.source_start, word.source_end)


def _ends_before(spoken: SpokenWord, gathered: list[tuple[SpokenWord, Word]]) -> bool:
    last, word = gathered[-1]
    if spoken.speaker != last.speaker or len(gathered) >= _LONG:
        return True
    if len(gathered) >= _SENTENCE and word.text.endswith((".", "?", "!")):
        return True
    before = last.end_ms if last.end_ms is not None else last.start_ms
    return before is not None and spoken.start_ms is not None and spoken.start_ms - before >= _PAUSE_MS


def _passage(gathered: list[tuple[SpokenWord, Word]]) -> Passage:
    starts = [spoken.start_ms for spoken, _word in gathered if spoken.start_ms is not None]
    ends = [spoken.end_ms for spoken, _word in gathered if spoken.end_ms is not None]
    words = [word for _spoken, word in gathered]
    return Passage(min(starts, default=None), max(ends, default=None), gathered[0][0].speaker, [words])
