"""Our WebVTT, as the reference parser reads it: it has nothing to complain of."""

import json
from pathlib import Path

import pytest

from notesmith.publishing.captions import patching
from notesmith.publishing.captions import webvtt as captions_webvtt
from notesmith.publishing.chapters import webvtt as chapters_webvtt
from notesmith.publishing.episode import Episode
from notesmith.records import Notes, Repair
from notesmith.transcript.reading import parse_captions
from tests.publishing.clients.conftest import run

pytestmark = pytest.mark.node
NODE = Path(__file__).parents[2] / "node"


def complaints(text: str, kind: str, folder: Path) -> object:
    """What the parser finds wrong."""
    (folder / "a.vtt").write_text(text, "utf-8")
    return json.loads(run("node", NODE / "complaints.mjs", folder / "a.vtt", kind))


def test_chapters_are_chapters(episode: Episode, tmp_path: Path) -> None:
    """Plain titles, in order."""
    assert complaints(chapters_webvtt.render(episode) or "", "chapters", tmp_path) == []


def test_captions_written_anew_are_captions(episode: Episode, tmp_path: Path) -> None:
    """With voices and escaped signs."""
    assert complaints(captions_webvtt.render(episode) or "", "captions", tmp_path) == []


def test_captions_mended_in_place_are_captions(empty: Notes, tmp_path: Path) -> None:
    """A hostile name in a repair does not change that."""
    source = "WEBVTT\n\n00:01.000 --> 00:04.000\n<v Ana>the <i>bowl</i> is hot\n"
    repair = Repair(id="r", start=1, end=4, quote="bowl", span=(4, 8), confidence=1, why=(), heard="bowl",
                    meant="<script>\n\n--> & co")  # fmt: skip
    notes = empty.model_copy(update={"repairs": (repair,)})
    mended = patching.render(Episode(notes, parse_captions(source.encode(), "a.vtt"), source.encode()))
    assert mended
    assert b"bowl" not in mended
    assert complaints(mended.decode(), "captions", tmp_path) == []
