"""What is laid before the reviewer: the notes, their captions, the recording, and the corrections made before."""

from collections.abc import Sequence
from pathlib import Path

from notesmith.errors import CaptionError, MissingError
from notesmith.notes_file import read_notes
from notesmith.publishing.gathering import are_of
from notesmith.records import Notes
from notesmith.review.corrections import corrections_path, read_corrections
from notesmith.review.edits import Edit
from notesmith.review.looks import unsureness
from notesmith.review.media import beside, kind_of
from notesmith.review.sitting import Sitting
from notesmith.review.taking import heeding, uncorrected
from notesmith.transcript import Talk, read_captions

ENDING = ".notes.json"


def open_notes(path: Path, captions: Path | None = None, media: Path | None = None) -> Sitting:
    """Lay out the notes of one recording.

    The captions are looked for beside the notes and in the folder one is in, the recording beside the captions.
    Notes that hold corrections already are taken anew from the captions, for corrections are made to what was heard.

    Raises:
        NotesmithError: the notes, the captions, the recording or the corrections will not do.
    """
    notes = read_notes(path)
    place = captions or _beside(notes, path)
    read = read_captions(place)
    if not are_of(read, notes):
        what = f"the notes {path.name} quote what does not stand there"
        raise CaptionError(what, where=str(place), mend="take the notes anew with notesmith notes")
    base = uncorrected(notes, read, read_corrections(corrections_path(place)))

    def listen(edits: Sequence[Edit]) -> Notes:
        return heeding(read, None if notes.sheet_drafted else notes.sheet, edits)

    sitting = Sitting(place.stem, base, Talk.from_captions(read), corrections_path(place), listen)
    return _with_media(sitting, place, media)


def queued(folder: Path) -> list[Sitting]:
    """All recordings of a folder, those whose notes are the least sure first; of equals by name.

    Raises:
        NotesmithError: there are none, or one of them will not do.
    """
    sittings = [open_notes(path) for path in _notes_in(folder)]
    return sorted(sittings, key=lambda sitting: (-unsureness(sitting.state.notes), sitting.name))


def _notes_in(folder: Path) -> list[Path]:
    found = sorted(folder.glob(f"*{ENDING}"))
    if not found:
        mend = "write them with notesmith notes --format json --output-dir"
        raise MissingError(f"no notes (*{ENDING}) lie there", where=str(folder), mend=mend)
    return found


def _beside(notes: Notes, path: Path) -> Path:
    name = Path(notes.transcript).name
    for place in (path.parent / name, Path(name)):
        if name and place.is_file():
            return place
    what = f"its captions, {name or 'of no name'}, do not lie beside it"
    raise MissingError(what, where=str(path), mend="name them with --captions")


def _with_media(sitting: Sitting, captions: Path, media: Path | None) -> Sitting:
    if found := media or beside(captions):
        sitting.media = (found, kind_of(found))
    return sitting
