"""A sheet of paper measured in pixels: charts are laid out on it once, then written as SVG or PNG."""

from collections.abc import Iterable
from dataclasses import dataclass, field
from typing import Literal

from notesmith.publishing.charts.letters import fit, wrap
from notesmith.publishing.charts.signs import FAINT, GRID, INK, PAPER, Outline, Sign

Anchor = Literal["start", "middle", "end"]
TEXT, SMALL, HEADING = 13.0, 12.0, 16.0


@dataclass(frozen=True)
class Words:
    """Words on one line; `x`, `y` is where they begin, are centred or end, on their base line."""

    x: float
    y: float
    words: str
    size: float
    anchor: Anchor
    bold: bool
    colour: str
    upright: bool
    """Whether they run upwards instead of to the right."""


@dataclass(frozen=True)
class Shape:
    """A line or an area through points; without a fill or a stroke where that is None."""

    points: Outline
    closed: bool
    fill: str | None
    stroke: str | None
    weight: float
    dashed: bool
    tip: str
    """What it says to those who point at it."""


@dataclass
class Paper:
    """What is drawn on a sheet so many pixels wide; it grows downwards."""

    width: float
    title: str
    says: str
    """The chart in words, for those who cannot see it."""
    height: float = 0.0
    drawn: list[Words | Shape] = field(default_factory=list)

    def text(
        self, x: float, y: float, words: str, room: float, *, size: float = TEXT, anchor: Anchor = "start",
        bold: bool = False, colour: str = INK,
    ) -> None:  # fmt: skip
        """Write words, cut to the room they have."""
        self.drawn.append(Words(x, y, fit(words, room, size, bold=bold), size, anchor, bold, colour, False))

    def upright(self, x: float, y: float, words: str, room: float, *, size: float = TEXT, colour: str = INK) -> None:
        """Write words that run upwards."""
        self.drawn.append(Words(x, y, fit(words, room, size), size, "start", False, colour, True))

    def paragraph(self, y: float, words: str, *, size: float, bold: bool = False, colour: str = INK) -> float:
        """Write words over the whole width, on up to four lines; returns where the next line goes."""
        for line in wrap(words, self.width, size, bold=bold, lines=4):
            y += size * 1.35
            self.text(0, y, line, self.width, size=size, bold=bold, colour=colour)
        return y

    def line(self, points: Iterable[tuple[float, float]], colour: str = GRID, weight: float = 1.0, *,
             dashed: bool = False) -> None:  # fmt: skip
        """Draw a line through points."""
        self.drawn.append(Shape(tuple(points), False, None, colour, weight, dashed, ""))

    def area(self, points: Iterable[tuple[float, float]], fill: str) -> None:
        """Fill what lies within the points."""
        self.drawn.append(Shape(tuple(points), True, fill, None, 0, False, ""))

    def box(self, left: float, top: float, right: float, bottom: float, fill: str) -> None:
        """Fill a box."""
        self.area(((left, top), (right, top), (right, bottom), (left, bottom)), fill)

    def mark(self, x: float, y: float, sign: Sign, radius: float, *, hollow: bool = False, tip: str = "") -> None:
        """Put a sample's sign."""
        points = tuple((x + radius * dx, y + radius * dy) for dx, dy in sign.outline)
        self.drawn.append(Shape(points, True, PAPER if hollow else sign.colour, sign.colour, 1.6, False, tip))

    def note(self, y: float, words: str) -> float:
        """Write small words over the whole width; returns where the next line goes."""
        return self.paragraph(y, words, size=SMALL, colour=FAINT)
