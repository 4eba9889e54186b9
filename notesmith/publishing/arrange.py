"""Arrange notes for reading, before any form is chosen: grids of samples by facet, then lists."""

from collections.abc import Callable, Iterable, Iterator
from dataclasses import dataclass
from typing import TypeVar, get_args

from notesmith.clock import format_clock, seconds_to_ms
from notesmith.publishing.plain import is_seen
from notesmith.records import (
    Comparison,
    Degree,
    Evidenced,
    Facet,
    Fact,
    Notes,
    Observation,
    Preference,
    Presence,
    Section,
)

INTENSITY = {"low": "slight", "high": "strong"}
DEGREE = {"low": "by a little", "high": "by a lot"}


@dataclass(frozen=True)
class Entry:
    """One term of a cell, said once or several times."""

    term: str
    presence: Presence
    detail: str
    """Strength, first time, how often and by whom, such as "(slight) 1:23 ×2 Ana"; may be empty."""


Said = TypeVar("Said", bound=Evidenced)
Cell = tuple[Entry, ...]


@dataclass(frozen=True)
class Grid:
    """Samples side by side, facet by facet."""

    heading: str
    columns: tuple[str, ...]
    rows: tuple[tuple[str, tuple[Cell, ...]], ...]


@dataclass(frozen=True)
class Listing:
    """Lines in the order of the recording, each with its time (empty where captions carry none)."""

    heading: str
    lines: tuple[tuple[str, str], ...]


def title(notes: Notes) -> str:
    """What the session is called; failing that, its caption file."""
    return next(filter(is_seen, (notes.sheet.title, notes.transcript)), "Notes of a tasting")


def subtitle(notes: Notes) -> str:
    """What was tasted, how, by whom, and from which file it is known."""
    parts = [
        notes.sheet.category,
        "blind" if notes.sheet.blind else "",
        ", ".join(notes.sheet.tasters),
        f"from {notes.transcript}",
        "no sheet: samples drafted from the talk" if notes.sheet_drafted else "",
    ]
    return " · ".join(part for part in parts if part)


def arrange(notes: Notes) -> list[Grid | Listing]:
    """All blocks that have something to say, in reading order."""
    blocks: list[Grid | Listing] = [*_grids(notes), *_listings(notes)]
    return [block for block in blocks if (block.rows if isinstance(block, Grid) else block.lines)]


def time_of(record: Evidenced) -> str:
    """The start of a record as m:ss; empty where the captions carry no times."""
    return "" if record.start is None else format_clock(seconds_to_ms(record.start))


def _grids(notes: Notes) -> Iterator[Grid]:
    own = [seen for seen in notes.observations if seen.voice == "taster"]
    quoted = [seen for seen in notes.observations if seen.voice == "quoted"]
    known = [None, *(preparation.id for preparation in notes.sheet.preparations)]
    for preparation in dict.fromkeys([*known, *(seen.preparation for seen in own)]):
        here = [seen for seen in own if seen.preparation == preparation and seen.sample is not None]
        yield _grid(notes, f"Prepared: {preparation}" if preparation else "Perceived", here)
    yield _grid(notes, "In the words of others", [seen for seen in quoted if seen.sample is not None])
    yield _grid(notes, "Said of none of these samples", [seen for seen in notes.observations if seen.sample is None])


def _grid(notes: Notes, heading: str, observations: list[Observation]) -> Grid:
    said_of = [seen.sample for seen in observations]
    samples = [sample for sample in dict.fromkeys((*notes.samples, *said_of)) if sample in said_of]
    rows = []
    for facet in get_args(Facet):
        cells = tuple(_cell(notes, observations, sample, facet) for sample in samples)
        rows.append((facet, cells))
    names = {sample.id: sample.product for sample in notes.sheet.samples}
    columns = tuple(_column(sample, names.get(sample or "")) for sample in samples)
    return Grid(heading, columns, tuple(row for row in rows if any(row[1])))


def _column(sample: str | None, product: str | None) -> str:
    return f"{sample} · {product}" if product and product != sample else sample or "none of these"


def _cell(notes: Notes, observations: list[Observation], sample: str | None, facet: Facet) -> Cell:
    groups: dict[tuple[object, ...], list[Observation]] = {}
    for seen in observations:
        if seen.sample == sample and seen.facet == facet:
            same = (seen.concept or seen.term.casefold(), seen.presence, seen.intensity, seen.taster, seen.after_reveal)
            groups.setdefault(same, []).append(seen)
    return tuple(_entry(group, several_tasters(notes)) for group in groups.values())


def several_tasters(notes: Notes) -> bool:
    """Whether it must be said who perceived what."""
    return len({*notes.sheet.tasters, *(seen.taster for seen in notes.observations if seen.taster)}) > 1


def _entry(group: list[Observation], tell_taster: bool) -> Entry:
    first = group[0]
    marks = [INTENSITY.get(first.intensity or ""), "after the reveal" if first.after_reveal else None]
    detail = [
        f"({', '.join(mark for mark in marks if mark)})" if any(marks) else "",
        time_of(first),
        f"×{len(group)}" if len(group) > 1 else "",
        (first.taster or "") if tell_taster else "",
    ]
    return Entry(first.term, first.presence, " ".join(part for part in detail if part))


def _listings(notes: Notes) -> Iterator[Listing]:
    who = several_tasters(notes)
    yield _list("Compared", notes.comparisons, lambda said: _comparison(said) + _by(said.taster, who))
    yield _list("Verdict and preferences", notes.preferences, lambda said: _preference(said) + _by(said.taster, who))
    yield _list("Stated", sorted(notes.facts, key=lambda fact: _rank(notes, fact.sample)), _fact)
    yield _list("Revealed", notes.reveals, lambda said: f"{said.sample} is {said.product}")
    yield _list("Captions mended", notes.repairs, lambda said: f"“{said.heard}” → {said.meant}")
    yield _list("Sections", notes.sections, _section)
    yield Listing("Warnings", tuple(("", warning) for warning in notes.warnings))


def _list(heading: str, records: Iterable[Said], say: Callable[[Said], str]) -> Listing:
    return Listing(heading, tuple((time_of(record), say(record)) for record in records))


def _rank(notes: Notes, sample: str | None) -> int:
    return notes.samples.index(sample) if sample in notes.samples else -1


def _by(taster: str | None, tell: bool) -> str:
    return f" — {taster}" if taster and tell else ""


def _degree(degree: Degree | None) -> str:
    return f", {DEGREE[degree]}" if degree else ""


def _comparison(said: Comparison) -> str:
    if said.relation == "equal":
        return f"{said.attribute}: the same in {' and '.join(said.samples)}"
    more, less = said.more or "another", said.less or "another"
    return f"{said.attribute}: more in {more} than in {less}{_degree(said.degree)}"


def _preference(said: Preference) -> str:
    over = f" over {', then '.join(said.over)}" if said.over else ""
    scope = "" if said.scope == "overall" else f" ({said.scope})"
    return f"{said.preferred or 'none'}{over}{_degree(said.degree)}{scope}"


def _fact(said: Fact) -> str:
    of = ", ".join(part for part in (said.sample, said.preparation) if part) or "all"
    unit = f" {said.unit}" if said.unit else ""
    return f"{of}: {said.kind.replace('_', ' ')} {said.value}{unit}"


def _section(said: Section) -> str:
    return f"{said.kind}, {said.sample}" if said.sample else said.kind
