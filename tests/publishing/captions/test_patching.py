"""Captions mended in place: what a repair touches, and that nothing else changes."""

import tomllib
from dataclasses import replace
from pathlib import Path
from typing import Any

import pytest

from notesmith.publishing.captions.patching import render
from notesmith.publishing.episode import Episode
from notesmith.records import Notes, Repair
from notesmith.transcript import Captions
from notesmith.transcript.reading import parse_captions
from notesmith.transcript.talk import Talk

CASES = Path(__file__).parents[2] / "cases"
MENDED = tomllib.loads((CASES / "publishing" / "mended.toml").read_text("utf-8"))["case"]
FORMATS = sorted(path for path in (CASES / "captions").iterdir() if path.suffix != ".said")


def repaired(captions: Captions, heard: str, meant: str) -> Repair:
    """A repair of words that stand in the talk."""
    text = Talk.from_captions(captions).text
    start = text.index(heard)
    return spanned(captions, (start, start + len(heard)), meant)


def spanned(captions: Captions, span: tuple[int, int], meant: str) -> Repair:
    """A repair of a span of the talk."""
    quote = Talk.from_captions(captions).text[slice(*span)]
    return Repair(
        id=f"r{span[0]}", start=0, end=1, quote=quote, span=span, confidence=1, why=(), heard=quote, meant=meant
    )


def episode_of(empty: Notes, source: bytes, name: str, *repairs: tuple[str, str]) -> Episode:
    """An episode of captions with repairs."""
    captions = parse_captions(source, name)
    found = tuple(repaired(captions, heard, meant) for heard, meant in repairs)
    return Episode(empty.model_copy(update={"repairs": found}), captions, source)


@pytest.mark.parametrize("case", MENDED, ids=lambda case: case["says"])
def test_only_the_repairs_are_changed(case: dict[str, Any], empty: Notes) -> None:
    """As the cases say, character by character."""
    repairs = [(repair["heard"], repair["meant"]) for repair in case["repairs"]]
    episode = episode_of(empty, case["before"].encode(), case["name"], *repairs)
    mended = render(replace(episode, mark_repairs=case.get("marked", False)))
    assert mended is not None
    assert mended.decode() == case["after"]


def test_without_repairs_there_is_nothing_to_mend(empty: Notes) -> None:
    """And no file."""
    assert render(episode_of(empty, b"WEBVTT\n\n00:01.000 --> 00:02.000\nhot\n", "a.vtt")) is None


def test_without_captions_there_is_nothing_to_mend(small: Notes) -> None:
    """The notes alone do not hold them."""
    assert render(Episode(small)) is None


@pytest.mark.parametrize("line_end", [b"\n", b"\r\n", b"\r"])
def test_line_ends_stay(line_end: bytes, empty: Notes) -> None:
    """Whichever they are."""
    lines = [b"WEBVTT", b"", b"00:01.000 --> 00:04.000", b"The guy", b"one", b"is hot.", b""]
    mended = render(episode_of(empty, line_end.join(lines), "a.vtt", ("guy one", "gaiwan")))
    assert mended == line_end.join([*lines[:3], b"The gaiwan", b"is hot.", b""])


@pytest.mark.parametrize("codec", ["utf-8-sig", "utf-16"])
def test_the_encoding_and_its_mark_stay(codec: str, empty: Notes) -> None:
    """What is mended is written in it, too."""
    text = "1\n00:00:01,000 --> 00:00:04,000\nThé guy one 茶 is 😀 hot.\n"
    mended = render(episode_of(empty, text.encode(codec), "a.srt", ("guy one", "gàiwǎn")))
    assert mended == text.replace("guy one", "gàiwǎn").encode(codec)


def test_bytes_that_are_no_text_stay(empty: Notes) -> None:
    """A file read as Windows-1252 may hold bytes that this does not know."""
    source = b"1\n00:00:01,000 --> 00:00:04,000\ncaf\xe9 \x81 from the guy one\n"
    mended = render(episode_of(empty, source, "a.srt", ("guy one", "gaiwan")))
    assert mended == source.replace(b"guy one", b"gaiwan")


def test_what_the_encoding_cannot_write_is_left_as_heard(empty: Notes) -> None:
    """The other repairs are still made."""
    source = b"1\n00:00:01,000 --> 00:00:04,000\ncaf\xe9 kook each a from the guy one\n"
    mended = render(episode_of(empty, source, "a.srt", ("guy one", "gaiwan"), ("kook each a", "茎茶")))
    assert mended == source.replace(b"guy one", b"gaiwan")


def test_a_repair_that_would_end_the_cue_is_left_out(empty: Notes) -> None:
    """No name on a sheet may write a timing line into a caption file."""
    source = b"1\n00:00:01,000 --> 00:00:04,000\nso the bowl is hot\n"
    hostile = "\n\n2\n00:00:01,000 --> 00:00:09,000\nbuy it"
    mended = render(episode_of(empty, source, "a.srt", ("bowl", hostile)))
    assert mended is None or len(parse_captions(mended, "a.srt").cues) == 1


@pytest.mark.parametrize("path", FORMATS, ids=lambda path: path.name)
def test_every_format_is_written_back(path: Path, empty: Notes) -> None:
    """Each word in turn, read again with that word changed and no other."""
    source = path.read_bytes()
    captions = parse_captions(source, path.name)
    talk = Talk.from_captions(captions)
    for word in talk.words:
        text = talk.text[word.start : word.end]
        bare = text.strip('.,;:!?…&<>"()')
        if bare.isalpha():
            start = word.start + text.index(bare)
            repair = spanned(captions, (start, start + len(bare)), "gaiwan")
            mended = render(Episode(empty.model_copy(update={"repairs": (repair,)}), captions, source))
            assert mended is not None
            again = Talk.from_captions(parse_captions(mended, path.name)).text
            assert again.casefold() == (talk.text[:start] + "gaiwan" + talk.text[start + len(bare) :]).casefold()
