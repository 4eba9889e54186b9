"""What of the page has to be drawn anew after an edit: only what is otherwise than the page shows."""

from collections import Counter
from collections.abc import Iterable
from dataclasses import dataclass

from notesmith.review.fields import Shown
from notesmith.review.lines import Line, group_of, groups_of, line_of
from notesmith.review.sitting import Sitting, State, is_done
from notesmith.review.telling import ShownCue, cues_of


@dataclass(frozen=True)
class Listed:
    """A line of the list, and whether its record waits for a look or has had one."""

    line: Line
    waits: bool
    done: bool


@dataclass(frozen=True)
class Group:
    """The lines below one heading."""

    number: int
    name: str
    product: str
    lines: tuple[Listed, ...]


@dataclass(frozen=True)
class Coming:
    """A line that is new below its heading, and where it is put."""

    listed: Listed
    group: int
    before: str
    """Id of the record whose line it is put before; empty for the end."""


@dataclass(frozen=True)
class Changes:
    """The parts of the page that changed."""

    cues: tuple[ShownCue, ...] = ()
    gone: tuple[str, ...] = ()
    """Ids of the records whose lines are gone."""
    coming: tuple[Coming, ...] = ()
    lines: tuple[Listed, ...] = ()
    counts: tuple[tuple[int, int], ...] = ()
    """Of each heading, by its number, how many lines stand below it."""


def groups(sitting: Sitting, state: State) -> tuple[Group, ...]:
    """The whole list of notes."""
    below: dict[str, list[Shown]] = {name: [] for name in groups_of(state.notes)}
    for record in state.records:
        below[group_of(record)].append(record)
    products = {sample.id: sample.product or "" for sample in state.notes.sheet.samples}
    return tuple(
        Group(number, name, products.get(name, ""), tuple(listed(sitting, record) for record in records))
        for number, (name, records) in enumerate(below.items())
    )


def listed(sitting: Sitting, record: Shown) -> Listed:
    """A record's line as it is now."""
    return Listed(line_of(record, sitting.state.notes.sheet.tasters), sitting.waits(record.id), is_done(record))


def changes(sitting: Sitting, seen: State, now: State) -> Changes:
    """What is otherwise now than on a page that shows `seen`."""
    if seen is now:
        return Changes()
    new = [record for record in now.records if record is not seen.by_id.get(record.id)]
    old = [record for record in seen.records if record is not now.by_id.get(record.id)]
    stay = {r.id for r in new if r.id in seen.by_id and group_of(seen.by_id[r.id]) == group_of(r)}
    moved = any(record.id not in stay for record in (*old, *new))
    return Changes(
        cues=_cues(now, (*old, *new)),
        gone=tuple(record.id for record in old if record.id not in stay),
        coming=tuple(_coming(sitting, seen, now, record) for record in new if record.id not in stay),
        lines=tuple(listed(sitting, record) for record in new if record.id in stay),
        counts=_counts(now) if moved else (),
    )


def _coming(sitting: Sitting, seen: State, now: State, record: Shown) -> Coming:
    """The new line, before one that the page shows below that heading already: new ones are put there in order."""
    name = group_of(record)
    later = now.records[now.records.index(record) + 1 :]
    there = (r.id for r in later if group_of(r) == name and r.id in seen.by_id and group_of(seen.by_id[r.id]) == name)
    before = next(there, "")
    return Coming(listed(sitting, record), groups_of(now.notes).index(name), before)


def _counts(now: State) -> tuple[tuple[int, int], ...]:
    held = Counter(group_of(record) for record in now.records)
    return tuple((number, held[name]) for number, name in enumerate(groups_of(now.notes)))


def _cues(now: State, records: Iterable[Shown]) -> tuple[ShownCue, ...]:
    numbers = {number for record in records for number in cues_of(now.talk, record)}
    return tuple(now.telling.cue(number) for number in sorted(numbers))
