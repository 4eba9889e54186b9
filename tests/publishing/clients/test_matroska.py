"""Matroska chapters, as the makers of the format read them."""

import subprocess
from collections.abc import Callable
from pathlib import Path
from xml.etree import ElementTree as ET

import pytest

from notesmith.publishing.chapters import matroska
from notesmith.publishing.episode import Episode
from tests.publishing.clients.conftest import expected, run

pytestmark = pytest.mark.client("mkvmerge", "mkvextract", "ffmpeg", "ffprobe")


def test_mkvmerge_takes_them_without_a_word(
    with_media: Callable[[str], Episode], recording: Callable[[str], Path], tmp_path: Path
) -> None:
    """And mkvextract gives back every time and title."""
    episode = with_media(".mka")
    listed = tmp_path / "chapters.xml"
    listed.write_text(matroska.render(episode) or "", "utf-8")
    made = tmp_path / "made.mka"
    command = ["mkvmerge", "--output", made, "--chapters", listed, recording(".mka")]
    merged = subprocess.run(command, check=False, capture_output=True, text=True)
    assert (merged.returncode, "Warning" in merged.stdout) == (0, False)
    atoms = ET.fromstring(run("mkvextract", made, "chapters", "-")).findall("EditionEntry/ChapterAtom")
    found = [(_seconds(atom.findtext("ChapterTimeStart")), atom.findtext(".//ChapterString")) for atom in atoms]
    assert found == expected(episode)
    uids = [atom.findtext("ChapterUID") for atom in ET.parse(listed).iter("ChapterAtom")]
    assert [atom.findtext("ChapterUID") for atom in atoms] == uids


def _seconds(clock: str | None) -> float:
    hours, minutes, seconds = (clock or "").split(":")
    return int(hours) * 3600 + int(minutes) * 60 + float(seconds)
