"""The timeline of the recording: its sections, what was perceived when and of which side, and the reveals."""

from collections import Counter
from collections.abc import Sequence
from dataclasses import dataclass
from typing import get_args

from notesmith.clock import format_clock, seconds_to_ms
from notesmith.publishing.charts.frame import PAGE, begin, end, explain, signs_of
from notesmith.publishing.charts.letters import width as width_of
from notesmith.publishing.charts.paper import SMALL, Paper
from notesmith.publishing.charts.said import Table, own, samples_of
from notesmith.publishing.charts.signs import FAINT, INK
from notesmith.publishing.charts.svg import svg
from notesmith.publishing.episode import Episode
from notesmith.records import Facet, Observation, Reveal, Section

NAME = "The recording from start to end"
FACETS = get_args(Facet)
SHADE = "#f3f3f3"
LINE = 15.0


def draw_timeline(episode: Episode, width: int = PAGE) -> str | None:
    """The timeline as SVG, that many pixels wide; None where the captions carry no times."""
    paper = timeline(episode, width)
    return svg(paper) if paper else None


def describe_timeline(episode: Episode) -> str:
    """The timeline in words, for those who cannot see it."""
    told = (f"{at}–{until} {what}: {count or 'no'} perceptions." for at, until, what, count in _told(episode))
    reveals = (f"Revealed at {_clock(reveal.start)}: {reveal.sample}." for reveal in _reveals(episode))
    return " ".join((f"Timeline of {len(_sections(episode))} sections.", *told, *reveals))


def tabulate_timeline(episode: Episode) -> Table:
    """The sections, with how many perceptions of each facet fall into them."""
    lines = []
    for section in _sections(episode):
        count = Counter(seen.facet for seen in _within(episode, section))
        facts = (_clock(section.start), _clock(section.end), _title(section))
        lines.append((*facts, *(str(count[facet] or "") for facet in FACETS)))
    return Table(("From", "To", "Section", *(facet.capitalize() for facet in FACETS)), tuple(lines))


def timeline(episode: Episode, width: int = PAGE) -> Paper | None:
    """The timeline on a sheet that many pixels wide."""
    if not _sections(episode) or not episode.length_ms:
        return None
    paper = begin(episode, NAME, describe_timeline(episode), width)
    explain(paper, episode, samples_of(episode))
    _Strip(paper, episode).draw()
    notes = ["Each sign is a perception in the tasters' own words, at the time it was said; hollow: denied, or unsure."]
    if _reveals(episode):
        notes.append("A dashed line, named in bold: a sample's identity is made known.")
    return end(paper, notes)


@dataclass(frozen=True)
class _Label:
    at_s: float
    words: str
    bold: bool


