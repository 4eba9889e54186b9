"""Notes read back from the JSON that they were written as."""

from codecs import BOM_UTF8
from pathlib import Path

from pydantic import ValidationError

from notesmith.errors import NotesFileError
from notesmith.records import Notes


def read_notes(path: Path) -> Notes:
    """Read notes that were written as JSON.

    Raises NotesFileError where the file cannot be read or holds anything else.
    """
    try:
        return Notes.model_validate_json(path.read_bytes().removeprefix(BOM_UTF8))
    except OSError as error:
        raise NotesFileError(f"cannot be read: {error.strerror}", where=str(path)) from None
    except ValidationError as error:
        what = f"holds no notes: {first_fault(error)}"
        mend = "write them with notesmith notes --format json"
        raise NotesFileError(what, where=str(path), mend=mend) from None


def first_fault(error: ValidationError) -> str:
    """The first thing wrong with what was filled in: where it stands, places counted from one, and what it is."""
    first = error.errors(include_url=False)[0]
    place = " ".join(str(part + 1) if isinstance(part, int) else part for part in first["loc"])
    return f"{place}{': ' if place else ''}{first['msg'].lower()}"
