"""A recording on a desk of its own: captions, sheet, notes and a sound that a browser plays."""

import json
import shutil
import wave
from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path
from typing import Any

import pytest
from selenium.webdriver.remote.webdriver import WebDriver

from notesmith.jobs import notes_of
from notesmith.publishing import json_text
from tests.review.page.browsing import Page, browser, served

DEMO = Path(__file__).parents[3] / "samples" / "demo"
SECONDS = 480


@dataclass(frozen=True)
class Recording:
    """Where everything of one recording lies."""

    folder: Path

    @property
    def notes(self) -> Path:
        """The notes as they were taken."""
        return self.folder / "pegs.notes.json"

    @property
    def captions(self) -> Path:
        """The captions."""
        return self.folder / "pegs.vtt"

    def edits(self) -> list[dict[str, Any]]:
        """What has been written down."""
        path = self.folder / "pegs.corrections.json"
        return list(json.loads(path.read_text("utf-8"))) if path.exists() else []


@pytest.fixture(scope="session")
def noted(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A folder with the demo's captions, its notes, and a recording made on the spot."""
    folder = tmp_path_factory.mktemp("noted")
    for path in (*DEMO.glob("pegs.vtt"), *DEMO.glob("pegs.sheet.toml")):
        shutil.copy(path, folder)
    (folder / "pegs.notes.json").write_text(json_text.render(notes_of(folder / "pegs.vtt")), "utf-8")
    with wave.open(str(folder / "pegs.wav"), "wb") as sound:
        sound.setnchannels(1)
        sound.setsampwidth(1)
        sound.setframerate(8000)
        sound.writeframes(bytes(range(100, 150)) * 160 * SECONDS)
    return folder


@pytest.fixture
def recording(noted: Path, tmp_path: Path) -> Recording:
    """A copy of it, to be corrected."""
    shutil.copytree(noted, tmp_path / "pegs")
    return Recording(tmp_path / "pegs")


@pytest.fixture(scope="session")
def chromium(tmp_path_factory: pytest.TempPathFactory) -> Iterator[WebDriver]:
    """One browser for all tests; each opens a server of its own."""
    with browser(tmp_path_factory.mktemp("profile")) as driver:
        yield driver


@pytest.fixture
def page(recording: Recording, chromium: WebDriver) -> Iterator[Page]:
    """The page of the recording."""
    with served(recording.notes) as (address, _):
        yield Page(chromium, address)
