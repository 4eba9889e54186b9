"""What is said of lexicon files that cannot be read."""

from pathlib import Path

import pytest

from notesmith.errors import LexiconError
from notesmith.lexicon import Lexicon
from notesmith.lexicon.folders import read_folder

HEADER = "concept\tlabel\tkind\tform\tuse\n"
BOWL = '[bowl]\nsort = "vessel"\ndefinition = "An open bowl."\nsource = "everyday"\n'


def error_of(folder: Path) -> str:
    """The one line that reading the folder ends with."""
    with pytest.raises(LexiconError) as caught:
        Lexicon.read(folder)
    return str(caught.value)


def test_an_empty_folder_is_no_lexicon(tmp_path: Path) -> None:
    """The user learns which files are looked for."""
    assert error_of(tmp_path).startswith(f"{tmp_path}: no concepts.toml or labels.tsv found")


def test_a_missing_folder_is_no_lexicon(tmp_path: Path) -> None:
    """A mistyped path ends in the same line, not in a traceback."""
    assert "no concepts.toml" in error_of(tmp_path / "nowhere")


def test_broken_toml_is_told_with_its_line(tmp_path: Path) -> None:
    """File and line of the fault."""
    (tmp_path / "concepts.toml").write_text(BOWL + "broader = \n", "utf-8")
    assert error_of(tmp_path).startswith(f"{tmp_path / 'concepts.toml'}:5: ")


def test_a_value_outside_a_table_is_refused(tmp_path: Path) -> None:
    """A field that belongs to no concept is named."""
    (tmp_path / "concepts.toml").write_text('sort = "vessel"\n', "utf-8")
    assert "'sort' stands outside a table" in error_of(tmp_path)


def test_a_wrong_concept_is_told_with_its_line(tmp_path: Path) -> None:
    """The line where the concept's table opens."""
    (tmp_path / "concepts.toml").write_text("\n" + BOWL.replace("vessel", "pot"), "utf-8")
    assert error_of(tmp_path).startswith(f"{tmp_path / 'concepts.toml'}:2: concept bowl: sort: ")


def test_a_missing_definition_is_told(tmp_path: Path) -> None:
    """A concept must say what it means."""
    (tmp_path / "concepts.toml").write_text('[bowl]\nsort = "vessel"\nsource = "everyday"\n', "utf-8")
    assert "concept bowl: definition: field required" in error_of(tmp_path)


def test_a_wrong_header_is_refused(tmp_path: Path) -> None:
    """A file of commas or with other columns is not guessed at."""
    (tmp_path / "labels.tsv").write_text("concept,label\n", "utf-8")
    assert error_of(tmp_path).startswith(f"{tmp_path / 'labels.tsv'}:1: the header line is wrong")


def test_a_label_of_no_concept_is_told_with_its_line(tmp_path: Path) -> None:
    """The row that names an unknown concept."""
    (tmp_path / "labels.tsv").write_text(HEADER + "\nbowl\tbowl\tpreferred\tnoun\t\n", "utf-8")
    assert (
        error_of(tmp_path)
        == f"{tmp_path / 'labels.tsv'}:3: label 'bowl' is of concept 'bowl', which is defined nowhere"
    )


def test_a_file_in_another_encoding_is_refused(tmp_path: Path) -> None:
    """The user learns to save it as UTF-8."""
    (tmp_path / "labels.tsv").write_bytes(HEADER.encode() + "bowl\trosé\tpreferred\tnoun\t\n".encode("latin-1"))
    assert error_of(tmp_path).endswith("the file is not UTF-8 text; save it as UTF-8")


def test_a_spreadsheets_file_is_read(tmp_path: Path) -> None:
    """A byte-order mark, Windows line ends and missing last columns do no harm."""
    (tmp_path / "concepts.toml").write_text(BOWL, "utf-8")
    (tmp_path / "labels.tsv").write_bytes(
        b"\xef\xbb\xbf" + (HEADER + "bowl\tbowl\tpreferred\tnoun\n").replace("\n", "\r\n").encode()
    )
    assert Lexicon.read(tmp_path).look_up("bowls")


def test_domains_come_by_rank(tmp_path: Path) -> None:
    """Subfolders of ours are ordered by rank, unknown ones last."""
    for name in ("tea", "another", "sensory"):
        (tmp_path / name).mkdir()
        (tmp_path / name / "labels.tsv").write_text(HEADER, "utf-8")
    assert [domain.name for domain in read_folder(tmp_path)] == ["sensory", "tea", "another"]
