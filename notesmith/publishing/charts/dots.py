"""The dot plot: how strongly each term was said, sample by sample."""

from collections.abc import Sequence
from itertools import groupby

from notesmith.publishing.charts.frame import MARK, PAGE, begin, end, explain, signs_of
from notesmith.publishing.charts.paper import SMALL, Paper
from notesmith.publishing.charts.said import (
    LEVELS,
    Level,
    Mark,
    Row,
    Table,
    heading,
    rows,
    samples_of,
    tabulate,
    telling,
)
from notesmith.publishing.charts.signs import FAINT, GRID, INK
from notesmith.publishing.charts.svg import svg
from notesmith.publishing.episode import Episode

NAME = "How strong each term was said to be"
MOST_ROWS = 28
LINE = 22.0
STEP = 15.0


def draw_dot_plot(episode: Episode, width: int = PAGE) -> str | None:
    """The dot plot as SVG, that many pixels wide; None where no taster perceived anything."""
    paper = episode.once(dot_plot, width)
    return svg(paper) if paper else None


def describe_dot_plot(episode: Episode) -> str:
    """The dot plot in words, for those who cannot see it."""
    shown = telling(rows(episode), MOST_ROWS)
    said = (f"{row.term} ({heading(row).lower()}): {_told(episode, row)}." for row in shown)
    return " ".join((f"Dot plot of {len(shown)} terms.", *said))


def tabulate_dot_plot(episode: Episode) -> Table:
    """All that was said, also the terms that the dot plot has no room for."""
    return tabulate(episode, rows(episode))


def dot_plot(episode: Episode, width: int = PAGE) -> Paper | None:
    """The dot plot on a sheet that many pixels wide."""
    every = rows(episode)
    if not every:
        return None
    shown = telling(every, MOST_ROWS)
    paper = begin(episode, NAME, describe_dot_plot(episode), width)
    samples = frozenset().union(*(row.samples for row in shown))
    explain(paper, episode, [sample for sample in samples_of(episode) if sample in samples])
    plot = _Plot(paper, episode)
    plot.head()
    for group, members in groupby(shown, heading):
        plot.group(group, list(members))
    return end(paper, _notes(shown, len(every)))


class _Plot:
    """The columns of the plot, and what is put into them."""

    def __init__(self, paper: Paper, episode: Episode) -> None:
        self.paper, self.episode, self.signs = paper, episode, signs_of(episode)
        self.left = min(200.0, paper.width * 0.34)
        self.band = (paper.width - self.left) / len(LEVELS)

    def head(self) -> None:
        """Name the columns."""
        self.paper.height += SMALL
        for level, name in LEVELS.items():
            x, y = self._middle(level), self.paper.height
            self.paper.text(x, y, name, self.band, size=SMALL, anchor="middle", colour=FAINT)
        self.paper.height += 6

    def group(self, name: str, members: Sequence[Row]) -> None:
        """Put the rows of one facet."""
        paper, top = self.paper, self.paper.height + 6
        paper.line(((0, top), (paper.width, top)), FAINT)
        paper.text(0, top + 17, name, paper.width, bold=True)
        paper.height = top + 22
        for row in members:
            self._row(row)

    def _row(self, row: Row) -> None:
        columns = {level: [mark for mark in row.marks if mark.level == level] for level in LEVELS}
        fitting = max(1, int(self.band // STEP))
        deep = max(-(-len(marks) // fitting) for marks in columns.values())
        middle = self.paper.height + LINE / 2
        self.paper.line(((self.left, middle), (self.paper.width, middle)), GRID)
        self.paper.text(0, middle + 4.5, row.term, self.left - 8, colour=INK)
        for level, marks in columns.items():
            for start in range(0, len(marks), fitting):
                line = marks[start : start + fitting]
                self._marks(row, line, self._middle(level), middle + start // fitting * STEP)
        self.paper.height += LINE + (deep - 1) * STEP

    def _marks(self, row: Row, marks: Sequence[Mark], middle: float, y: float) -> None:
        for place, mark in enumerate(marks):
            x = middle + (place - (len(marks) - 1) / 2) * STEP
            tip = f"{row.term}, {self.episode.name(mark.sample)}: {mark.told}"
            self.paper.mark(x, y, self.signs[mark.sample], MARK, hollow=mark.unsure, tip=tip)
            if mark.after_reveal:
                self.paper.line(((x - MARK, y + MARK + 3), (x + MARK, y + MARK + 3)), INK, 1.5)

    def _middle(self, level: Level) -> float:
        return self.left + (list(LEVELS).index(level) + 0.5) * self.band


def _told(episode: Episode, row: Row) -> str:
    return "; ".join(f"{episode.name(mark.sample)} {mark.told}" for mark in row.marks)


def _notes(shown: Sequence[Row], of: int) -> list[str]:
    marks = [mark for row in shown for mark in row.marks]
    notes = ["The tasters' own words. “There” is what was named without saying how strong it is."]
    if any(len(row.marks) > len(row.samples) for row in shown):
        notes.append("One sample twice in a row: said at different times, or by different tasters.")
    if any(mark.unsure for mark in marks):
        notes.append("A hollow sign: they were unsure.")
    if any(mark.after_reveal for mark in marks):
        notes.append("Underlined: said after the reveal.")
    if len(shown) < of:
        notes.append(f"{len(shown)} of {of} terms, those that set samples apart first; all stand in the table.")
    return notes
