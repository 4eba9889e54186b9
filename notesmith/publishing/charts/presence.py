"""The presence matrix: which terms were found in which sample, which were denied, and of which nothing was said."""

from collections.abc import Callable, Iterable, Sequence
from itertools import groupby

from notesmith.publishing.charts.frame import MARK, PAGE, begin, end, explain, signs_of
from notesmith.publishing.charts.letters import width as width_of
from notesmith.publishing.charts.paper import SMALL, Paper
from notesmith.publishing.charts.said import Mark, Row, Table, heading, rows, samples_of, telling
from notesmith.publishing.charts.signs import FAINT, GRID, INK, SHAPES, Sign
from notesmith.publishing.charts.svg import svg
from notesmith.publishing.episode import Episode

NAME = "What was found in which sample"
MOST_ROWS = 40
LINE, HEAD = 20.0, 30.0
LABEL, COLUMN, GAP = 180.0, 40.0, 36.0
"""Pixels that a term, a sample and the space between two blocks take where there is room for several blocks."""

DOT = Sign(INK, SHAPES[0])
RADIUS = {"low": 3.2, "present": 5.0, "high": 7.2}


def draw_presence_matrix(episode: Episode, width: int = PAGE) -> str | None:
    """The presence matrix as SVG, that many pixels wide; None where no taster perceived anything."""
    paper = episode.once(presence_matrix, width)
    return svg(paper) if paper else None


def describe_presence_matrix(episode: Episode) -> str:
    """The presence matrix in words, for those who cannot see it."""
    every = rows(episode)
    samples = " ".join(_sample_told(episode, every, sample) for sample in samples_of(episode))
    return f"Matrix of {len(every)} terms by {len(samples_of(episode))} samples. {samples}".strip()


def tabulate_presence_matrix(episode: Episode) -> Table:
    """All terms by all samples; each cell what was said, and when."""
    samples = samples_of(episode)
    lines = (
        (heading(row), row.term, *(_cell([mark for mark in row.marks if mark.sample == sample]) for sample in samples))
        for row in rows(episode)
    )
    return Table(("Facet", "Term", *(episode.name(sample) for sample in samples)), tuple(lines))


def presence_matrix(episode: Episode, width: int = PAGE) -> Paper | None:
    """The presence matrix on a sheet that many pixels wide."""
    every = rows(episode)
    if not every:
        return None
    paper = begin(episode, NAME, describe_presence_matrix(episode), width)
    explain(paper, episode, samples_of(episode))
    matrix = _Matrix(paper, episode)
    shown = telling(every, MOST_ROWS * len(matrix.blocks))
    matrix.fill(shown)
    _key(paper)
    notes = ["The tasters' own words, the strongest of several. An empty field: nothing was said of it."]
    if len(shown) < len(every):
        notes.append(f"{len(shown)} of {len(every)} terms, those that set samples apart first; all stand in the table.")
    return end(paper, notes)


