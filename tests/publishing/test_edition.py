"""What is written, what is left out, and that nothing is written by halves."""

import importlib.util
import re
from pathlib import Path

import pytest

from notesmith.errors import MissingError, OutputError
from notesmith.publishing import Episode, edition, publish
from notesmith.publishing.edition import chosen, every_kind, file_name
from notesmith.publishing.kinds import KINDS, Kind
from notesmith.records import Notes


def test_every_kind_has_a_name_and_a_file_of_its_own() -> None:
    """Or one would be written over the other."""
    kinds = every_kind()
    assert len({kind.name for kind in kinds}) == len(kinds)
    assert len({kind.suffix for kind in kinds}) == len(kinds)
    assert all(kind.says and "\n" not in kind.says for kind in kinds)


def test_the_readme_tells_of_every_kind() -> None:
    """By its name, or by that of its family."""
    readme = Path(__file__).parents[2].joinpath("README.md").read_text("utf-8")
    told = set(re.findall(r"^\| `([a-z-]+)` \|", readme, re.MULTILINE))
    assert all(any(kind.name == name or kind.name.startswith(f"{name}-") for name in told) for kind in every_kind())


def test_notes_that_say_nothing_are_published_without_a_fault(empty: Notes, tmp_path: Path) -> None:
    """Whatever there is to say of them."""
    publish(Episode(empty), tmp_path)


def test_all_is_written_twice_with_the_same_bytes(small: Notes, tmp_path: Path) -> None:
    """Pictures and workbooks, too."""
    first, second = (publish(Episode(small), tmp_path / name).written for name in ("a", "b"))
    assert [path.name for path in first] == [path.name for path in second]
    assert len(first) > 20
    for one, other in zip(first, second, strict=True):
        assert one.read_bytes() == other.read_bytes(), one.name


def test_what_cannot_be_made_is_left_out_and_told(small: Notes, tmp_path: Path) -> None:
    """With how to have it."""
    left_out = publish(Episode(small), tmp_path).left_out
    assert "captions: found no captions that fit the notes; name them with --captions" in left_out
    assert "clips-concat: names the recording; give it with --media" in left_out


def test_only_what_is_named_is_written(small: Notes, tmp_path: Path) -> None:
    """By its own name, or by that of its family."""
    written = publish(Episode(small), tmp_path, only=["chapters-podcast", "clips"]).written
    assert [path.name for path in written] == ["attic.chapters.json", "attic.clips.txt", "attic.clips.otio"]


def test_a_name_stands_for_its_family_only() -> None:
    """Not for all that begin with its letters."""
    assert {kind.name.split("-")[0] for kind in chosen(["chapters"])} == {"chapters"}
    with pytest.raises(OutputError, match=r"there is no kind 'chap'; .*--list"):
        chosen(["chap"])


def test_what_is_named_must_be_made(small: Notes, tmp_path: Path) -> None:
    """Or nothing is."""
    with pytest.raises(MissingError, match="captions: found no captions"):
        publish(Episode(small), tmp_path / "out", only=["captions", "clips"])
    assert not (tmp_path / "out").exists()


def test_an_extra_that_is_missing_is_told(small: Notes, tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """With the name to install it by."""
    monkeypatch.setattr(edition, "find_spec", lambda _: None)
    with pytest.raises(MissingError, match=r"chapters-otio: needs .* opentimelineio; install notesmith\[otio\]"):
        publish(Episode(small), tmp_path, only=["chapters-otio"])
    assert "pyarrow" in " ".join(publish(Episode(small), tmp_path, only=["tables"]).left_out)


def test_every_extra_names_a_package() -> None:
    """One that is installed where these tests run."""
    for kind in KINDS:
        if kind.extra:
            assert importlib.util.find_spec(edition.PACKAGES[kind.extra])


def test_nothing_is_written_where_one_file_is_there_already(small: Notes, tmp_path: Path) -> None:
    """Half an edition is worse than none."""
    (tmp_path / "attic.chapters.xml").write_text("mine")
    with pytest.raises(OutputError, match="is there already"):
        publish(Episode(small), tmp_path, only=["chapters"])
    assert [path.read_text() for path in tmp_path.iterdir()] == ["mine"]
    publish(Episode(small), tmp_path, only=["chapters"], force=True)
    assert (tmp_path / "attic.chapters.xml").read_text() != "mine"


@pytest.mark.parametrize(("name", "ending"), [("a.srt", "srt"), ("a.en.vtt", "vtt"), ("a", "txt")])
def test_mended_captions_end_like_the_captions(name: str, ending: str, small: Notes) -> None:
    """So that players still know them."""
    from notesmith.transcript.reading import parse_captions

    captions = parse_captions(b"1\n00:00:01,000 --> 00:00:02,000\nhot\n", name)
    kind = Kind("captions", "corrected.*", "", lambda _: None)
    assert file_name(Episode(small, captions), kind) == f"attic.corrected.{ending}"
