"""The chapters of a recording, before any form is chosen: in order, without gap or overlap, from the first millisecond.

The forms differ in what they forgive. MP4 moves a first chapter to 0 and closes gaps by itself, and other players lose
what is out of order or has no length; so none of these is ever written.
"""

from collections.abc import Iterable, Iterator
from dataclasses import dataclass, replace
from itertools import groupby, pairwise

from notesmith.clock import seconds_to_ms
from notesmith.publishing.chapters.titles import title_of
from notesmith.publishing.episode import Episode
from notesmith.records import Section

LEAD_MS = 10_000
"""Silence before the first words that is worth a chapter of its own."""
GAP_MS = 30_000
"""Silence between or after sections that is worth one; less is a pause of the section before it."""

ORDINALS = ("third", "fourth", "fifth", "sixth", "seventh", "eighth", "ninth", "tenth")


@dataclass(frozen=True, slots=True)
class Chapter:
    """A stretch of the recording with a title on one line, and the section it is made from (None: nobody speaks)."""

    start_ms: int
    end_ms: int
    title: str
    section: str | None


def chapters_of(episode: Episode) -> tuple[Chapter, ...]:
    """The chapters from 0 to the end of the recording; none where the captions carry no times."""
    end_ms = episode.length_ms
    found = [chapter for chapter in _from_sections(episode) if chapter.start_ms < end_ms]
    return tuple(_numbered(_end_to_end([*_silences(found, end_ms), *found], end_ms))) if found else ()


def without_short(chapters: Iterable[Chapter], least_ms: int) -> tuple[Chapter, ...]:
    """The chapters with each that is shorter than this made part of the one before it, or after it if it is first."""
    kept: list[Chapter] = []
    for chapter in chapters:
        if kept and (chapter.end_ms - chapter.start_ms < least_ms or _length(kept[-1]) < least_ms):
            longer = max(kept[-1], chapter, key=_length)
            kept[-1] = replace(longer, start_ms=kept[-1].start_ms, end_ms=chapter.end_ms)
        else:
            kept.append(chapter)
    return tuple(kept)


def at_most(chapters: tuple[Chapter, ...], most: int) -> tuple[Chapter, ...]:
    """No more chapters than a form can hold: the shortest are made part of the ones before them."""
    kept = list(chapters)
    while len(kept) > most:
        at = min(range(1, len(kept)), key=lambda k: _length(kept[k]))
        kept[at - 1] = replace(kept[at - 1], end_ms=kept.pop(at).end_ms)
    return tuple(kept)


def _length(chapter: Chapter) -> int:
    return chapter.end_ms - chapter.start_ms


def _from_sections(episode: Episode) -> Iterator[Chapter]:
    """A chapter for each section that carries a time; neighbours that would be called the same are one."""
    timed = [section for section in episode.notes.sections if section.start is not None]
    ordered = sorted(timed, key=lambda section: (section.start or 0.0, section.span))
    for title, group in groupby(ordered, key=lambda section: title_of(episode, section)):
        sections = list(group)
        start_ms = seconds_to_ms(sections[0].start or 0.0)
        yield Chapter(start_ms, max(start_ms, *map(_end_ms, sections)), title, sections[0].id)


def _end_ms(section: Section) -> int:
    return seconds_to_ms(section.end if section.end is not None else section.start or 0.0)


def _silences(chapters: list[Chapter], end_ms: int) -> Iterator[Chapter]:
    """Chapters for the long stretches in which nobody speaks."""
    if chapters[0].start_ms >= LEAD_MS:
        yield Chapter(0, chapters[0].start_ms, "Before the talk", None)
    heard_ms = 0
    for chapter, following in pairwise(chapters):
        heard_ms = max(heard_ms, chapter.end_ms)
        if following.start_ms - heard_ms >= GAP_MS:
            yield Chapter(heard_ms, following.start_ms, "Pause", None)
    heard_ms = max(heard_ms, chapters[-1].end_ms)
    if end_ms - heard_ms >= GAP_MS:
        yield Chapter(heard_ms, end_ms, "After the talk", None)


def _end_to_end(chapters: list[Chapter], end_ms: int) -> Iterator[Chapter]:
    """Each chapter to the start of the next, the first from 0; of two that begin together the later stays."""
    ordered = sorted(chapters, key=lambda chapter: chapter.start_ms)
    ordered[0] = replace(ordered[0], start_ms=0)
    for chapter, following in pairwise([*ordered, Chapter(end_ms, end_ms, "", None)]):
        if following.start_ms > chapter.start_ms:
            yield replace(chapter, end_ms=following.start_ms)


def _numbered(chapters: Iterable[Chapter]) -> Iterator[Chapter]:
    """Chapters told apart: the second of a title is `again`, a later one says which it is."""
    seen: dict[str, int] = {}
    for chapter in chapters:
        count = seen[chapter.title] = seen.get(chapter.title, 0) + 1
        yield replace(chapter, title=f"{chapter.title}{_again(count)}")


def _again(count: int) -> str:
    if count < 3:
        return ", again" if count == 2 else ""
    return f", {ORDINALS[count - 3]} time" if count < 3 + len(ORDINALS) else f", {count}"
