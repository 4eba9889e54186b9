"""What stands on the card: the note at hand, words that were chosen, or the sheet."""

import re
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from typing import TYPE_CHECKING

from notesmith.records import Notes, Observation, Repair, SheetPreparation, SheetSample
from notesmith.review.changes import Listed, listed
from notesmith.review.corrections import stamp
from notesmith.review.edits import Alias
from notesmith.review.fields import Asked, Shown, asked_of
from notesmith.review.lines import line_of, shown_records
from notesmith.review.saying import FIELDS, identity_of, kind_of, place_of
from notesmith.review.telling import around
from notesmith.review.wishes import WishError, chosen

if TYPE_CHECKING:
    from notesmith.review.sitting import Sitting, State

NEAR = 120
"""Characters between two terms that may be one."""
MOST_SHOWN = 40
"""Differences that are told one by one."""
WHOLE = 400
"""Characters of a quote that are shown; a section's is the whole stretch."""


@dataclass(frozen=True)
class Context:
    """Words and what stands around them; the telling ones stand apart."""

    before: str
    words: str
    after: str


@dataclass(frozen=True)
class NoteCard:
    """A note, and what can be done about it."""

    record: Shown
    listed: Listed
    context: Context
    asked: tuple[Asked, ...]
    reasons: tuple[str, ...]
    why: tuple[str, ...]
    """The rules or scores that decided, with their words."""
    cuts: tuple[tuple[int, str], ...]
    """Where its term can be cut in two: how many characters in, and how it would read."""
    near: tuple[Observation, ...]
    """Those whose terms may be one with its own."""
    others: tuple[str, ...]
    """Samples that the same could be said of too."""
    everywhere: int
    """In how many further places the captions print what a repair mends."""


@dataclass(frozen=True)
class WordsCard:
    """Words of the talk that were chosen."""

    first: int
    end: int
    context: Context
    kinds: tuple[str, ...]
    samples: tuple[str, ...]
    held: Observation | None
    """The note at hand, whose term they could become."""


@dataclass(frozen=True)
class SheetCard:
    """The sheet's names, and what one more would change."""

    named: tuple[SheetSample | SheetPreparation, ...]
    of: str
    alias: str
    tried: bool
    come: tuple[str, ...]
    """Notes that there would be, told in a line each."""
    gone: tuple[str, ...]


def card_of(sitting: "Sitting", record: Shown, near: Sequence[Observation]) -> NoteCard:
    """The card of a note."""
    state, due = sitting.state, sitting.due.get(record.id)
    sample = record.sample if isinstance(record, Observation) else None
    others = tuple(one for one in state.notes.samples if one != sample) if isinstance(record, Observation) else ()
    return NoteCard(
        record, listed(sitting, record), _context(state, place_of(record)), asked_of(record, state.notes.sheet),
        due.reasons if due else (), tuple(f"{why.rule}: {why.words}" if why.words else why.rule for why in record.why),
        tuple(_cuts(record)), tuple(near), others, _further(state, record),
    )  # fmt: skip


def neighbours(state: "State", record: Shown) -> tuple[Observation, ...]:
    """The observations of the same sample just before and after, whose terms may be one with its own."""
    if not isinstance(record, Observation):
        return ()
    (start, end), found = record.term_span, []
    for other in state.notes.observations:
        first, last = other.term_span
        if other.id != record.id and other.sample == record.sample and (last <= start or first >= end):
            gap = start - last if last <= start else first - end
            found += [(gap, other)] if gap <= NEAR else []
    return tuple(other for _, other in sorted(found, key=lambda pair: (pair[0], pair[1].id))[:2])


def _cuts(record: Shown) -> Sequence[tuple[int, str]]:
    if not isinstance(record, Observation):
        return ()
    term = record.term
    return [(gap.end(), f"{term[: gap.start()]} | {term[gap.end() :]}") for gap in re.finditer(r"[\s,]+", term)]


def _further(state: "State", record: Shown) -> int:
    if not isinstance(record, Repair):
        return 0
    pattern = rf"\b{re.escape(record.heard)}\b"
    return len(re.findall(pattern, state.talk.text, re.IGNORECASE)) - 1


def _context(state: "State", span: tuple[int, int]) -> Context:
    before, after = around(state.talk, span)
    words = state.talk.text[slice(*span)]
    return Context(before, words if len(words) <= WHOLE else words[:WHOLE].rpartition(" ")[0] + " …", after)


def words_card(state: "State", form: Mapping[str, str]) -> WordsCard | None:
    """The card of chosen words; None where they are none of the talk."""
    try:
        start, end = chosen(state, form)
    except WishError:
        return None
    held = state.by_id.get(form.get("id", ""))
    samples = state.notes.samples
    return WordsCard(
        start, end, _context(state, (start, end)), tuple(FIELDS), samples,
        held if isinstance(held, Observation) else None,
    )  # fmt: skip


def sheet_card(sitting: "Sitting", form: Mapping[str, str]) -> SheetCard:
    """The card of the sheet; with a name to try, what the notes would be if it had stood there."""
    sheet = sitting.state.notes.sheet
    named: tuple[SheetSample | SheetPreparation, ...] = (*sheet.samples, *sheet.preparations)
    of, alias = form.get("of", ""), form.get("alias", "").strip()
    if not alias or of not in {one.id for one in named}:
        return SheetCard(named, of, alias, tried=False, come=(), gone=())
    tried = sitting.tried(Alias(**stamp(), of=of, alias=alias))
    come, gone = _differences(sitting.state.notes, tried)
    return SheetCard(named, of, alias, tried=True, come=come, gone=gone)


def _differences(before: Notes, after: Notes) -> tuple[tuple[str, ...], tuple[str, ...]]:
    one, other = ({_known(r): r for r in shown_records(notes)} for notes in (before, after))
    come = [_told(other[key]) for key in other if key not in one]
    gone = [_told(one[key]) for key in one if key not in other]
    return _shortened(come), _shortened(gone)


def _known(record: Shown) -> tuple[object, ...]:
    return kind_of(record), place_of(record), *identity_of(record).values()


def _told(record: Shown) -> str:
    line = line_of(record)
    return f"{line.time} {line.group}: {line.text} ({line.detail or line.kind})".strip()


def _shortened(told: list[str]) -> tuple[str, ...]:
    more = len(told) - MOST_SHOWN
    return (*told[:MOST_SHOWN], f"and {more} more") if more > 0 else tuple(told)
