"""Edits: what a reviewer changed in the notes, each hanging on the words it is about.

Every edit says enough to be made again on other notes of the same talk: those of a new run, or of a better listener.
"""

from collections.abc import Sequence
from typing import Annotated, Literal, TypeAlias, TypeVar

from pydantic import Field, TypeAdapter

from notesmith.records import Record

Kind = Literal["observation", "comparison", "preference", "fact", "reveal", "section", "repair"]
Value: TypeAlias = str | int | float | bool | tuple[str, ...] | None


class Words(Record):
    """A stretch of the talk, known again by its words and those around it when the captions were exported anew."""

    text: str = Field(min_length=1, description="The words, verbatim.")
    before: str = Field("", description="The few words before them.")
    after: str = Field("", description="The few words after them.")
    span: tuple[int, int] = Field(description="Where they stood in the talk, in characters.")
    start: float | None = Field(None, description="When they were said, in seconds; null without times.")


class Said(Record):
    """A record of the notes as an edit keeps it: its words, and what it says of them."""

    kind: Kind = Field(description="Which of the seven records.")
    id: str = Field("", description="Its identity when it was edited; empty for one that was not in the notes.")
    words: Words = Field(description="Its quote; of a section the opening words.")
    term: Words | None = Field(None, description="An observation's term, within the quote.")
    says: dict[str, Value] = Field(description="Its other fields: sample, presence, value, …")
    beside: tuple[dict[str, Value], ...] = Field((), description="What told other records of the same words from it.")


class _Dated(Record):
    id: str = Field(min_length=1, description="Identity of the edit, told to no other.")
    at: str = Field(description="When it was made: a date and time in UTC, as ISO 8601 writes it.")


class Change(_Dated):
    """Some fields of a record are otherwise; moving a record to another sample is one of these."""

    do: Literal["change"] = Field("change", description="What was done.")
    record: Said = Field(description="The record as it was.")
    set: dict[str, Value] = Field(min_length=1, description="The fields that change, with what they become.")


class Confirm(_Dated):
    """A record is right as it is."""

    do: Literal["confirm"] = Field("confirm", description="What was done.")
    record: Said = Field(description="The record.")


class Move(_Dated):
    """What is said in a stretch of talk is said of another sample: its observations, facts and sections."""

    do: Literal["move"] = Field("move", description="What was done.")
    first: Words = Field(description="The opening words of the stretch.")
    last: Words = Field(description="Its closing words; they may be the opening ones.")
    sample: str | None = Field(description="The sample it is said of; null for none of this session.")


class Replace(_Dated):
    """Records give way to others: split is one to several, join several to one, delete to none, add from none."""

    do: Literal["split", "join", "delete", "add"] = Field(description="What was done.")
    records: tuple[Said, ...] = Field((), description="The records that go.")
    by: tuple[Said, ...] = Field((), description="The records that come.")


class Mend(_Dated):
    """What the captions print was misheard wherever it stands."""

    do: Literal["mend"] = Field("mend", description="What was done.")
    heard: str = Field(min_length=1, description="The words as the captions print them.")
    meant: str = Field(min_length=1, description="What was said.")
    words: Words = Field(description="One place where it stands.")


class Alias(_Dated):
    """The sheet lacked a name that a sample or a preparation is called by; heeded before listening."""

    do: Literal["alias"] = Field("alias", description="What was done.")
    of: str = Field(description="Id of the sample or preparation.")
    alias: str = Field(min_length=1, description="What it is also called.")


class Teach(_Dated):
    """The lexicon lacked a word for a concept, or a mis-hearing of one; heeded before listening."""

    do: Literal["teach"] = Field("teach", description="What was done.")
    label: str = Field(min_length=1, description="The word or phrase.")
    concept: str = Field(min_length=1, description="Id of the concept it stands for.")
    misheard: bool = Field(False, description="Whether it is what captions print in place of the concept's names.")
    form: Literal["noun", "adjective", "verb", "phrase"] = Field("phrase", description="What kind of word it is.")


class Undo(_Dated):
    """An edit no longer holds."""

    do: Literal["undo"] = Field("undo", description="What was done.")
    edit: str = Field(description="Id of the edit.")


class Redo(_Dated):
    """An edit that was undone holds again."""

    do: Literal["redo"] = Field("redo", description="What was done.")
    edit: str = Field(description="Id of the edit.")


Edit: TypeAlias = Annotated[
    Change | Confirm | Move | Replace | Mend | Alias | Teach | Undo | Redo, Field(discriminator="do")
]
EDIT: TypeAdapter[Edit] = TypeAdapter(Edit)
EDITS: TypeAdapter[tuple[Edit, ...]] = TypeAdapter(tuple[Edit, ...])
AnyEdit = TypeVar("AnyEdit", bound=_Dated)


def standing(edits: Sequence[Edit]) -> tuple[Edit, ...]:
    """The edits that hold, in the order they were made: undone ones left out, undoing itself too."""
    held = _held(edits)
    return tuple(edit for edit in edits if held.get(edit.id))


def next_undo(edits: Sequence[Edit]) -> str | None:
    """Id of the edit that undoing once more takes back: the latest to be made or redone; None where there is none."""
    return next(reversed([edit for edit, holds in _held(edits).items() if holds]), None)


def next_redo(edits: Sequence[Edit]) -> str | None:
    """Id of the edit that redoing once more brings back; None where nothing was undone since the latest new edit."""
    undone: list[str] = []
    held = _held(edits)
    for edit in edits:
        if isinstance(edit, Undo):
            undone += [edit.edit] if edit.edit in held else []
        elif isinstance(edit, Redo):
            undone = [other for other in undone if other != edit.edit]
        else:
            undone = []
    return undone[-1] if undone else None


def _held(edits: Sequence[Edit]) -> dict[str, bool]:
    """Of every edit whether it holds, those touched last at the end."""
    held: dict[str, bool] = {}
    for edit in edits:
        if isinstance(edit, Undo | Redo):
            if edit.edit in held:
                held.pop(edit.edit)
                held[edit.edit] = isinstance(edit, Redo)
        else:
            held.setdefault(edit.id, True)
    return held
