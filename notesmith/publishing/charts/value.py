"""What is worth its price: every offer at its price and score, by name, a line through the best."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import pairwise
from math import ceil, floor, log10

from notesmith.publishing.charts.letters import width as width_of
from notesmith.publishing.charts.paper import HEADING, SMALL, TEXT, Paper
from notesmith.publishing.charts.signs import COLOURS, FAINT, GRID, INK, SHAPES, Sign

TALL = 420.0
MARK = 5.0
LINE = 15.0
LEFT = 46.0
BESTS, OTHERS, KNEE = Sign(COLOURS[0], SHAPES[0]), Sign(FAINT, SHAPES[0]), Sign(COLOURS[1], SHAPES[3])
_AROUND = ((1, 0), (1, 1.4), (1, -1.4), (0, 1.4), (0, -1.4), (-1, 0), (-1, -1.4), (-1, 1.4))
Box = tuple[float, float, float, float]


@dataclass(frozen=True)
class Point:
    """One offer."""

    name: str
    price: float
    score: float
    best: bool
    """Whether it stands on the frontier."""
    knee: bool


def value_chart(points: Sequence[Point], title: str, priced_in: str, page: int = 880) -> Paper | None:
    """Draw the offers on a sheet that many pixels wide; None where there are none."""
    if not points:
        return None
    paper = Paper(page - 16, title, describe_value(points, priced_in))
    paper.height = paper.paragraph(0, title, size=HEADING, bold=True) + 8
    plot = _Plot(paper, points)
    plot.axes(priced_in)
    plot.frontier(sorted((at for at in points if at.best), key=lambda at: at.price))
    for point in points:
        plot.mark(point)
    for point in sorted(points, key=lambda at: (not at.best, at.price, at.name)):
        plot.name(point)
    paper.height = plot.bottom + 46
    paper.height = paper.note(paper.height, "On the line: offers that none beats in both price and score.")
    if any(at.knee for at in points):
        paper.height = paper.note(paper.height, "The diamond: the knee, after which a higher price buys ever less.")
    return paper


def describe_value(points: Sequence[Point], priced_in: str) -> str:
    """The chart in words, for those who cannot see it."""
    best = sorted((at for at in points if at.best), key=lambda at: at.price)
    told = "; ".join(
        f"{at.name}, {at.price:.2f} {priced_in}, score {at.score:g}{', the knee' if at.knee else ''}" for at in best
    )
    return f"{len(points)} offers by price and score. None beats: {told}."


class _Plot:
    """The axes, and what is put between them."""

    def __init__(self, paper: Paper, points: Sequence[Point]) -> None:
        self.paper, self.top = paper, paper.height + 2 * TEXT
        self.tall = max(TALL, len(points) * LINE * 1.6)
        self.bottom, self.right = self.top + self.tall, paper.width - 8
        self.prices = _ticks(min(at.price for at in points), max(at.price for at in points))
        self.scores = _ticks(min(at.score for at in points), max(at.score for at in points))
        self.taken: list[Box] = [self._around(*self.place(at)) for at in points]

    def place(self, point: Point) -> tuple[float, float]:
        """Where a point lies."""
        return self._x(point.price), self._y(point.score)

    def axes(self, priced_in: str) -> None:
        """Draw the grid, with what the lines stand for."""
        paper = self.paper
        for price in self.prices:
            paper.line(((self._x(price), self.top), (self._x(price), self.bottom)), GRID)
            paper.text(self._x(price), self.bottom + 16, f"{price:g}", 60, size=SMALL, anchor="middle", colour=FAINT)
        for score in self.scores:
            paper.line(((LEFT, self._y(score)), (self.right, self._y(score))), GRID)
            paper.text(LEFT - 6, self._y(score) + 4, f"{score:g}", LEFT, size=SMALL, anchor="end", colour=FAINT)
        paper.text(self.right, self.bottom + 36, f"Price: {priced_in}", self.right, anchor="end", colour=FAINT)
        paper.text(0, self.top - 8, "Score", 100, colour=FAINT)

    def frontier(self, best: Sequence[Point]) -> None:
        """Draw a step from each of the best to the next."""
        corners = [self.place(at) for at in best]
        steps = [(after[0], before[1]) for before, after in pairwise(corners)]
        path = [corner for pair in zip(corners, [*steps, (self.right, corners[-1][1])], strict=True) for corner in pair]
        self.paper.line(path, BESTS.colour, 1.5)
        self.taken += [_around_line(*ends) for ends in pairwise(path)]

    def mark(self, point: Point) -> None:
        """Put the sign of a point."""
        sign = KNEE if point.knee else BESTS if point.best else OTHERS
        tip = f"{point.name}: {point.price:.2f}, score {point.score:g}"
        self.paper.mark(*self.place(point), sign, MARK + 2 * point.knee, hollow=not point.best, tip=tip)

    def name(self, point: Point) -> None:
        """Write the name where it meets nothing else, with a line to the point where that is far."""
        x, y = self.place(point)
        wide = min(width_of(point.name[:300], SMALL), (self.right - LEFT) / 2)
        box = next((at for at in self._rooms(x, y, wide) if not self._meets(at)), None)
        if box is None:  # so full a sheet that names must meet
            box = (LEFT, self.top, LEFT + wide, self.top + LINE)
        self.taken.append(box)
        near_x, near_y = min(max(x, box[0]), box[2]), min(max(y, box[1]), box[3])
        if abs(near_x - x) + abs(near_y - y) > 3 * MARK:
            self.paper.line(((x, y), (near_x, near_y)), FAINT, 0.7)
        self.paper.text(box[0], box[3] - 3.5, point.name, wide + 1, size=SMALL, colour=INK if point.best else FAINT)

    def _rooms(self, x: float, y: float, wide: float) -> Iterator[Box]:
        """Places for a name: beside its point, above and below, then farther and farther away, and at last anywhere."""
        for far in (MARK + 3, 18, 32, 50, 75, 105, 140):
            for dx, dy in _AROUND:
                left = x + dx * far - (wide if dx < 0 else wide / 2 if dx == 0 else 0)
                yield self._within(left, y + dy * far - LINE / 2, wide)
        lines = int(self.tall // LINE)
        for column in range(max(1, int((self.right - LEFT) // (wide + 4)))):
            for line in range(lines):
                yield self._within(LEFT + 2 + column * (wide + 4), self.top + line * LINE, wide)

    def _within(self, left: float, top: float, wide: float) -> Box:
        left = min(max(left, LEFT + 2), self.right - wide)
        top = min(max(top, self.top), self.bottom - LINE)
        return left, top, left + wide, top + LINE

    def _meets(self, box: Box) -> bool:
        return any(box[0] < at[2] and at[0] < box[2] and box[1] < at[3] and at[1] < box[3] for at in self.taken)

    def _around(self, x: float, y: float) -> Box:
        return x - MARK, y - MARK, x + MARK, y + MARK

    def _x(self, price: float) -> float:
        return LEFT + (price - self.prices[0]) / (self.prices[-1] - self.prices[0]) * (self.right - LEFT)

    def _y(self, score: float) -> float:
        return self.bottom - (score - self.scores[0]) / (self.scores[-1] - self.scores[0]) * self.tall


def _around_line(one: tuple[float, float], other: tuple[float, float]) -> Box:
    (x, y), (to_x, to_y) = sorted((one, other))
    return x - 1, min(y, to_y) - 1, to_x + 1, max(y, to_y) + 1


def _ticks(least: float, most: float) -> list[float]:
    """Round figures from below the least to above the most.

    >>> _ticks(12, 48)
    [10, 20, 30, 40, 50]
    """
    spread = (most - least) or abs(most) or 1.0
    step = 10 ** floor(log10(spread / 3))
    step = next(step * size for size in (1, 2, 5, 10) if spread / (step * size) <= 6)
    first, last = floor(least / step), ceil(most / step)
    last += last == first
    return [round(at * step, 10) for at in range(first, last + 1)]
