"""What the check finds wrong in a lexicon."""

import tomllib
from pathlib import Path
from typing import Any

import pytest
from typer.testing import CliRunner

from notesmith.cli.lexicon import app
from notesmith.errors import LexiconError
from notesmith.lexicon.check import check, check_domains, common_words
from notesmith.lexicon.folders import read_domain, read_folder

CASES = Path(__file__).parents[1] / "cases" / "lexicon"
FINDINGS = tomllib.loads((CASES / "findings.toml").read_text("utf-8"))["case"]
HEADER = "concept\tlabel\tkind\tform\tuse\n"


def write(folder: Path, case: dict[str, Any]) -> Path:
    """Write a case's lexicon to be checked."""
    (folder / "concepts.toml").write_text(case["concepts"], "utf-8")
    rows = ["\t".join(row.split(" ")) + "\n" for row in case["labels"]]
    (folder / "labels.tsv").write_text(HEADER + "".join(rows), "utf-8")
    return folder


@pytest.mark.parametrize("case", FINDINGS, ids=lambda case: case["name"])
def test_the_check_finds_what_is_wrong(case: dict[str, Any], tmp_path: Path) -> None:
    """Each fault is told once, with file and line."""
    found = [str(finding) for finding in check_domains([read_domain(write(tmp_path, case))])]
    told = [line for line in found if case["finding"] in line]
    assert len(told) == 1, found
    assert told[0].startswith(f"{tmp_path}/")


def test_a_sound_lexicon_has_no_findings() -> None:
    """Nothing is found where nothing is wrong."""
    assert check_domains(read_folder(CASES / "ours")) == []


def test_what_a_user_overrides_is_no_finding() -> None:
    """A user's label that moves, and a concept given in part, are meant so."""
    assert check_domains(read_folder(CASES / "users"), read_folder(CASES / "ours")) == []


def test_an_empty_lexicon_has_no_findings() -> None:
    """No domains, no faults."""
    assert check_domains([]) == []


def test_between_domains_the_earlier_keeps_a_label(tmp_path: Path) -> None:
    """A clash across domains is a warning at the later row."""
    for name in ("first", "second"):
        (tmp_path / name).mkdir()
        bowl = f'[{name}]\nsort = "vessel"\ndefinition = "A bowl."\nsource = "everyday"\n'
        write(tmp_path / name, {"concepts": bowl, "labels": [f"{name} bowl preferred noun"]})
    findings = check_domains(read_folder(tmp_path))
    assert [finding.severity for finding in findings] == ["warning"]
    assert findings[0].where == f"{tmp_path / 'second' / 'labels.tsv'}:2"


def test_our_own_lexicon_has_no_findings() -> None:
    """The lexicon we ship fits together: no errors and no warnings."""
    assert [str(finding) for finding in check()] == []


def test_common_words_are_single_words() -> None:
    """The list of everyday words holds words, not its own headings."""
    assert {"light", "short", "body"} <= common_words()
    assert all(word.replace("-", "").isalpha() and word == word.lower() for word in common_words())


def test_the_command_ends_with_an_error_where_errors_are_found(tmp_path: Path) -> None:
    """`check FOLDER` prints the findings and fails with the lexicon's exit status."""
    case = next(case for case in FINDINGS if case["name"] == "an unknown sort")
    result = CliRunner().invoke(app, ["check", str(write(tmp_path, case))])
    assert case["finding"] in result.output
    assert isinstance(result.exception, LexiconError)
    assert result.exception.exit_status == 5


def test_the_command_tells_where_a_word_has_its_place() -> None:
    """`find WORDS` prints the concept, its line from the top, and its meaning."""
    result = CliRunner().invoke(app, ["find", "--lexicon", str(CASES / "users"), "yuzu"])
    assert result.output.startswith("yuzu: yuzu\n  place: fruity > citrus > yuzu\n")
    assert "meaning: Like the zest of a yuzu." in result.output


def test_the_command_says_when_it_knows_no_such_word() -> None:
    """An unknown word is one clear line."""
    result = CliRunner().invoke(app, ["find", "unheard of"])
    assert str(result.exception) == "the lexicon has no label 'unheard of'; add it in a folder of your own"


def test_the_command_shows_a_concept_with_its_labels() -> None:
    """`show CONCEPT` lists the labels, the preferred one first."""
    result = CliRunner().invoke(app, ["show", "lemon"])
    assert result.output.startswith("lemon\n")
    assert "  preferred: lemon\n" in result.output
