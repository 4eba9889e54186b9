"""Files written whole or not at all."""

import os
from pathlib import Path

import pytest

from notesmith.errors import OutputError
from notesmith.publishing.files import output_paths, write_file


def test_a_new_file_is_written_with_usual_rights(tmp_path: Path) -> None:
    """Anyone may read it whom the system's settings let."""
    mask = os.umask(0o022)
    try:
        write_file(tmp_path / "a.md", "é\n")
    finally:
        os.umask(mask)
    assert (tmp_path / "a.md").read_bytes() == "é\n".encode()
    assert (tmp_path / "a.md").stat().st_mode & 0o777 == 0o644


def test_a_file_is_not_replaced_unasked(tmp_path: Path) -> None:
    """What is there stays, and the message says how to replace it."""
    (tmp_path / "a.md").write_text("old")
    with pytest.raises(OutputError, match="is there already"):
        write_file(tmp_path / "a.md", "new")
    assert (tmp_path / "a.md").read_text() == "old"


def test_a_file_is_replaced_when_asked(tmp_path: Path) -> None:
    """Only the file itself is left in the folder."""
    (tmp_path / "a.md").write_text("old")
    write_file(tmp_path / "a.md", "new", force=True)
    assert [path.name for path in tmp_path.iterdir()] == ["a.md"]
    assert (tmp_path / "a.md").read_text() == "new"


def test_a_text_that_cannot_be_written_leaves_the_old_file(tmp_path: Path) -> None:
    """A failure half-way harms nothing."""
    (tmp_path / "a.md").write_text("old")
    with pytest.raises(UnicodeEncodeError):
        write_file(tmp_path / "a.md", "\ud800", force=True)
    assert [path.read_text() for path in tmp_path.iterdir()] == ["old"]


@pytest.mark.parametrize("place", ["none/a.md", "."])
def test_a_place_that_takes_no_file_is_refused(place: str, tmp_path: Path) -> None:
    """A missing folder, or a folder itself."""
    with pytest.raises(OutputError):
        write_file(tmp_path / place, "new", force=True)


def test_a_device_is_not_replaced() -> None:
    """Not even with --force."""
    with pytest.raises(OutputError, match="not a plain file"):
        write_file(Path(os.devnull), "new", force=True)


def test_a_link_is_followed(tmp_path: Path) -> None:
    """The file it leads to is replaced, not the link."""
    (tmp_path / "real.md").write_text("old")
    (tmp_path / "link.md").symlink_to(tmp_path / "real.md")
    write_file(tmp_path / "link.md", "new", force=True)
    assert (tmp_path / "link.md").is_symlink()
    assert (tmp_path / "real.md").read_text() == "new"


def test_each_caption_file_has_its_own_notes(tmp_path: Path) -> None:
    """The name is the caption file's, the suffix the form's."""
    assert output_paths([Path("x/a.vtt"), Path("b.en.srt")], tmp_path, ".csv") == [
        tmp_path / "a.notes.csv",
        tmp_path / "b.en.notes.csv",
    ]


@pytest.mark.parametrize("other", ["x/a.srt", "A.vtt", "a.vtt"])
def test_two_notes_in_one_file_are_refused(other: str, tmp_path: Path) -> None:
    """Also where only some systems take the names for one."""
    with pytest.raises(OutputError, match="would both be"):
        output_paths([Path("a.vtt"), Path(other)], tmp_path, ".json")
