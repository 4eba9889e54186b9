"""Show notes as plain text within a number of characters: the most telling entries first to be kept, none cut."""

from collections.abc import Iterator
from dataclasses import dataclass

from notesmith.publishing.plain import one_line
from notesmith.publishing.show_notes.contents import ShowNotes
from notesmith.publishing.show_notes.lines import Block, Line, Part
from notesmith.publishing.show_notes.story import time_of

NOT_SHOWN = frozenset({"board", "charts"})
"""Blocks that need more than lines of text; the portraits say the same."""
FIRST = -1
"""Rank of the head and the cautions."""
QUOTES = {"quote": "“{}”", "no": "no {}", "not": "not {}", "unsure": "{}?", "plain": "{}"}


@dataclass(frozen=True)
class Entry:
    """A line of text that is kept whole or left out."""

    heading: tuple[str, str]
    """Headings of the block and the group it stands under; either may be empty."""
    text: str
    rank: int
    """The lowest is kept first."""


def fitted(notes: ShowNotes, length: int) -> str:
    """The text: title, verdict, entries in reading order, cautions; what is less telling is left out first."""
    head = [one_line(notes.title), " · ".join(map(one_line, notes.byline))]
    head += [f"Verdict: {written(part)}" for part in notes.verdict]
    foot = [*(one_line(caution.text) for caution in notes.cautions), notes.defers]
    every = [*(Entry(("", ""), line, FIRST) for line in head), *_entries(notes)]
    every += [Entry(("Please note", ""), line, FIRST) for line in foot]
    kept: set[int] = set()
    full: set[str] = set()
    for place in sorted(range(len(every)), key=lambda place: every[place].rank):
        block = every[place].heading[0]
        if block not in full and len(_joined([every[k] for k in sorted({*kept, place})])) <= length:
            kept.add(place)
        else:
            full.add(block)  # what comes after would stand there as if nothing were missing
    return _joined([every[place] for place in sorted(kept)])


def written(part: Part) -> str:
    """A part with its marks and times, such as `“no smoke” (1:58)`."""
    times = list(dict.fromkeys(filter(None, map(time_of, part.proofs))))
    detail = ", ".join([*map(one_line, part.marks), *times])
    text = QUOTES[part.style].format(one_line(part.text))
    return f"{text} ({detail})".strip() if detail else text


def _entries(notes: ShowNotes) -> Iterator[Entry]:
    for block in notes.blocks:
        if block.name not in NOT_SHOWN:
            for group in block.groups:
                under = block.heading, group.heading
                yield from (Entry(under, _line(block, line), block.rank) for line in group.lines)


def _line(block: Block, line: Line) -> str:
    if block.name == "chapters":
        return f"{line.label} {one_line(line.parts[0].text)}"
    parts = "; ".join(map(written, line.parts))
    told = ", ".join(one_line(word) for word in (line.label, line.under) if word)
    label = f"{told}: " if told else ""
    return f"{label}{line.about} {parts}" if line.about else f"{label}{parts}"


def _joined(entries: list[Entry]) -> str:
    """The entries, each heading once before the first that stands under it."""
    lines: list[str] = []
    at = ("", "")
    for entry in entries:
        if entry.heading[0] != at[0]:
            lines += ["", entry.heading[0].upper()]
        if entry.heading[1] and entry.heading != at:
            lines += ["", one_line(entry.heading[1])]
        at = entry.heading
        lines.append(entry.text)
    return "\n".join(lines).strip() + "\n" if lines else ""
