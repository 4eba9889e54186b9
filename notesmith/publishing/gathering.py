"""What an episode is made of, gathered from files: the notes, the captions they were taken from, the recording."""

from pathlib import Path

from notesmith.errors import CaptionError
from notesmith.notes_file import read_notes
from notesmith.publishing.episode import Episode, records_of
from notesmith.publishing.muxing import read_media
from notesmith.records import Notes
from notesmith.transcript import Captions, read_captions


def gather(notes: Path, *, captions: Path | None = None, media: Path | None = None) -> Episode:
    """Read the notes and, where they are named or lie beside the notes, their captions; look at the recording.

    Raises:
        NotesmithError: the notes, captions that are named, or the recording will not do.
    """
    read = read_notes(notes)
    found, source = _named(read, captions) if captions else _beside(read, notes)
    return Episode(read, found, source, read_media(media) if media else None)


def _named(notes: Notes, path: Path) -> tuple[Captions, bytes]:
    captions = read_captions(path)
    if not are_of(captions, notes):
        what = f"the notes of {notes.transcript} quote what does not stand there"
        raise CaptionError(what, where=str(path), mend="name the captions that the notes were taken from")
    return captions, path.read_bytes()


def _beside(notes: Notes, path: Path) -> tuple[Captions | None, bytes | None]:
    """Captions of the right name beside the notes or in this folder; others than the notes' own do not count."""
    name = Path(notes.transcript).name
    for place in (path.parent / name, Path(name)):
        if name and place.is_file():
            captions = read_captions(place)
            if are_of(captions, notes):
                return captions, place.read_bytes()
    return None, None


def are_of(captions: Captions, notes: Notes) -> bool:
    """Whether every quote of the notes stands where they say it does."""
    talk = " ".join([cue.text for cue in captions.cues])
    return all(talk[slice(*record.span)] == record.quote for record in records_of(notes))
