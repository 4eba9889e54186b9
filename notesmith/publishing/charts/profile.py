"""The profile plot, in the form the trade reads: one spoke for each attribute, further out for more of it.

What nothing was said of is left out: a spoke without a dot is unknown, and the line is broken there. A dot at the
middle would say that it was tasted for and not found.
"""

import math
from collections.abc import Iterable, Sequence
from dataclasses import dataclass

from notesmith.publishing.arrange import time_of
from notesmith.publishing.charts.families import ATTRIBUTES, by_attribute
from notesmith.publishing.charts.frame import PAGE, begin, end, signs_of
from notesmith.publishing.charts.letters import fit
from notesmith.publishing.charts.letters import width as width_of
from notesmith.publishing.charts.paper import SMALL, TEXT, Anchor, Paper
from notesmith.publishing.charts.said import (
    LEVELS,
    Level,
    Table,
    level,
    own,
    preparations_of,
    samples_of,
    spoken,
    times,
)
from notesmith.publishing.charts.signs import FAINT, GRID, INK, Sign
from notesmith.publishing.charts.svg import svg
from notesmith.publishing.episode import Episode
from notesmith.records import Observation

NAME = "Profile: one spoke for each attribute"
MOST_SPOKES, FEWEST_SPOKES = 10, 3
RINGS: dict[Level, float] = {"absent": 0.16, "low": 0.44, "present": 0.72, "high": 1.0}
LARGEST, SMALLEST = 420.0, 270.0
"""Pixels that the profile of one cup takes at most and at least, names of spokes with it."""
SIDE, ABOVE, BELOW = 40.0, 58.0, 34.0
"""Pixels around the web, at the sides at least, for the names of spokes, and above also for that of the cup."""
BETWEEN = 14.0
"""Pixels between two cups, at least."""
UPRIGHT = 0.2
"""How far a spoke may lean for its name to stand above or below it."""
OFF = 9.0
"""Pixels between a spoke and its name."""


@dataclass(frozen=True)
class Cup:
    """One sample in one preparation, with what was said of each attribute."""

    episode: Episode
    sample: str
    preparation: str | None
    said: dict[str, list[Observation]]

    @property
    def name(self) -> str:
        """What the sample is called, and how it was prepared."""
        name = self.episode.name(self.sample)
        return f"{name}, {self.preparation}" if self.preparation else name

    def level(self, spoke: str) -> Level | None:
        """The most that was surely said of it; None where nothing was."""
        levels = {level(seen) for seen in self.said.get(spoke, ()) if seen.presence != "uncertain"}
        return next((name for name in reversed(LEVELS) if name in levels), None)

    def words(self, spoke: str) -> str:
        """The words that speak of it, each with its strength and its time."""
        return "; ".join(self._told(seen) for seen in self.said.get(spoke, ()))

    def _told(self, seen: Observation) -> str:
        sure = "unsure, " if seen.presence == "uncertain" else ""
        return f"{spoken(self.episode, seen)}: {sure}{LEVELS[level(seen)]} {time_of(seen)}".strip()

    def is_denied(self, spoke: str) -> bool:
        """Whether it was said not to be there."""
        return any(seen.presence == "absent" for seen in self.said.get(spoke, ()))


def draw_profile(episode: Episode, width: int = PAGE) -> str | None:
    """The profile plot as SVG, that many pixels wide; None where too little was said of every cup."""
    paper = episode.once(profile_plot, width)
    return svg(paper) if paper else None


def describe_profile(episode: Episode) -> str:
    """The profile plot in words, for those who cannot see it."""
    cups = _cups(episode)
    spokes = _spokes(cups)
    names = ", ".join(ATTRIBUTES[spoke] for spoke in spokes)
    told = (f"{cup.name}: {_told(cup, spokes)}." for cup in cups)
    return " ".join((f"Profiles with {len(spokes)} spokes ({names}).", *told))


