"""A command line whose listener is made up, so that these tests load no pipeline."""

import sys
import types
from collections.abc import Callable
from pathlib import Path

import pytest

from notesmith.cli import main
from notesmith.errors import NoTastingError
from notesmith.records import Notes, Sheet, SheetSample
from notesmith.transcript import Captions

SMALL = Path(__file__).parent.parent / "cases" / "notes" / "small.notes.json"
VTT = "WEBVTT\n\n00:01.000 --> 00:04.000\nThis bowl is plummy.\n"

Command = Callable[..., int]


def heard(
    captions: Captions, sheet: Sheet | None = None, *, lexicon: object = None, confidence: float = 0.0
) -> Notes:
    """Notes that tell which sheet was used; a talk of the weather has no tasting."""
    if "weather" in captions.source_text:
        raise NoTastingError("nothing is tasted", where=captions.name, mend="give another recording")
    notes = Notes.model_validate_json(SMALL.read_text("utf-8"))
    return notes.model_copy(update={"sheet": sheet or notes.sheet, "sheet_drafted": sheet is None})


@pytest.fixture(autouse=True)
def listener(monkeypatch: pytest.MonkeyPatch) -> None:
    """Put the made-up listener in place of the real one."""
    module = types.ModuleType("notesmith.listening")
    module.take_notes = heard  # type: ignore[attr-defined]
    module.draft_sheet = lambda _: Sheet(samples=(SheetSample(id="A"),))  # type: ignore[attr-defined]
    monkeypatch.setitem(sys.modules, "notesmith.listening", module)


@pytest.fixture
def notesmith(monkeypatch: pytest.MonkeyPatch, tmp_path: Path) -> Command:
    """Run the command in an empty folder; answers its exit status."""
    monkeypatch.chdir(tmp_path)

    def command(*arguments: str) -> int:
        monkeypatch.setattr(sys, "argv", ["notesmith", *arguments])
        with pytest.raises(SystemExit) as left:
            main()
        return int(left.value.code or 0)

    return command


@pytest.fixture
def talk(tmp_path: Path) -> Path:
    """A caption file in the folder."""
    path = tmp_path / "talk.vtt"
    path.write_text(VTT)
    return path
