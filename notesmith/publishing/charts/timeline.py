"""The timeline of the recording: its chapters, what was perceived when and of which side, and the reveals."""

from collections import Counter, defaultdict
from collections.abc import Sequence
from dataclasses import dataclass
from typing import get_args

from notesmith.clock import format_clock, seconds_to_ms
from notesmith.publishing.chapters.model import Chapter, chapters_of
from notesmith.publishing.charts.frame import PAGE, begin, end, explain, signs_of
from notesmith.publishing.charts.letters import width as width_of
from notesmith.publishing.charts.letters import wrap
from notesmith.publishing.charts.paper import SMALL, Paper
from notesmith.publishing.charts.said import Table, own, samples_of, spoken
from notesmith.publishing.charts.signs import FAINT, INK
from notesmith.publishing.charts.svg import svg
from notesmith.publishing.episode import Episode
from notesmith.records import Facet, Observation, Reveal

NAME = "The recording from start to end"
FACETS = get_args(Facet)
SHADE = "#f3f3f3"
LINE = 15.0


def draw_timeline(episode: Episode, width: int = PAGE) -> str | None:
    """The timeline as SVG, that many pixels wide; None where the captions carry no times."""
    paper = episode.once(timeline, width)
    return svg(paper) if paper else None


def describe_timeline(episode: Episode) -> str:
    """The timeline in words, for those who cannot see it."""
    chapters = episode.once(chapters_of)
    told = (f"{_stretch(at)} {at.title}: perceptions {len(_within(episode, at)) or 'none'}." for at in chapters)
    reveals = (f"Revealed at {_clock(reveal.start)}: {reveal.sample}." for reveal in _reveals(episode))
    return " ".join((f"Timeline of {len(chapters)} chapters.", *told, *reveals))


def tabulate_timeline(episode: Episode) -> Table:
    """The chapters, with how many perceptions of each facet fall into them."""
    lines = []
    for chapter in episode.once(chapters_of):
        count = Counter(seen.facet for seen in _within(episode, chapter))
        facts = (format_clock(chapter.start_ms), format_clock(chapter.end_ms), chapter.title)
        lines.append((*facts, *(str(count[facet] or "") for facet in FACETS)))
    return Table(("From", "To", "Chapter", *(facet.capitalize() for facet in FACETS)), tuple(lines))


def timeline(episode: Episode, width: int = PAGE) -> Paper | None:
    """The timeline on a sheet that many pixels wide."""
    if not episode.once(chapters_of):
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
    """What is named beside the strip: a chapter, or a reveal, which is bold."""

    at_ms: int
    lines: tuple[str, ...]
    bold: bool

    @property
    def height(self) -> float:
        """Pixels from its middle line to that of a label below it."""
        return len(self.lines) * LINE


