"""The shapes in which recognisers and podcast players write transcripts as JSON, each known by its keys.

The Podcast Namespace shape follows that project's published text; the rest is general knowledge of what
speech recognisers write.
"""

from collections.abc import Callable, Iterator
from dataclasses import dataclass
from typing import Any

from notesmith.errors import CaptionError
from notesmith.transcript.formats.spoken_words import SpokenWord, ms_of, passages_of_words, text_of
from notesmith.transcript.formats.timed_text import timed_passage
from notesmith.transcript.passages import Passage

Document = Any


@dataclass(frozen=True, slots=True)
class Shape:
    """One shape: its name, whether a document has it, and how its passages are read from the source."""

    name: str
    fits: Callable[[Document], bool]
    passages: Callable[[str, Document], Iterator[Passage]]


def _items(document: Document, key: str) -> list[dict[str, Any]]:
    """The objects listed under a key; a bare list of objects counts as listed under every key."""
    listed = document.get(key) if isinstance(document, dict) else document
    return [item for item in listed if isinstance(item, dict)] if isinstance(listed, list) else []


def _any_has(items: list[dict[str, Any]], *keys: str) -> bool:
    return any(all(key in item for key in keys) for item in items)


def _speaker(item: dict[str, Any]) -> str | None:
    value = item.get("speaker", item.get("speaker_label", item.get("speakerTag")))
    return None if value is None or isinstance(value, bool) else str(value).strip() or None


def _segments(source: str, document: Document) -> Iterator[Passage]:
    segments = _items(document, "segments")
    _refuse_two_units([ms_of(item.get(key), 1) for item in segments for key in ("start", "end")], segments)
    for item in segments:
        words = _timed_words(item, "word", ("start", "end"), 1000)
        speaker = _speaker(item) or next(filter(None, map(_speaker, _items(item, "words") if words else [])), None)
        span = ms_of(item.get("start"), 1000), ms_of(item.get("end"), 1000)
        yield from timed_passage(source, item.get("text"), span, speaker, words)


def _refuse_two_units(times: list[int | None], segments: list[dict[str, Any]]) -> None:
    """Whole numbers that crawl as seconds and run as milliseconds could be either."""
    known = [time for time in times if time is not None]
    whole = all(isinstance(item.get("start"), int) for item in segments)
    words = sum(len(text_of(item.get("text")).split()) for item in segments)
    if whole and known and words and (max(known) - min(known)) > 60 * words:
        raise CaptionError("JSON times that could be seconds or milliseconds", mend="write seconds with a fraction")


def _transcription(source: str, document: Document) -> Iterator[Passage]:
    for item in _items(document, "transcription"):
        offsets = item["offsets"] if isinstance(item.get("offsets"), dict) else {}
        words = [
            SpokenWord(token.get("text"), ms_of(token["offsets"].get("from"), 1), None, None)
            for token in (_items(item, "tokens") if "tokens" in item else [])
            if isinstance(token.get("offsets"), dict)
        ]
        span = ms_of(offsets.get("from"), 1), ms_of(offsets.get("to"), 1)
        yield from timed_passage(source, item.get("text"), span, _speaker(item), words)


def _flat_result(source: str, document: Document) -> Iterator[Passage]:
    for utterance in _items([document] if isinstance(document, dict) else document, ""):
        yield from passages_of_words(source, _timed_words(utterance, "word", ("start", "end"), 1000, key="result"))


def _result_items(source: str, document: Document) -> Iterator[Passage]:
    words = []
    for item in _items(document["results"], "items"):
        said = (_items(item, "alternatives") or [{}])[0].get("content")
        start, end = ms_of(item.get("start_time"), 1000), ms_of(item.get("end_time"), 1000)
        words.append(SpokenWord(said, start, end, _speaker(item), item.get("type") == "punctuation"))
    yield from passages_of_words(source, words)


def _result_alternatives(source: str, document: Document) -> Iterator[Passage]:
    best = [(_items(result, "alternatives") or [{}])[0] for result in _items(document, "results")]
    lists = [_timed_words(said, "word", ("startTime", "endTime"), 1000) for said in best]
    if len(lists) > 1 and len(lists[-1]) == sum(map(len, lists[:-1])):
        lists = lists[-1:]  # with speakers told apart, the last result repeats all words
    for words in lists:
        yield from passages_of_words(source, words)


def _word_list(source: str, document: Document) -> Iterator[Passage]:
    items = _items(document, "words")
    starts = [item.get("start") for item in items if item.get("start") is not None]
    unit = 1 if all(isinstance(start, int) for start in starts) else 1000
    words = _timed_words({"words": items}, "text", ("start", "end"), unit)
    known = [word.start_ms for word in words if word.start_ms is not None]
    if unit == 1 and len(known) > 2 and max(known) - min(known) < 20 * len(known):
        raise CaptionError("JSON times that could be milliseconds or seconds", mend="write seconds with a fraction")
    yield from passages_of_words(source, words)


def _podcast(source: str, document: Document) -> Iterator[Passage]:
    segments = _items(document, "segments")
    words = [
        SpokenWord(s.get("body"), ms_of(s.get("startTime"), 1000), ms_of(s.get("endTime"), 1000), _speaker(s))
        for s in segments
    ]
    one_word = [word for word in words if len(text_of(word.text).split()) <= 1]
    if len(one_word) * 5 >= len(words) * 4:  # a segment may be a single word
        yield from passages_of_words(source, words)
        return
    for word in words:
        yield from timed_passage(source, word.text, (word.start_ms, word.end_ms), word.speaker, [])


def _timed_words(
    holder: dict[str, Any], text: str, times: tuple[str, str], unit: int, key: str = "words"
) -> list[SpokenWord]:
    if key not in holder:
        return []
    return [
        SpokenWord(item.get(text), ms_of(item.get(times[0]), unit), ms_of(item.get(times[1]), unit), _speaker(item))
        for item in _items(holder, key)
    ]


def _results(document: Document) -> Any:
    return document.get("results") if isinstance(document, dict) else None


SHAPES = (
    Shape("recogniser segments (start, end, text)",
          lambda d: _any_has(_items(d, "segments"), "start") and not _any_has(_items(d, "segments"), "result"),
          _segments),
    Shape("Podcast Namespace segments (startTime, body)",
          lambda d: _any_has(_items(d, "segments"), "startTime") or _any_has(_items(d, "segments"), "body"),
          _podcast),
    Shape("recogniser transcription (offsets, text)",
          lambda d: isinstance(d, dict) and any(isinstance(i.get("offsets"), dict) for i in _items(d, "transcription")),
          _transcription),
    Shape("recogniser result (word, start, end)",
          lambda d: _any_has(_items(d, "result"), "word") if isinstance(d, dict) else _any_has(_items(d, ""), "result"),
          _flat_result),
    Shape("recogniser items (start_time, alternatives)",
          lambda d: isinstance(_results(d), dict) and _any_has(_items(_results(d), "items"), "alternatives"),
          _result_items),
    Shape("recogniser results (alternatives, words)",
          lambda d: isinstance(_results(d), list) and _any_has(_items(d, "results"), "alternatives"),
          _result_alternatives),
    Shape("recogniser words (text, start, end)",
          lambda d: isinstance(d, dict) and _any_has(_items(d, "words"), "text", "start"),
          _word_list),
)
"""Every shape read, in the order they are tried; a document that fits two is refused."""
