"""What show notes are made of: parts of lines, each with the records whose words say it."""

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass, field, replace
from typing import Literal

from notesmith.publishing.charts.said import Table
from notesmith.records import Evidenced

Style = Literal["plain", "quote", "no", "not", "unsure"]
"""How a part is read: `no` and `not` stand before it, `unsure` has a question mark behind it."""


@dataclass(frozen=True)
class Part:
    """The smallest thing said: what the reader reads, and what proves it."""

    text: str
    proofs: tuple[Evidenced, ...] = ()
    """The records whose words say it; none where it stands on the tasting sheet."""
    marks: tuple[str, ...] = ()
    """What the reader should know of it, such as `slight`, `after the reveal` or who said it."""
    style: Style = "plain"


@dataclass(frozen=True)
class Line:
    """Parts that belong together, with a word before them that says what they are."""

    label: str
    parts: tuple[Part, ...]
    under: str = ""
    """What this line and its neighbours belong to, such as a preparation."""
    about: str = ""
    """What the line means, in words of ours; says nothing of the recording."""


@dataclass(frozen=True)
class Head:
    """What a column or a row of a board is headed by."""

    text: str
    short: str
    """The same where there is little room."""
    sample: str = ""
    """The sample, where it is one."""


@dataclass(frozen=True)
class Board:
    """Samples by facet, or the other way round; `caption` is empty where one board says all."""

    caption: str
    columns: tuple[Head, ...]
    rows: tuple[tuple[Head, tuple[tuple[Part, ...], ...]], ...]


@dataclass(frozen=True)
class Group:
    """Lines under a heading of their own; the heading is empty where a block has but one group."""

    heading: str
    lines: tuple[Line, ...]
    sample: str = ""
    """The sample that all of it is about."""


@dataclass(frozen=True)
class Chart:
    """A drawing as SVG text made by us, and the same in words."""

    heading: str
    wide: str
    narrow: str
    """The same for a telephone's screen."""
    description: str
    table: Table


@dataclass(frozen=True)
class Block:
    """One block of the show notes."""

    name: str
    """What its template may be called; also its anchor on the page."""
    heading: str
    groups: tuple[Group, ...] = ()
    boards: tuple[Board, ...] = ()
    charts: tuple[Chart, ...] = ()
    note: str = ""
    """How to read it, in words of ours."""
    rank: int = field(default=1, kw_only=True)
    """How soon the plain-text form, which has little room, leaves its lines out: 0 last."""


def once(parts: Iterable[Part]) -> tuple[Part, ...]:
    """The parts with those that read alike made one, which carries the proofs of all."""
    alike: dict[tuple[object, ...], Part] = {}
    for part in parts:
        key = part.text.casefold(), part.marks, part.style
        first = alike.get(key)
        alike[key] = replace(first, proofs=(*first.proofs, *part.proofs)) if first else part
    return tuple(alike.values())


def listed(names: Sequence[str]) -> str:
    """Names as they are listed in a sentence.

    >>> listed(["Ana"]), listed(["Ana", "Bram", "Ines"])
    ('Ana', 'Ana, Bram and Ines')
    """
    return " and ".join((", ".join(names[:-1]), names[-1])) if len(names) > 1 else "".join(names)


def parts_of(blocks: Iterable[Block]) -> Iterator[Part]:
    """Every part of the blocks, in reading order."""
    for block in blocks:
        for board in block.boards:
            yield from (part for _, cells in board.rows for cell in cells for part in cell)
        for group in block.groups:
            yield from (part for line in group.lines for part in line.parts)


def block(name: str, heading: str, lines: Iterable[Line], *, note: str = "", rank: int = 1) -> Block | None:
    """A block of one group of lines; None where there are none."""
    kept = tuple(line for line in lines if line.parts)
    return Block(name, heading, (Group("", kept),), note=note, rank=rank) if kept else None
