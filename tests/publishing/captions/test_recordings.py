"""The repairs of whole recordings, written back into their captions."""

from pathlib import Path

import pytest

from notesmith import read_captions, read_sheet, take_notes
from notesmith.publishing import Episode
from notesmith.publishing.captions.patching import render
from notesmith.publishing.captions.wording import mended_words
from notesmith.sheet import find_sheet
from notesmith.transcript.reading import parse_captions
from notesmith.transcript.talk import Talk

RECORDINGS = Path(__file__).parents[3] / "samples" / "recordings"
FORMATS = (".vtt", ".srt", ".txt", ".json")
READ = [
    path
    for path in sorted(RECORDINGS.iterdir())
    if path.suffix in FORMATS and not path.stem.endswith((".sheet", ".gold")) and path.stem[1:].isdigit()
]


@pytest.mark.slow
@pytest.mark.parametrize("path", READ[::5], ids=lambda path: path.name)
def test_every_repair_is_written_back(path: Path) -> None:
    """What is read from the mended file is the talk with all repairs in it, and nothing else."""
    captions, sheet = read_captions(path), find_sheet(path)
    notes = take_notes(captions, read_sheet(sheet) if sheet else None)
    talk = Talk.from_captions(captions)
    words = [talk.text[word.start : word.end] for word in talk.words]
    changed = mended_words(talk, notes.repairs)
    wanted = " ".join(text for at, word in enumerate(words) if (text := changed.get(at, word)))
    mended = render(Episode(notes, captions, path.read_bytes())) or path.read_bytes()
    assert Talk.from_captions(parse_captions(mended, path.name)).text == wanted