class _Matrix:
    """The columns of the matrix, and what is put into their fields; side by side as often as there is room."""

    def __init__(self, paper: Paper, episode: Episode) -> None:
        self.paper, self.signs, self.episode = paper, signs_of(episode), episode
        self.samples = samples_of(episode)
        needs = LABEL + COLUMN * len(self.samples) + GAP
        times = max(1, int((paper.width + GAP) // needs))
        self.wide = (paper.width + GAP) / times - GAP
        self.blocks = [block * (self.wide + GAP) for block in range(times)]
        self.column = min(60.0, max((self.wide - LABEL) / len(self.samples), self.wide * 0.58 / len(self.samples)))
        self.label = self.wide - self.column * len(self.samples)

    def fill(self, shown: Sequence[Row]) -> None:
        """Put the rows, so that all blocks are about equally tall."""
        top = lowest = self.paper.height
        for left, rows_here in zip(self.blocks, self._shared(shown), strict=True):
            y = top
            for name, members in groupby(rows_here, heading):
                y = self._group(left, y, name, members)
            lowest = max(lowest, y)
        self.paper.height = lowest

    def _shared(self, shown: Sequence[Row]) -> list[list[Row]]:
        shares: list[list[Row]] = [[] for _ in self.blocks]
        starts = [not place or heading(shown[place - 1]) != heading(row) for place, row in enumerate(shown)]
        tall = [LINE + HEAD * starting for starting in starts]
        done = 0.0
        for row, height in zip(shown, tall, strict=True):
            shares[int((done + height / 2) / sum(tall) * len(shares))].append(row)
            done += height
        return shares

    def _group(self, left: float, y: float, name: str, members: Iterable[Row]) -> float:
        paper, y = self.paper, y + 6
        paper.line(((left, y), (left + self.wide, y)), FAINT)
        paper.text(left, y + 17, name, self.label - 4, bold=True)
        for place, sample in enumerate(self.samples):
            paper.mark(left + self._middle(place), y + 13, self.signs[sample], min(MARK, self.column / 2.6))
        y += HEAD - 6
        for row in members:
            self._row(left, y, row)
            y += LINE
        return y

    def _row(self, left: float, y: float, row: Row) -> None:
        paper, y = self.paper, y + LINE / 2
        paper.text(left, y + 4.5, row.term, self.label - 8)
        paper.line(((left, y + LINE / 2), (left + self.wide, y + LINE / 2)), GRID, 0.7)
        for place, sample in enumerate(self.samples):
            marks = [mark for mark in row.marks if mark.sample == sample]
            tip = f"{row.term}, {self.episode.name(sample)}: {_cell(marks)}"
            self._field(left + self._middle(place), y, _kinds(marks), tip)

    def _field(self, middle: float, y: float, kinds: Sequence[str], tip: str) -> None:
        step = min(17.0, self.column / max(1, len(kinds)))
        for place, kind in enumerate(kinds):
            x = middle + (place - (len(kinds) - 1) / 2) * step
            DRAW[kind](self.paper, x, y, min(1.0, step / 15), tip)

    def _middle(self, place: int) -> float:
        return self.label + (place + 0.5) * self.column


def _found(kind: str) -> Callable[[Paper, float, float, float, str], None]:
    return lambda paper, x, y, scale, tip: paper.mark(x, y, DOT, RADIUS[kind] * scale, tip=tip)


def _denied(paper: Paper, x: float, y: float, scale: float, tip: str) -> None:
    far = 5.0 * scale
    paper.mark(x, y, DOT, far, hollow=True, tip=tip)
    paper.line(((x - far, y + far), (x + far, y - far)), INK, 1.6)


def _unsure(paper: Paper, x: float, y: float, _scale: float, _tip: str) -> None:
    paper.text(x, y + 5, "?", 20, anchor="middle", bold=True)


DRAW = {**{kind: _found(kind) for kind in RADIUS}, "absent": _denied, "unsure": _unsure}
KEY = {"low": "slight", "present": "there", "high": "strong", "absent": "not there", "unsure": "unsure"}


def _key(paper: Paper) -> None:
    left, y = 8.0, paper.height + 20
    for kind, name in KEY.items():
        needs = 15 + width_of(name, SMALL)
        if left + needs > paper.width:
            left, y = 8.0, y + 20
        DRAW[kind](paper, left, y, 1.0, "")
        paper.text(left + 13, y + 4.5, name, 100, size=SMALL)
        left += needs + 18
    paper.height = y + 8


def _kinds(marks: Iterable[Mark]) -> list[str]:
    """The one strongest sign of what was found, and that of what was denied or unsure beside it."""
    said = {"unsure" if mark.unsure else mark.level for mark in marks}
    found = [kind for kind in ("high", "present", "low") if kind in said][:1]
    return found + [kind for kind in ("absent", "unsure") if kind in said]


def _cell(marks: Iterable[Mark]) -> str:
    return "; ".join(mark.told for mark in marks)


def _sample_told(episode: Episode, every: Iterable[Row], sample: str) -> str:
    said = [(row, [mark for mark in row.marks if mark.sample == sample]) for row in every]
    groups = groupby(((row, marks) for row, marks in said if marks), key=lambda one: heading(one[0]))
    told = (f"{name}: {', '.join(f'{row.term} {_cell(marks)}' for row, marks in group)}." for name, group in groups)
    return f"{episode.name(sample)}: {' '.join(told) or 'nothing was said.'}"
