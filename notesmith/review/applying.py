"""Corrections applied to notes as they were taken: the same edits find the same words on every run."""

from collections.abc import Callable, Iterable, Sequence
from dataclasses import dataclass
from typing import Any

from pydantic import ValidationError

from notesmith.records import Evidenced, Notes, Observation, Section
from notesmith.review.desk import Desk
from notesmith.review.edits import (
    Alias,
    Change,
    Confirm,
    Edit,
    Mend,
    Move,
    Replace,
    Said,
    Value,
    Words,
    standing,
)
from notesmith.review.finding import Span, find_words, places
from notesmith.review.saying import DERIVED, IDENTIFYING, drafted, made, place_of
from notesmith.transcript import Talk


@dataclass(frozen=True)
class Lost:
    """An edit that could not be made to these notes, and why; it stays in the file."""

    edit: Edit
    reason: str

    def __str__(self) -> str:
        return f"the correction {self.edit.id} of {self.edit.at[:10]} could not be made: {self.reason}"


@dataclass(frozen=True)
class Applied:
    """The notes as corrected, and the edits that could not be made."""

    notes: Notes
    lost: tuple[Lost, ...]


def corrected(notes: Notes, talk: Talk, edits: Sequence[Edit]) -> Notes:
    """The notes with the edits made to them; those that could not be made are told among the warnings.

    The notes are those of the talk, as they were taken; the edits are the whole file, undone ones among them.
    """
    done = applied(notes, talk, edits)
    warnings = (*done.notes.warnings, *map(str, done.lost))
    return done.notes.model_copy(update={"warnings": warnings}) if done.lost else done.notes


def applied(notes: Notes, talk: Talk, edits: Sequence[Edit]) -> Applied:
    """The notes with the edits made to them, one after another, each whole or not at all."""
    holding = standing(edits)
    if not holding:
        return Applied(notes, ())
    desk, lost = Desk(notes, talk), []
    for edit in holding:
        try:
            _apply(desk, edit)
        except ValidationError as error:
            first = error.errors(include_url=False)[0]
            lost.append(Lost(edit, f"{' '.join(map(str, first['loc']))}: {first['msg'].lower()}"))
        except ValueError as error:
            lost.append(Lost(edit, str(error)))
    return Applied(desk.result(), tuple(lost))


def _apply(desk: Desk, edit: Edit) -> None:
    """Make one edit, or raise ValueError before anything is changed."""
    ways: dict[str, Callable[[Desk, Any], None]] = {
        "change": _change, "confirm": _confirm, "move": _move, "mend": _mend, "alias": _alias,
        "split": _replace, "join": _replace, "delete": _replace, "add": _replace,
    }  # fmt: skip
    if way := ways.get(edit.do):
        way(desk, edit)


def _change(desk: Desk, edit: Change) -> None:
    if derived := DERIVED & edit.set.keys():
        raise ValueError(f"{min(derived)} follows from the words and cannot be set")
    _settle(desk, edit.id, edit.record, edit.set)


def _confirm(desk: Desk, edit: Confirm) -> None:
    _settle(desk, edit.id, edit.record, edit.record.says)


def _settle(desk: Desk, edit: str, record: Said, fields: dict[str, Value]) -> None:
    """Give a record these fields; one that the notes no longer have is made anew, for a reviewer has vouched for it."""
    place = _place(desk, record)
    if found := desk.match(record, place):
        identity = {name: record.says[name] for name in IDENTIFYING[record.kind] if name in record.says}
        desk.alter(record.kind, found, edit, identity | fields)
    else:
        vouched = record.model_copy(update={"says": {**record.says, **fields}})
        _put_all(desk, edit, [_made(desk, vouched, edit, 0)])


def _move(desk: Desk, edit: Move) -> None:
    stretch = _find(desk, edit.first)[0], _find(desk, edit.last)[1]
    if stretch[0] >= stretch[1]:
        raise ValueError(f'"{edit.last.text}" now stands before "{edit.first.text}"')
    if edit.sample is not None and edit.sample not in desk.notes.samples:
        raise ValueError(f"the sheet has no sample {edit.sample!r}")
    for kind in ("observation", "fact", "section"):
        for record in desk.within(kind, stretch):
            if _goes_along(record, stretch, edit.sample):
                desk.alter(kind, record, edit.id, {"sample": edit.sample}, sure=False)


def _goes_along(record: Evidenced, stretch: Span, sample: str | None) -> bool:
    """Whether what is moved takes the record with it: it lies within, is not there yet, and was of any sample at all.

    A dose that holds for all samples, or a section about none, is not said of another now.
    """
    start, end = record.span if isinstance(record, Section) else place_of(record)
    of_one = isinstance(record, Observation) or getattr(record, "sample", None) is not None
    return stretch[0] <= start and end <= stretch[1] and of_one and getattr(record, "sample", None) != sample


def _replace(desk: Desk, edit: Replace) -> None:
    found = [(said.kind, record) for said in edit.records for record in desk.covered(said, _place(desk, said))]
    going = {id(record): (kind, record) for kind, record in found}.values()
    coming = [_made(desk, record, edit.id, number) for number, record in enumerate(edit.by)]
    for kind, record in going:
        if edit.do == "delete":
            desk.ignore(kind, record, edit.id)
        else:
            desk.take(kind, record)
    _put_all(desk, edit.id, coming)
    if any(kind == "section" for kind, _ in going):
        desk.lay_out_sections()


def _mend(desk: Desk, edit: Mend) -> None:
    text = desk.talk.text
    spans = list(places(text, edit.heard))
    if not spans:
        raise ValueError(f'"{edit.heard}" stands nowhere in the captions')
    for number, span in enumerate(spans):
        if known := desk.within("repair", span):
            desk.alter("repair", known[0], edit.id, {"meant": edit.meant})
        else:
            says: dict[str, Value] = {"heard": text[slice(*span)], "meant": edit.meant}
            desk.put("repair", made(desk.talk, drafted(desk.talk, "repair", span, says), span, None, edit.id, number))


def _alias(desk: Desk, edit: Alias) -> None:
    """Heeded before listening; here is only seen whether it could be."""
    sheet = desk.notes.sheet
    if edit.of not in {*(s.id for s in sheet.samples), *(p.id for p in sheet.preparations)}:
        raise ValueError(f"the sheet has no sample or preparation {edit.of!r}")


def _made(desk: Desk, record: Said, edit: str, number: int) -> tuple[Said, Evidenced]:
    span, place = _find(desk, record.words), _place(desk, record)
    term = place if record.term else None
    new = made(desk.talk, record, (min(span[0], place[0]), max(span[1], place[1])), term, edit, number)
    desk.check(new)
    return record, new


def _put_all(desk: Desk, edit: str, coming: Iterable[tuple[Said, Evidenced]]) -> None:
    """Add the records; what the notes say already is not said twice."""
    for record, new in coming:
        if twin := desk.twin(record, place_of(new)):
            fields = {name: value for name, value in new if name not in ("id", "why")}
            desk.alter(record.kind, twin, edit, fields)
        else:
            desk.put(record.kind, new)
        if record.kind == "section":
            desk.lay_out_sections()


def _place(desk: Desk, record: Said) -> Span:
    """Where the telling words of a record stand now."""
    return _find(desk, record.term or record.words)


def _find(desk: Desk, words: Words) -> Span:
    span = find_words(desk.talk.text, words)
    if span is None:
        raise ValueError(f'"{words.text}" no longer stands in the captions where it did')
    return span
