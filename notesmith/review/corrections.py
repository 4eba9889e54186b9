"""The file of corrections beside the captions: a list of dated edits that only ever grows.

An edit is on the disk before `append` returns. The file is replaced as a whole, so that it parses at every moment, and
under a lock with what it holds read anew, so that of two writers neither loses what the other wrote.
"""

import json
import os
from codecs import BOM_UTF8
from collections.abc import Sequence
from datetime import UTC, datetime
from pathlib import Path
from secrets import token_hex
from typing import Any

from pydantic import ValidationError

from notesmith.errors import NotesFileError, OutputError
from notesmith.notes_file import first_fault
from notesmith.review.edits import EDITS, Edit
from notesmith.review.locking import locked

SUFFIX = ".corrections.json"


def corrections_path(captions: Path) -> Path:
    """Where the corrections of a recording lie.

    >>> corrections_path(Path("shelf/talk.vtt")).as_posix()
    'shelf/talk.corrections.json'
    """
    return captions.with_name(captions.stem + SUFFIX)


def stamp() -> dict[str, str]:
    """What a new edit is told apart by: an `id` that no other has, and the time `at` which it is made."""
    return {"id": token_hex(6), "at": datetime.now(UTC).isoformat(timespec="seconds")}


def read_corrections(path: Path) -> tuple[Edit, ...]:
    """The edits of the file, in the order they were made; none where there is no file.

    Raises:
        NotesFileError: it cannot be read, or holds anything else.
    """
    try:
        return EDITS.validate_json(path.read_bytes().removeprefix(BOM_UTF8))
    except FileNotFoundError:
        return ()
    except OSError as error:
        raise NotesFileError(f"cannot be read: {error.strerror}", where=str(path)) from None
    except ValidationError as error:
        what = f"holds no corrections: {first_fault(error)}"
        raise NotesFileError(what, where=str(path), mend="mend the edit, or take it out of the list") from None


def append(path: Path, *edits: Edit) -> tuple[Edit, ...]:
    """Add edits to the file and return all that it then holds; one whose id is there already is not added again.

    When this returns they are on the disk, whatever happens to the program or the machine.

    Raises:
        NotesFileError: the file that is there holds anything but corrections; it is left as it is.
        OutputError: it cannot be written.
    """
    path = path.resolve()
    try:
        with locked(path):
            held = read_corrections(path)
            known = {edit.id for edit in held}
            new = [edit for edit in edits if edit.id not in known]
            if new:
                _replace(path, _longer(path.read_bytes(), new) if held else written(new))
            return (*held, *new)
    except OSError as error:
        raise OutputError(f"cannot be written: {error.strerror}", where=str(path)) from error


def written(edits: Sequence[Edit]) -> bytes:
    """The edits as the file holds them: each field of an edit on a line, for people to read."""
    return ("[\n" + ",\n".join(map(_lines, edits)) + "\n]\n").encode()


def _longer(content: bytes, new: Sequence[Edit]) -> bytes:
    """The file with edits added at its end; what stood there stays as it was, for people may have written in it."""
    return content.rstrip().removesuffix(b"]").rstrip() + b",\n" + written(new).removeprefix(b"[\n")


def _lines(edit: Edit) -> str:
    fields = edit.model_dump(mode="json")
    return " {\n" + ",\n".join(f"  {_json(name)}: {_json(value)}" for name, value in fields.items()) + "\n }"


def _json(value: Any) -> str:
    return json.dumps(value, ensure_ascii=False)


def _replace(path: Path, content: bytes) -> None:
    """Put a new file in place, on the disk. Its name before that is always the same: a killed writer leaves one."""
    part = path.with_name(f".{path.name}.part")
    with part.open("wb") as file:
        if path.exists():
            part.chmod(path.stat().st_mode)
        file.write(content)
        file.flush()
        os.fsync(file.fileno())
    part.replace(path)
    _sync_folder(path.parent)


def _sync_folder(folder: Path) -> None:
    """Have the disk hold the new name too, where folders can be opened for that."""
    if os.name == "posix":
        handle = os.open(folder, os.O_RDONLY)
        try:
            os.fsync(handle)
        finally:
            os.close(handle)
