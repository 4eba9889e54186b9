"""Times made sound: every passage has a start, they come in order, and word times lie inside their passage."""

from collections.abc import Iterable
from dataclasses import replace
from itertools import pairwise

from notesmith.clock import format_clock
from notesmith.errors import CaptionError
from notesmith.transcript.limits import MAX_CUES, MAX_MS, MAX_WORDS, MS_PER_WORD
from notesmith.transcript.model import Word
from notesmith.transcript.passages import Passage

_SLACK_MS = 1000
_RESTART_MS = 60_000
_FEW = 3


def gathered(passages: Iterable[Passage]) -> list[Passage]:
    """Collect what a reader yields, up to the limits. Raises CaptionError past them, or where no word is left."""
    found: list[Passage] = []
    words = 0
    for passage in passages:
        if passage.lines:
            found.append(passage)
            words += sum(map(len, passage.lines))
        if len(found) > MAX_CUES or words > MAX_WORDS:
            what = f"more than {MAX_CUES:,} cues" if len(found) > MAX_CUES else f"more than {MAX_WORDS:,} words"
            raise CaptionError(what, mend="split the recording")
    if not found:
        raise CaptionError("no words are captioned", mend="export the captions again")
    return found


def in_order(passages: list[Passage], warnings: list[str]) -> list[Passage]:
    """Give every passage a start, mend ends before starts and sort by start; passages read from text keep no gap.

    Raises CaptionError for a time past 24 hours, and where the times start over as in two files joined.
    """
    _fill_starts(passages, warnings)
    for passage in passages:
        _check_end(passage, warnings)
    if all(start_of(a) <= start_of(b) for a, b in pairwise(passages)):
        return passages
    _refuse_restart(passages)
    warnings.append("cues were out of order and were sorted by time")
    return sorted(passages, key=start_of)


def start_of(passage: Passage) -> int:
    """The start in ms of a passage that has been put in order, and so has one."""
    return passage.start_ms or 0


def _fill_starts(passages: list[Passage], warnings: list[str]) -> None:
    """Start a passage without time where the one before it ends: on the assumed clock in untimed text."""
    timed = any(passage.start_ms is not None for passage in passages)
    clock, missing = 0, 0
    for passage in passages:
        if passage.start_ms is None:
            passage.start_ms, missing = clock, missing + 1
        length = MS_PER_WORD * sum(map(len, passage.lines))
        clock = passage.end_ms if passage.end_ms is not None else passage.start_ms + length
        if not timed:
            passage.end_ms = clock
    if timed and missing:
        warnings.append(f"cues without a time: {missing}; each was put right after the cue before it")


def _check_end(passage: Passage, warnings: list[str]) -> None:
    start = start_of(passage)
    latest = max(start, passage.end_ms or 0)
    if latest > MAX_MS:
        what = f"a cue at {format_clock(latest)}, past 24 hours"
        raise CaptionError(what, mend="check the unit of the times, or split the recording")
    if passage.end_ms is not None and passage.end_ms < start:
        warnings.append(f"the cue at {format_clock(start)} ended before it started; its end was left open")
        passage.end_ms = None
    last = (passage.end_ms if passage.end_ms is not None else MAX_MS) + _SLACK_MS
    passage.lines = [[_inside(word, start - _SLACK_MS, last, warnings) for word in line] for line in passage.lines]


def _inside(word: Word, first: int, last: int, warnings: list[str]) -> Word:
    if word.start_ms is None or first <= word.start_ms <= last:
        return word
    warnings.append(f"the time {format_clock(word.start_ms)} of {word.text!r} lies outside its cue and was not used")
    return replace(word, start_ms=None)


def _refuse_restart(passages: list[Passage]) -> None:
    """Sorting is harmless where speakers overlap or a cue was added at the end; not where two recordings interleave."""
    busy = _overlapping(passages)
    latest, inside = 0, 0
    for passage in passages:
        falls_back = start_of(passage) < latest - _RESTART_MS
        inside = inside + 1 if falls_back else 0
        latest = max(latest, start_of(passage))
        if inside > _FEW and id(passage) in busy:
            raise CaptionError(
                f"the times start again at {format_clock(start_of(passage))}, as in two caption files joined",
                mend="give each recording its own file",
            )


def _overlapping(passages: list[Passage]) -> set[int]:
    """The ids of the passages during which something else is said as well."""
    found: set[int] = set()
    ordered = sorted(passages, key=start_of)
    longest = ordered[0]
    for passage in ordered[1:]:
        if start_of(passage) < _end_of(longest):
            found |= {id(passage), id(longest)}
        longest = max(longest, passage, key=_end_of)
    return found


def _end_of(passage: Passage) -> int:
    return start_of(passage) + 1 if passage.end_ms is None else passage.end_ms