class _Strip:
    """Time from top to bottom; the chapters' names on the left, a column for each facet on the right."""

    def __init__(self, paper: Paper, episode: Episode) -> None:
        self.paper, self.episode = paper, episode
        self.signs, self.samples, self.chapters = signs_of(episode), samples_of(episode), episode.once(chapters_of)
        self.names = width_of(format_clock(episode.length_ms), SMALL) + 8
        self.left = min(270.0, paper.width * 0.5)
        self.column = (paper.width - self.left) / len(FACETS)
        self.narrow = self.column < 80
        self.lane = self.column / max(1, len(self.samples))
        self.radius = min(4.0, self.lane / 2)
        self.labels = self._named()
        room = sum(label.height for label in self.labels)
        self.tall = max(360.0, room * 1.25, min(900.0, len(own(episode)) * 4.0))
        self.top = paper.height + (SMALL * 6.5 if self.narrow else SMALL + 12)

    def draw(self) -> None:
        """Draw all of it."""
        self._columns()
        self._bands()
        self._name()
        self._signs()
        self.paper.height = self.top + self.tall + 8

    def _named(self) -> list[_Label]:
        reveals = [(_ms(at.start), f"{at.sample}: {at.product}", True) for at in _reveals(self.episode)]
        chapters = [(at.start_ms, at.title, False) for at in self.chapters]
        room = self.left - self.names - 20
        return [
            _Label(at_ms, tuple(wrap(words, room, SMALL, bold=bold, lines=2)) or ("",), bold)
            for at_ms, words, bold in sorted((*chapters, *reveals), key=lambda label: (label[0], label[2]))
        ]

    def _columns(self) -> None:
        for place, facet in enumerate(FACETS):
            x, y = self.left + (place + 0.5) * self.column, self.top - 8
            if self.narrow:
                self.paper.upright(x + 4, y, facet, SMALL * 6.5, size=SMALL, colour=FAINT)
            else:
                self.paper.text(x, y, facet, self.column, size=SMALL, anchor="middle", colour=FAINT)

    def _bands(self) -> None:
        paper = self.paper
        for chapter in self.chapters[::2]:
            paper.box(self.left, self._y(chapter.start_ms), paper.width, self._y(chapter.end_ms), SHADE)
        for place in range(len(FACETS) + 1):
            x = self.left + place * self.column
            paper.line(((x, self.top), (x, self.top + self.tall)))
        for reveal in _reveals(self.episode):
            y = self._y(_ms(reveal.start))
            paper.line(((self.left, y), (paper.width, y)), INK, 1.4, dashed=True)

    def _name(self) -> None:
        paper = self.paper
        for label, y in zip(self.labels, self._places(), strict=True):
            true = self._y(label.at_ms)
            paper.line(((self.left - 16, y), (self.left - 4, true), (self.left, true)), FAINT, 0.8)
            paper.text(0, y + 4, format_clock(label.at_ms), self.names, size=SMALL, colour=FAINT)
            for number, line in enumerate(label.lines):
                paper.text(self.names, y + 4 + number * LINE, line, self.left, size=SMALL, bold=label.bold)

    def _places(self) -> list[float]:
        """Where the labels go: as near to their times as they find room, none into the next, none below the end."""
        places, free = [], 0.0
        for label in self.labels:
            places.append(max(self._y(label.at_ms), free))
            free = places[-1] + label.height
        limit = self.top + self.tall + LINE
        for k in range(len(places) - 1, -1, -1):
            places[k] = limit = min(places[k], limit - self.labels[k].height)
        return places

    def _signs(self) -> None:
        taken: dict[float, list[tuple[float, float]]] = defaultdict(list)
        for seen in own(self.episode):
            if seen.start is not None and seen.sample is not None:
                lane = self._lane(seen.facet, seen.sample)
                x, y = self._free(taken[lane], lane, self._y(_ms(seen.start)))
                taken[lane].append((x, y))
                tip = f"{_clock(seen.start)} {self.episode.name(seen.sample, seen.start)}: {_term(self.episode, seen)}"
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
        near = [x for x, at in taken if abs(y - at) < step]
        free = (x for x in places if not any(abs(x - other) < step for other in near))
        return next(free, places[-1]), y

    def _y(self, at_ms: int) -> float:
        return self.top + min(1.0, at_ms / self.episode.length_ms) * self.tall


def _reveals(episode: Episode) -> list[Reveal]:
    return [reveal for reveal in episode.notes.reveals if reveal.start is not None]


def _within(episode: Episode, chapter: Chapter) -> list[Observation]:
    return [seen for ms, seen in episode.once(_timed) if chapter.start_ms <= ms < chapter.end_ms]


def _timed(episode: Episode) -> list[tuple[int, Observation]]:
    return [(_ms(seen.start), seen) for seen in own(episode) if seen.start is not None]


def _stretch(chapter: Chapter) -> str:
    return f"{format_clock(chapter.start_ms)}–{format_clock(chapter.end_ms)}"


def _term(episode: Episode, seen: Observation) -> str:
    term = spoken(episode, seen)
    return {"present": term, "absent": f"no {term}", "uncertain": f"{term}?"}[seen.presence]


def _clock(at_s: float | None) -> str:
    return format_clock(_ms(at_s))


def _ms(at_s: float | None) -> int:
    return seconds_to_ms(at_s or 0.0)
