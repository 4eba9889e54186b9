"""The forms of chapters, as their readers want them."""

import json
from collections.abc import Callable
from typing import Any
from xml.etree import ElementTree as ET

import jsonschema
import pytest

from notesmith.publishing.chapters import ffmetadata, matroska, otio, podcast, stamps, vorbis, webvtt
from notesmith.publishing.episode import Episode

FORMS = (webvtt, podcast, stamps, ffmetadata, matroska, vorbis, otio)
Make = Callable[[dict[str, Any]], Episode]
CASE = {
    "samples": ['A=1; #"<b>&\\', "B"],
    "sections": [
        {"from": 0, "to": 59, "kind": "opening"},
        {"from": 60, "to": 3599, "kind": "tasting", "sample": 'A=1; #"<b>&\\'},
        {"from": 3600.5, "to": 3700, "kind": "tasting", "sample": "B"},
    ],
}
# The published text of version 1.2: only startTime is required of a chapter, and other keys are allowed.
PODCAST = {
    "type": "object",
    "required": ["version", "chapters"],
    "properties": {
        "version": {"type": "string", "pattern": "^1\\.2"},
        "chapters": {
            "type": "array",
            "items": {
                "type": "object",
                "required": ["startTime"],
                "properties": {
                    "startTime": {"type": "number", "minimum": 0},
                    "endTime": {"type": "number"},
                    "title": {"type": "string"},
                },
            },
        },
    },
}


@pytest.mark.parametrize("form", FORMS, ids=lambda form: form.__name__.rpartition(".")[2])
def test_without_sections_there_is_no_file(form: Any, episode: Make) -> None:
    """An empty chapter file would be taken for an answer."""
    assert form.render(episode({"samples": [], "sections": []})) is None


@pytest.mark.parametrize("form", FORMS, ids=lambda form: form.__name__.rpartition(".")[2])
def test_the_same_notes_give_the_same_bytes(form: Any, episode: Make) -> None:
    """On every run."""
    assert form.render(episode(CASE)) == form.render(episode(CASE))


def test_webvtt_titles_are_text(episode: Make) -> None:
    """With character references in place of tags."""
    assert (webvtt.render(episode(CASE)) or "").splitlines()[6:9] == [
        "chapter-2", "00:01:00.000 --> 01:00:00.500", 'Tasting A=1; #"&lt;b&gt;&amp;\\',
    ]  # fmt: skip


def test_podcast_chapters_keep_to_their_published_form(episode: Make) -> None:
    """Times in seconds, in order."""
    made = json.loads(podcast.render(episode(CASE)) or "")
    jsonschema.validate(made, PODCAST)
    assert [chapter["startTime"] for chapter in made["chapters"]] == [0.0, 60.0, 3600.5]


def test_ffmetadata_escapes_its_own_signs(episode: Make) -> None:
    """A backslash at the end of a title would swallow the next line."""
    assert (ffmetadata.render(episode(CASE)) or "").splitlines()[6:11] == [
        "[CHAPTER]", "TIMEBASE=1/1000", "START=60000", "END=3600500", 'title=Tasting A\\=1\\; \\#"<b>&\\\\ ',
    ]  # fmt: skip


def test_matroska_chapters_have_numbers_of_their_own(episode: Make) -> None:
    """None of them 0, and the order of the elements is that of the format's document type."""
    root = ET.fromstring(matroska.render(episode(CASE)) or "")
    atoms = root.findall("EditionEntry/ChapterAtom")
    uids = [int(atom.findtext("ChapterUID") or 0) for atom in atoms]
    assert len({*uids, 0}) == len(atoms) + 1
    order = ["ChapterTimeStart", "ChapterTimeEnd", "ChapterUID", "ChapterDisplay"]
    assert all([child.tag for child in atom] == order for atom in atoms)
    assert atoms[2].findtext("ChapterTimeStart") == "01:00:00.500000000"


def test_vorbis_comments_come_in_pairs(episode: Make) -> None:
    """A time, then a name."""
    assert (vorbis.render(episode(CASE)) or "").splitlines()[2:4] == [
        "CHAPTER002=00:01:00.000", 'CHAPTER002NAME=Tasting A=1; #"<b>&\\',
    ]  # fmt: skip


def test_markers_say_which_section_they_are_of(episode: Make) -> None:
    """So that an editor's note leads back to the words."""
    made = json.loads(otio.render(episode(CASE)) or "")
    markers = made["tracks"]["children"][0]["children"][0]["markers"]
    assert [marker["metadata"]["notesmith"]["records"] for marker in markers] == [["r0"], ["r1000"], ["r2000"]]