class _Strip:
    """Time from top to bottom; the sections' names on the left, a column for each facet on the right."""

    def __init__(self, paper: Paper, episode: Episode) -> None:
        self.paper, self.episode = paper, episode
        self.signs, self.samples, self.sections = signs_of(episode), samples_of(episode), _sections(episode)
        self.names = width_of(_clock(episode.length_ms / 1000), SMALL) + 8
        self.left = min(250.0, paper.width * 0.5)
        self.column = (paper.width - self.left) / len(FACETS)
        self.narrow = self.column < 80
        self.lane = self.column / max(1, len(self.samples))
        self.radius = min(4.0, self.lane / 2)
        self.length = episode.length_ms / 1000
        labels = len(self.sections) + len(_reveals(episode))
        self.tall = max(360.0, labels * LINE * 1.7, min(900.0, len(own(episode)) * 4.0))
        self.top = paper.height + (SMALL * 6.5 if self.narrow else SMALL + 12)

    def draw(self) -> None:
        """Draw all of it."""
        self._columns()
        self._bands()
        self._labels()
        self._signs()
        self.paper.height = self.top + self.tall + 8

    def _columns(self) -> None:
        for place, facet in enumerate(FACETS):
            x, y = self.left + (place + 0.5) * self.column, self.top - 8
            if self.narrow:
                self.paper.upright(x + 4, y, facet, SMALL * 6.5, size=SMALL, colour=FAINT)
            else:
                self.paper.text(x, y, facet, self.column, size=SMALL, anchor="middle", colour=FAINT)

    def _bands(self) -> None:
        paper = self.paper
        for number, section in enumerate(self.sections):
            top, bottom = self._y(section.start or 0.0), self._y(section.end or self.length)
            if number % 2 == 0:
                paper.box(self.left, top, paper.width, bottom, SHADE)
        for place in range(len(FACETS) + 1):
            x = self.left + place * self.column
            paper.line(((x, self.top), (x, self.top + self.tall)))
        for reveal in _reveals(self.episode):
            y = self._y(reveal.start or 0.0)
            paper.line(((self.left, y), (paper.width, y)), INK, 1.4, dashed=True)

    def _labels(self) -> None:
        sections = [_Label(at.start or 0.0, _title(at), False) for at in self.sections]
        reveals = [_Label(at.start or 0.0, f"{at.sample}: {at.product}", True) for at in _reveals(self.episode)]
        labels = sorted((*sections, *reveals), key=lambda label: (label.at_s, label.bold))
        for label, y in zip(labels, self._places([self._y(label.at_s) for label in labels]), strict=True):
            true = self._y(label.at_s)
            self.paper.line(((self.left - 16, y), (self.left - 4, true), (self.left, true)), FAINT, 0.8)
            self.paper.text(0, y + 4, _clock(label.at_s), self.names, size=SMALL, colour=FAINT)
            room = self.left - self.names - 20
            self.paper.text(self.names, y + 4, label.words, room, size=SMALL, bold=label.bold)

    def _places(self, wanted: Sequence[float]) -> list[float]:
        """Where labels go that want these places: none nearer to the next than a line, none below the end."""
        places: list[float] = []
        for y in wanted:
            places.append(max(y, places[-1] + LINE) if places else y)
        limit = self.top + self.tall
        for k in range(len(places) - 1, -1, -1):
            places[k] = min(places[k], limit)
            limit = places[k] - LINE
        return places

    def _signs(self) -> None:
        taken: list[tuple[float, float]] = []
        for seen in own(self.episode):
            if seen.start is not None and seen.sample is not None:
                x, y = self._free(taken, self._lane(seen.facet, seen.sample), self._y(seen.start))
                taken.append((x, y))
                tip = f"{_clock(seen.start)} {self.episode.name(seen.sample, seen.start)}: {_term(seen)}"
                self.paper.mark(x, y, self.signs[seen.sample], self.radius, hollow=seen.presence != "present", tip=tip)

    def _lane(self, facet: Facet, sample: str) -> float:
        """Where the lane of a sample begins in the column of a facet."""
        return self.left + FACETS.index(facet) * self.column + self.samples.index(sample) * self.lane

    def _free(self, taken: Sequence[tuple[float, float]], left: float, y: float) -> tuple[float, float]:
        """The first place of the lane at that time where no other sign is; the last one where none is free."""
        step = 2 * self.radius + 2
        places = [left + self.radius + 1 + k * step for k in range(max(1, int((self.lane - 1) // step)))]
        if len(places) == 1:
            places = [left + self.lane / 2]
        free = (x for x in places if not any(abs(x - other) < step and abs(y - at) < step for other, at in taken))
        return next(free, places[-1]), y

    def _y(self, at_s: float) -> float:
        return self.top + min(1.0, at_s / self.length) * self.tall


def _sections(episode: Episode) -> list[Section]:
    return [section for section in episode.notes.sections if section.start is not None and section.end is not None]


def _reveals(episode: Episode) -> list[Reveal]:
    return [reveal for reveal in episode.notes.reveals if reveal.start is not None]


def _within(episode: Episode, section: Section) -> list[Observation]:
    start, stop = section.span
    return [seen for seen in own(episode) if start <= seen.span[0] < stop]


def _told(episode: Episode) -> list[tuple[str, str, str, int]]:
    return [(_clock(at.start), _clock(at.end), _title(at), len(_within(episode, at))) for at in _sections(episode)]


def _title(section: Section) -> str:
    return f"{section.kind}, {section.sample}" if section.sample else section.kind


def _term(seen: Observation) -> str:
    return {"present": seen.term, "absent": f"no {seen.term}", "uncertain": f"{seen.term}?"}[seen.presence]


def _clock(at_s: float | None) -> str:
    return "" if at_s is None else format_clock(seconds_to_ms(at_s))
