"""Mended captions as WebVTT anew, for players that read no other: cues of at most two lines."""

import textwrap
from collections.abc import Iterator
from operator import itemgetter

from notesmith.publishing.captions.wording import mended_words
from notesmith.publishing.episode import Episode
from notesmith.publishing.plain import one_line
from notesmith.publishing.vtt import cue
from notesmith.transcript.talk import Talk, TalkCue

LINE, LINES = 42, 2
"""Characters of a line and lines of a cue; common practice."""


def render(episode: Episode) -> str | None:
    """Write captions in any other format as WebVTT; None for what is WebVTT already, or carries no times."""
    captions = episode.captions
    if captions is None or not captions.timed or captions.format == "webvtt":
        return None
    talk = Talk.from_captions(captions)
    changed = mended_words(talk, episode.notes.repairs, marked=episode.mark_repairs)
    cues = [timed for spoken in talk.cues for timed in _cues(talk, spoken, changed)]
    return "\n\n".join(["WEBVTT", *(written for _, written in sorted(cues, key=itemgetter(0)))]) + "\n"


def _cues(talk: Talk, spoken: TalkCue, changed: dict[int, str]) -> Iterator[tuple[int, str]]:
    """One cue with its start in ms, or several where its words would not fit on two lines."""
    timed = list(_timed_words(talk, spoken, changed))
    parts = _parts(timed)
    ends = [part[0][0] for part in parts[1:]] + [spoken.end_ms]
    for part, end_ms in zip(parts, ends, strict=True):
        start_ms = part[0][0]
        yield start_ms, cue(start_ms, max(end_ms, start_ms + 1), *_lines(part), speaker=spoken.speaker)


def _timed_words(talk: Talk, spoken: TalkCue, changed: dict[int, str]) -> Iterator[tuple[int, str]]:
    """The words of a cue with their times; where it times none they are spread evenly over it, letter by letter."""
    first, last = talk.word_at(spoken.start), talk.word_at(spoken.end - 1)
    length_ms, latest = spoken.end_ms - spoken.start_ms, spoken.start_ms
    for at in range(first, last + 1):
        word = talk.words[at]
        share = (word.start - spoken.start) / max(1, spoken.end - spoken.start)
        known_ms = word.start_ms if talk.captions.word_timed else spoken.start_ms + round(share * length_ms)
        latest = max(latest, known_ms)
        text = one_line(changed.get(at, talk.text[word.start : word.end]))
        if text:
            yield latest, text


def _parts(words: list[tuple[int, str]]) -> list[list[tuple[int, str]]]:
    """The words in parts of at most two lines; a part begins at a time of its own."""
    parts: list[list[tuple[int, str]]] = []
    line, width = 0, LINE
    for start_ms, text in words:
        fits = width + 1 + len(text) <= LINE
        line, width = (line, width + 1 + len(text)) if fits else (line + 1, len(text))
        if not parts or (line > LINES and start_ms > parts[-1][0][0]):
            parts.append([])
            line, width = 1, len(text)
        parts[-1].append((start_ms, text))
    return parts


def _lines(words: list[tuple[int, str]]) -> list[str]:
    return textwrap.wrap(" ".join(text for _, text in words), LINE, break_on_hyphens=False)