def tabulate_profile(episode: Episode) -> Table:
    """All attributes by all cups; each field the strength, and the words and times it rests on."""
    cups = [cup for cup in _every_cup(episode) if cup.said]
    spokes = [spoke for spoke in ATTRIBUTES if any(spoke in cup.said for cup in cups)]
    lines = ((ATTRIBUTES[spoke], *(cup.words(spoke) for cup in cups)) for spoke in spokes)
    return Table(("Attribute", *(cup.name for cup in cups)), tuple(lines))


def profile_plot(episode: Episode, width: int = PAGE) -> Paper | None:
    """The profile plot on a sheet that many pixels wide."""
    cups = _cups(episode)
    spokes = _spokes(cups)
    if len(spokes) < FEWEST_SPOKES:
        return None
    paper = begin(episode, NAME, describe_profile(episode), width)
    beside = min(len(cups), max(1, int(paper.width // SMALLEST)))
    wide = min(LARGEST, paper.width / beside)
    radius = _radius(wide, spokes)
    tall = 2 * radius + ABOVE + BELOW
    top = paper.height
    for number, cup in enumerate(cups):
        web = _Web(paper, number % beside * wide, top + number // beside * tall, wide, radius, spokes)
        web.draw(cup, signs_of(episode)[cup.sample])
    paper.height = top + -(-len(cups) // beside) * tall
    return end(paper, _notes(episode, cups, spokes))


class _Web:
    """The spokes and rings of one cup, and what is put on them."""

    def __init__(
        self, paper: Paper, left: float, top: float, wide: float, radius: float, spokes: Sequence[str]
    ) -> None:
        self.paper, self.spokes, self.wide, self.left, self.top = paper, spokes, wide, left, top
        self.radius = radius
        self.middle = left + wide / 2, top + ABOVE + radius

    def draw(self, cup: Cup, sign: Sign) -> None:
        """Draw the profile of the cup."""
        self.paper.mark(self.left + 8, self.top + 15, sign, 6)
        way, room = f", {cup.preparation}" if cup.preparation else "", self.wide - 34
        name = fit(cup.episode.name(cup.sample), max(room / 2, room - width_of(way, TEXT, bold=True)), TEXT, bold=True)
        self.paper.text(self.left + 22, self.top + 20, name + way, room, size=TEXT, bold=True)
        self._rings()
        for place, spoke in enumerate(self.spokes):
            self._spoke(place, ATTRIBUTES[spoke], faint=spoke not in cup.said)
        self._lines(cup, sign)
        for place, spoke in enumerate(self.spokes):
            self._dots(place, cup, spoke, sign)

    def _rings(self) -> None:
        for share in RINGS.values():
            self.paper.line((self._at(k, share, of=48) for k in range(49)), GRID)

    def _spoke(self, place: int, name: str, *, faint: bool) -> None:
        self.paper.line((self._at(place, 0), self._at(place, 1)), GRID)
        (x, y), (dx, dy) = self._at(place, 1), _direction(place, len(self.spokes))
        anchor: Anchor = "middle" if abs(dx) < UPRIGHT else "start" if dx > 0 else "end"
        colour = FAINT if faint else INK
        y += 13 * dy + 4.5 - (4 if dy < -0.9 else 0)
        self.paper.text(x + OFF * dx, y, name, 200, size=SMALL, anchor=anchor, bold=not faint, colour=colour)

    def _lines(self, cup: Cup, sign: Sign) -> None:
        """Join neighbouring spokes of which something was said, each with the middle."""
        levels = [cup.level(spoke) for spoke in self.spokes]
        ends = [self._at(place, RINGS[found]) if found else None for place, found in enumerate(levels)]
        pairs = [(one, next_) for one, next_ in zip(ends, (*ends[1:], ends[0]), strict=True) if one and next_]
        for here, following in pairs:
            self.paper.area((self.middle, here, following), sign.tint)
        for place, point in enumerate(ends):
            if point and levels[place] != "absent":
                self.paper.line((self.middle, point), sign.colour, 1.2)
        for pair in pairs:
            self.paper.line(pair, sign.colour, 2.2)

    def _dots(self, place: int, cup: Cup, spoke: str, sign: Sign) -> None:
        tip = f"{ATTRIBUTES[spoke]}: {cup.words(spoke)}"
        if cup.is_denied(spoke):
            self._cross(*self._at(place, RINGS["absent"]))
        for unsure in (seen for seen in cup.said.get(spoke, ()) if seen.presence == "uncertain"):
            self.paper.mark(*self._at(place, RINGS[level(unsure)]), sign, 4, hollow=True, tip=tip)
        found = cup.level(spoke)
        if found and found != "absent":
            self.paper.mark(*self._at(place, RINGS[found]), sign, 5, tip=tip)

    def _cross(self, x: float, y: float) -> None:
        self.paper.line(((x - 4, y - 4), (x + 4, y + 4)), INK, 2)
        self.paper.line(((x - 4, y + 4), (x + 4, y - 4)), INK, 2)

    def _at(self, place: int, share: float, of: int = 0) -> tuple[float, float]:
        dx, dy = _direction(place, of or len(self.spokes))
        return self.middle[0] + dx * share * self.radius, self.middle[1] + dy * share * self.radius


def _direction(place: int, of: int) -> tuple[float, float]:
    turn = math.tau * place / of
    return math.sin(turn), -math.cos(turn)


def _radius(wide: float, spokes: Sequence[str]) -> float:
    """The largest radius with which the name of every spoke still finds room at its side."""
    wide -= BETWEEN
    radius = wide / 2 - SIDE
    for place, spoke in enumerate(spokes):
        dx = abs(_direction(place, len(spokes))[0])
        if dx >= UPRIGHT:
            radius = min(radius, (wide / 2 - width_of(ATTRIBUTES[spoke], SMALL, bold=True)) / dx - OFF)
    return radius


def _every_cup(episode: Episode) -> list[Cup]:
    said = own(episode)
    return [
        Cup(episode, sample, way, by_attribute(at for at in said if (at.sample, at.preparation) == (sample, way)))
        for way in preparations_of(episode)
        for sample in samples_of(episode)
    ]


def _cups(episode: Episode) -> list[Cup]:
    """The cups of which enough was said for a profile."""
    return [cup for cup in _every_cup(episode) if sum(map(bool, map(cup.level, cup.said))) >= FEWEST_SPOKES]


def _spokes(cups: Sequence[Cup]) -> list[str]:
    """The attributes said of most cups, in the order in which they go round."""
    weight = {spoke: (sum(spoke in cup.said for cup in cups), sum(len(cup.said.get(spoke, ())) for cup in cups))
              for spoke in ATTRIBUTES}  # fmt: skip
    most = sorted((spoke for spoke in ATTRIBUTES if weight[spoke][0]), key=lambda spoke: weight[spoke], reverse=True)
    return [spoke for spoke in ATTRIBUTES if spoke in most[:MOST_SPOKES]]


def _told(cup: Cup, spokes: Iterable[str]) -> str:
    levels = ((spoke, cup.level(spoke)) for spoke in spokes)
    return ", ".join(_spoke_told(cup, spoke, found) for spoke, found in levels if found)


def _spoke_told(cup: Cup, spoke: str, found: Level) -> str:
    """How strong the attribute was said to be, and when it was said to be so strong."""
    sure = (seen for seen in cup.said[spoke] if seen.presence != "uncertain")
    return f"{ATTRIBUTES[spoke]} {LEVELS[found]} {times(seen for seen in sure if level(seen) == found)}".rstrip()


def _notes(episode: Episode, cups: Sequence[Cup], spokes: Sequence[str]) -> list[str]:
    notes = [
        "The tasters' own words, the strongest of several; a kind, such as peach, counts as what it is: fruit.",
        "A spoke without a dot: nothing was said of it.",
        "Rings, from the middle outwards: not there, slight, there, strong.",
    ]
    said = {seen.presence for cup in cups for spoke in spokes for seen in cup.said.get(spoke, ())}
    if "absent" in said:
        notes.append("A cross on the inmost ring: said not to be there.")
    if "uncertain" in said:
        notes.append("A hollow sign: they were unsure.")
    few = [cup.name for cup in _every_cup(episode) if cup.said and cup not in cups]
    if few:
        notes.append(f"Too little was said for a profile of {'; '.join(few)}.")
    return notes
