"""What the tasters said, made ready to be drawn: one row a term, one mark for each sample and strength."""

from collections import Counter
from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from typing import Literal, get_args

from notesmith.publishing.arrange import several_tasters, time_of
from notesmith.publishing.episode import Episode
from notesmith.publishing.mended import inside_sentence, mended
from notesmith.records import Facet, Observation

Level = Literal["absent", "low", "present", "high"]
LEVELS: dict[Level, str] = {"absent": "not there", "low": "slight", "present": "there", "high": "strong"}


@dataclass(frozen=True)
class Table:
    """What a chart shows, as cells to read; rows of one length, that of the columns."""

    columns: tuple[str, ...]
    rows: tuple[tuple[str, ...], ...]


@dataclass(frozen=True)
class Mark:
    """What was said of one sample in one row: once, or several times alike."""

    sample: str
    level: Level
    unsure: bool
    after_reveal: bool
    records: tuple[Observation, ...]

    @property
    def words(self) -> str:
        """How strongly it was said to be there, such as "strong" or "unsure, slight, after the reveal"."""
        strength = "" if self.unsure and self.level == "present" else LEVELS[self.level]
        parts = ("unsure" if self.unsure else "", strength, "after the reveal" if self.after_reveal else "")
        return ", ".join(part for part in parts if part)

    @property
    def told(self) -> str:
        """The same with its times, such as "slight 1:23"."""
        return f"{self.words} {self.times}".strip()

    @property
    def times(self) -> str:
        """When it was said, as m:ss; empty where the captions carry no times."""
        return times(self.records)


@dataclass(frozen=True)
class Row:
    """One term of one facet in one preparation."""

    preparation: str | None
    facet: Facet
    term: str
    known: bool
    """Whether the lexicon knows the term."""
    marks: tuple[Mark, ...]

    @property
    def samples(self) -> frozenset[str]:
        """The samples it was said of."""
        return frozenset(mark.sample for mark in self.marks)


def samples_of(episode: Episode) -> tuple[str, ...]:
    """The samples of the session, in the sheet's order, then others that were spoken of."""
    return episode.once(_samples_of)


def _samples_of(episode: Episode) -> tuple[str, ...]:
    return tuple(dict.fromkeys((*episode.notes.samples, *(seen.sample for seen in own(episode) if seen.sample))))


def preparations_of(episode: Episode) -> list[str | None]:
    """The ways of preparing, none named first, then in the sheet's order."""
    known = (None, *(preparation.id for preparation in episode.notes.sheet.preparations))
    return list(dict.fromkeys([*known, *(seen.preparation for seen in own(episode))]))


def own(episode: Episode) -> list[Observation]:
    """What the tasters themselves perceived of the samples of the session."""
    return [seen for seen in episode.notes.observations if seen.voice == "taster" and seen.sample is not None]


def times(records: Iterable[Observation]) -> str:
    """When they were said, as m:ss, each second once; empty where the captions carry no times."""
    return ", ".join(dict.fromkeys(time for time in map(time_of, records) if time))


def level(seen: Observation) -> Level:
    """How strongly it was said to be there; `present` where no strength was given."""
    return "absent" if seen.presence == "absent" else seen.intensity or "present"


def rows(episode: Episode) -> tuple[Row, ...]:
    """Every term said, by preparation, facet and time."""
    said: dict[tuple[str | None, Facet, str], list[Observation]] = {}
    for seen in own(episode):
        said.setdefault((seen.preparation, seen.facet, seen.concept or seen.term.casefold()), []).append(seen)
    preparations = preparations_of(episode)
    facets = get_args(Facet)
    ordered = sorted(said.items(), key=lambda item: (preparations.index(item[0][0]), facets.index(item[0][1])))
    return tuple(
        Row(
            preparation, facet, _term(episode, records), any(seen.concept for seen in records), _marks(episode, records)
        )
        for (preparation, facet, _), records in ordered
    )


def heading(row: Row) -> str:
    """What the rows of one preparation and facet stand under."""
    facet = row.facet.capitalize()
    return f"{facet} · {row.preparation}" if row.preparation else facet


def telling(said: Sequence[Row], limit: int) -> tuple[Row, ...]:
    """The rows that tell most, at most so many, in the order they came: those that set samples apart first."""
    best = sorted(range(len(said)), key=lambda place: _weight(said[place]), reverse=True)[:limit]
    return tuple(said[place] for place in sorted(best))


def tabulate(episode: Episode, said: Iterable[Row]) -> Table:
    """The rows as cells, one line a mark; preparations and tasters only where there are several."""
    prepared = any(preparation for preparation in preparations_of(episode))
    tasters = several_tasters(episode.notes)
    columns = ("Preparation",) * prepared + ("Facet", "Term", "Sample", "Said to be", "At") + ("By",) * tasters
    lines = []
    for row in said:
        for mark in row.marks:
            by = ", ".join(dict.fromkeys(seen.taster or "" for seen in mark.records))
            start = (row.preparation or "",) * prepared + (row.facet, row.term, episode.name(mark.sample))
            lines.append((*start, mark.words, mark.times, *(by,) * tasters))
    return Table(columns, tuple(lines))


def spoken(episode: Episode, seen: Observation) -> str:
    """The term as it was said; what the captions got wrong stands mended in square brackets."""
    return mended(episode.notes.repairs, seen.term_span, seen.term)


def _term(episode: Episode, records: Sequence[Observation]) -> str:
    """The word for it that was said most, of several the shortest: what was denied may be less than what was found."""
    words = Counter(spoken(episode, seen) for seen in records)
    return inside_sentence(max(words, key=lambda word: (words[word], -len(word))))


def _weight(row: Row) -> tuple[int, ...]:
    levels = {(mark.sample, mark.level) for mark in row.marks}
    differs = len({level for _, level in levels}) > 1
    marked = sum(mark.level in ("low", "high", "absent") for mark in row.marks)
    times_said = sum(len(mark.records) for mark in row.marks)
    return (row.known, len(row.samples) > 1, len(row.samples) + differs, marked, times_said)


def _marks(episode: Episode, records: Iterable[Observation]) -> tuple[Mark, ...]:
    alike: dict[tuple[str, Level, bool, bool], list[Observation]] = {}
    for seen in records:
        key = (seen.sample or "", level(seen), seen.presence == "uncertain", seen.after_reveal)
        alike.setdefault(key, []).append(seen)
    levels, samples = list(LEVELS), samples_of(episode)
    keys = sorted(alike, key=lambda key: (samples.index(key[0]), levels.index(key[1]), *key[2:]))
    return tuple(Mark(*key, tuple(alike[key])) for key in keys)
