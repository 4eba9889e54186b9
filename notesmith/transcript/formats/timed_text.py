"""A recogniser's segment: its text, with times taken from the list of words beside it."""

from collections.abc import Iterator
from dataclasses import replace
from typing import Any

from notesmith.transcript.formats.located_json import pieces_of
from notesmith.transcript.formats.spoken_words import SpokenWord, passages_of_words, text_of
from notesmith.transcript.model import Word
from notesmith.transcript.passages import Passage, words_of

_REACH = 40
"""How many characters ahead a listed word is looked for: lists may lack words, and hold tokens that are none."""


def timed_passage(
    source: str, text: Any, span: tuple[int | None, int | None], speaker: str | None, listed: list[SpokenWord]
) -> Iterator[Passage]:
    """Read a segment: the words of its text, each timed by the listed word or word part it starts with.

    Where the segment has no text, the listed words are its words.
    """
    words = words_of(pieces_of(source, text_of(text)))
    if not words:
        yield from passages_of_words(source, listed)
        return
    times, echoes = _aligned(source, words, listed)
    timed = [replace(word, start_ms=ms) for word, ms in zip(words, times, strict=True)]
    passage = Passage(*span, speaker, [timed])
    passage.echoes = [(timed[k].source_start, start, end) for k, start, end in echoes]
    yield passage


def _aligned(
    source: str, words: list[Word], listed: list[SpokenWord]
) -> tuple[list[int | None], list[tuple[int, int, int]]]:
    times: list[int | None] = [None] * len(words)
    echoes = []
    owner = [k for k, word in enumerate(words) for _ in word.text]
    solid, at = "".join(word.text for word in words), 0
    for spoken in listed:
        token = "".join(text_of(spoken.text).split())
        found = solid.find(token, at, at + len(token) + _REACH) if token else -1
        if found < 0:
            continue
        k = owner[found]
        times[k] = spoken.start_ms if times[k] is None else times[k]
        if token == words[k].text:
            echoes += [(k, copy.source_start, copy.source_end) for copy in words_of(pieces_of(source, spoken.text))[:1]]
        at = found + len(token)
    return times, echoes
