"""One recording under review: its notes as corrected so far, and what each edit changes of them."""

from collections.abc import Callable, Sequence
from dataclasses import dataclass, field
from functools import cached_property
from pathlib import Path

from notesmith.records import Notes
from notesmith.review.applying import Lost, applied
from notesmith.review.corrections import append, read_corrections, stamp
from notesmith.review.edits import Alias, Edit, Redo, Teach, Undo, next_redo, next_undo, standing
from notesmith.review.fields import Shown
from notesmith.review.lines import shown_records
from notesmith.review.looks import Look, looks
from notesmith.review.saying import is_corrected
from notesmith.review.telling import Telling
from notesmith.transcript import Talk

Listen = Callable[[Sequence[Edit]], Notes]
"""Takes the notes of the recording anew, with the names and words heeded that the edits taught; corrects nothing."""
KEPT = 64
"""States that are remembered, for pages that were not looked at for so many edits."""


@dataclass(frozen=True)
class State:
    """The notes after some edits, with all that is shown of them."""

    version: int
    notes: Notes
    edits: tuple[Edit, ...]
    lost: tuple[Lost, ...]
    talk: Talk = field(repr=False)

    @cached_property
    def records(self) -> tuple[Shown, ...]:
        """All records that are shown, in the order of the talk."""
        return shown_records(self.notes)

    @cached_property
    def by_id(self) -> dict[str, Shown]:
        """The records by their ids."""
        return {record.id: record for record in self.records}

    @cached_property
    def telling(self) -> Telling:
        """The talk with these records."""
        return Telling(self.talk, self.records)

    @property
    def undo(self) -> str | None:
        """Id of the edit that is undone next."""
        return next_undo(self.edits)

    @property
    def redo(self) -> str | None:
        """Id of the edit that is made again next."""
        return next_redo(self.edits)


class Sitting:
    """A recording at which a reviewer sits, on one page or several."""

    def __init__(self, name: str, base: Notes, talk: Talk, path: Path, listen: Listen) -> None:
        """Lay the notes out.

        Args:
            name: What the recording is called.
            base: The notes as they were taken, none corrected.
            talk: The talk that they were taken from.
            path: The file of corrections.
            listen: Takes the base anew.
        """
        self.name, self.talk, self.path = name, talk, path
        self.media: tuple[Path, str] | None = None
        self._base, self._listen = base, listen
        self._made: list[tuple[str, Notes, tuple[Lost, ...]]] = []
        self._waiting: tuple[int, list[str]] = -1, []
        self._seen_file: tuple[int, int] | None = None
        self._taught = _taught(read_corrections(path))
        self._tried = self._taught, base
        self._look()
        self.states: dict[int, State] = {0: self._state(0, read_corrections(path))}

    @property
    def state(self) -> State:
        """The notes as they are now."""
        return self.states[max(self.states)]

    def _look(self) -> None:
        self.due: dict[str, Look] = {look.record: look for look in looks(self._base) if look.reasons}

    def waits(self, record_id: str) -> bool:
        """Whether a record deserves a look and has had none."""
        record = self.state.by_id.get(record_id)
        return record_id in self.due and record is not None and not is_done(record)

    def waiting(self) -> list[str]:
        """Ids of the records that still wait for a look, the most pressing first."""
        if self._waiting[0] != self.state.version:
            self._waiting = self.state.version, [record_id for record_id in self.due if self.waits(record_id)]
        return self._waiting[1]

    def make(self, *edits: Edit) -> None:
        """Make edits; when this returns they are on the disk.

        Raises:
            NotesmithError: the file of corrections cannot be read or written, or what they teach leaves no notes.
        """
        self._heard((*self.state.edits, *edits))
        self._take(append(self.path, *edits))

    def undo(self) -> bool:
        """Take back the latest edit that holds; False where there is none."""
        self.refresh()
        edit = self.state.undo
        if edit:
            self.make(Undo(**stamp(), edit=edit))
        return bool(edit)

    def redo(self) -> bool:
        """Make the edit again that was taken back last; False where there is none."""
        self.refresh()
        edit = self.state.redo
        if edit:
            self.make(Redo(**stamp(), edit=edit))
        return bool(edit)

    def tried(self, edit: Edit) -> Notes:
        """The notes as they would be with an edit that is heeded before listening; nothing is written."""
        edits = (*self.state.edits, edit)
        return applied(self._heard(edits), self.talk, edits).notes

    def refresh(self) -> None:
        """Heed what others have written into the file since."""
        if self._stamp() != self._seen_file:
            self._take(read_corrections(self.path))

    def _take(self, edits: tuple[Edit, ...]) -> None:
        self._seen_file = self._stamp()
        if edits == self.state.edits:
            return
        if _taught(edits) != self._taught:
            self._base, self._made, self._taught = self._heard(edits), [], _taught(edits)
            self._look()
        version = max(self.states) + 1
        self.states[version] = self._state(version, edits)
        self.states.pop(version - KEPT, None)

    def _heard(self, edits: tuple[Edit, ...]) -> Notes:
        """The base as those edits teach it; what was tried on the page is not listened to twice."""
        if _taught(edits) == self._taught:
            return self._base
        if _taught(edits) != self._tried[0]:
            self._tried = _taught(edits), self._listen(edits)
        return self._tried[1]

    def _stamp(self) -> tuple[int, int] | None:
        try:
            status = self.path.stat()
        except FileNotFoundError:
            return None
        return status.st_mtime_ns, status.st_ino

    def _state(self, version: int, edits: tuple[Edit, ...]) -> State:
        """The notes after those edits; what the edits before the first different one made of them is known."""
        holding = standing(edits)
        same = 0
        while same < min(len(holding), len(self._made)) and holding[same].id == self._made[same][0]:
            same += 1
        del self._made[same:]
        for edit in holding[same:]:
            notes, lost = self._made[-1][1:] if self._made else (self._base, ())
            done = applied(notes, self.talk, [edit])
            self._made.append((edit.id, done.notes, (*lost, *done.lost)))
        notes, lost = self._made[-1][1:] if self._made else (self._base, ())
        return State(version, notes, edits, lost, self.talk)


def is_done(record: Shown) -> bool:
    """Whether a reviewer vouches for the record: changed, added or confirmed it."""
    return is_corrected(record) and record.confidence == 1


def _taught(edits: Sequence[Edit]) -> tuple[dict[str, object], ...]:
    """What has to be heeded before listening, whenever it was told."""
    heeded = (edit for edit in standing(edits) if isinstance(edit, Alias | Teach))
    return tuple(edit.model_dump(exclude={"id", "at"}) for edit in heeded)
