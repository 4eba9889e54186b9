"""Speakers written into the text: `NAME:` before what is said, and the `>>` of a change of speaker.

A prefix counts only where prefixes are the file's habit, so that `Note: ` or `Nose: ` stays what was said.
"""

import re
from collections import Counter
from dataclasses import dataclass, replace

from notesmith.transcript.model import Word
from notesmith.transcript.passages import Passage

_NAME_WORD = re.compile(r"[^\W\d_][\w.'’&-]*|\d{1,3}|&")
_LONGEST = 4
_HABIT = 0.8
# Headings of a tasting or of writing; each could recur, and none is a person.
_HEADINGS = frozenset(
    "note notes warning tip update edit ps score verdict result price nose palate aroma smell flavour flavor taste "
    "colour color look appearance body mouthfeel finish aftertaste texture overall sample cup glass tea coffee wine "
    "bottle pot number round flight first second third fourth next finally conclusion summary question answer "
    "remember also so and but well now ok okay yes no right".split()
)


@dataclass(frozen=True, slots=True)
class _Prefix:
    name: str
    words: int


def with_speakers(passages: list[Passage]) -> list[Passage]:
    """Take `NAME:` prefixes and `>>` out of the words and give the passages their speakers.

    A name holds until the next one. Passages whose format tells the speaker are left alone.
    """
    for passage in passages:
        passage.lines = [line for line in map(_without_change_mark, passage.lines) if line]
    names = _names(passages)
    found: list[Passage] = []
    speaker: str | None = None
    for passage in passages:
        for part in _split(passage, names) if names and passage.speaker is None else [passage]:
            speaker = part.speaker or speaker
            part.speaker = part.speaker or (speaker if names else None)
            found.append(part)
    return [passage for passage in found if passage.lines]


def _without_change_mark(line: list[Word]) -> list[Word]:
    return line[1:] if line and line[0].text in (">>", ">>>") else line


def _names(passages: list[Passage]) -> frozenset[str]:
    """The prefixes that are speakers: most passages open with one, or the first does and it recurs."""
    unnamed = [passage for passage in passages if passage.speaker is None and passage.lines]
    prefixes = [prefix.name for passage in unnamed for line in passage.lines if (prefix := _prefix(line))]
    counts = Counter(prefixes)
    opening = [prefix.name for passage in unnamed if (prefix := _prefix(passage.lines[0]))]
    if opening and len(opening) >= _HABIT * len(unnamed):
        return frozenset(counts)
    recurring = frozenset(name for name, count in counts.items() if count > 1)
    first = _prefix(unnamed[0].lines[0]) if unnamed else None
    return recurring if first and first.name in recurring else frozenset()


def _prefix(line: list[Word]) -> _Prefix | None:
    """The name before a colon at the start of a line: up to four capitalised words or numbers, maybe in brackets."""
    for k, word in enumerate(line[:_LONGEST]):
        if word.text.endswith(":"):
            name = " ".join(word.text for word in line[: k + 1])[:-1].strip("[]()-– ")
            return _Prefix(name, k + 1) if _is_name(name) else None
    return None


def _is_name(name: str) -> bool:
    words = name.replace("_", " ").split()
    if not words or words[0].lower() in _HEADINGS or not words[0][0].isupper():
        return False
    return all(_NAME_WORD.fullmatch(word) and (word[0].isupper() or not word[0].isalpha()) for word in words)


def _split(passage: Passage, names: frozenset[str]) -> list[Passage]:
    """The passage in one part for each name that opens a line of it, without the names."""
    parts = [replace(passage, lines=[])]
    for line in passage.lines:
        prefix = _prefix(line)
        named = prefix if prefix and prefix.name in names else None
        if named and parts[-1].lines:
            parts.append(replace(passage, lines=[], echoes=[]))
        if named:
            parts[-1].speaker = named.name
        said = line[named.words :] if named else line
        if said:
            parts[-1].lines.append(said)
    return parts
