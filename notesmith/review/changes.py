"""What of the page has to be drawn anew after an edit: only what is otherwise than the page shows."""

from collections.abc import Iterator
from dataclasses import dataclass

from notesmith.review.fields import Shown
from notesmith.review.lines import Line, groups_of, line_of
from notesmith.review.sitting import Sitting, State, is_done
from notesmith.review.telling import ShownCue


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
class Changes:
    """The parts of the page that changed."""

    cues: tuple[ShownCue, ...]
    groups: tuple[Group, ...]
    lines: tuple[Listed, ...]


def groups(sitting: Sitting, state: State) -> tuple[Group, ...]:
    """The whole list of notes."""
    below = _below(state)
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
    moved = _moved(_below(seen), _below(now))
    altered = tuple(
        listed(sitting, record)
        for record in now.records
        if line_of(record).group not in moved and record is not seen.by_id.get(record.id)
    )
    whole = tuple(group for group in groups(sitting, now) if group.name in moved) if moved else ()
    return Changes(tuple(_cues(seen, now)), whole, altered)


def _below(state: State) -> dict[str, list[Shown]]:
    below: dict[str, list[Shown]] = {name: [] for name in groups_of(state.notes)}
    for record in state.records:
        below.setdefault(line_of(record).group, []).append(record)
    return below


def _moved(before: dict[str, list[Shown]], after: dict[str, list[Shown]]) -> set[str]:
    """The headings below which other records stand, or the same in another order."""
    ids = ({name: [record.id for record in records] for name, records in below.items()} for below in (before, after))
    one, other = ids
    return {name for name in other if one.get(name) != other[name]}


def _cues(seen: State, now: State) -> Iterator[ShownCue]:
    for number in range(len(now.telling)):
        before, after = seen.telling.holds(number), now.telling.holds(number)
        if len(before) != len(after) or any(one is not other for one, other in zip(before, after, strict=True)):
            yield now.telling.cue(number)
