"""`notesmith evidence`: what is asked, what is answered, and how a fault is told."""

import shutil
from collections.abc import Callable
from pathlib import Path

import pytest

from tests.cli.conftest import SMALL

Command = Callable[..., int]
Capture = pytest.CaptureFixture[str]


def test_a_difference(notesmith: Command, capsys: Capture) -> None:
    """Figures first, then the claim."""
    assert notesmith("evidence", "difference", "triangle", "10", "15", "--blind", "--balanced") == 0
    lines = capsys.readouterr().out.splitlines()
    assert lines[0] == "A triangle test, 10 of 15 right"
    assert lines[3] == "  d′ 2.321 (95 % 0.759 to 3.824, error 0.651)"
    assert "A difference was found" in lines[5]


def test_fewer_tasters_than_trials(notesmith: Command, capsys: Capture) -> None:
    """Trials repeated by the same tasters are warned of."""
    assert notesmith("evidence", "difference", "triangle", "10", "15", "--tasters", "5") == 0
    assert "as if each trial were another taster's" in capsys.readouterr().out


def test_more_right_than_trials(notesmith: Command, capsys: Capture) -> None:
    """One line and exit status 2."""
    assert notesmith("evidence", "difference", "triangle", "15", "10") == 2
    assert capsys.readouterr().err == (
        "notesmith: 15 right of 10 trials; give the right answers first, then the trials\n"
    )


def test_preferences(notesmith: Command, capsys: Capture) -> None:
    """With `no preference`, to either side."""
    assert notesmith("evidence", "preference", "6", "2", "--neither", "2") == 0
    out = capsys.readouterr().out
    assert "d′ 0.774 (95 % -0.271 to 1.859, error 0.542)" in out
    assert "p = 0.15" in " ".join(out.split())


@pytest.mark.parametrize(
    "arguments", [("preference", "0", "0"), ("calls", "5", "3", "0", "3"), ("repeated", "pair", "5")]
)
def test_counts_that_do_not_fit(notesmith: Command, capsys: Capture, arguments: tuple[str, ...]) -> None:
    """One line, exit status 2."""
    assert notesmith("evidence", *arguments) == 2
    assert capsys.readouterr().err.count("\n") == 1


def test_repeated_trials(notesmith: Command, capsys: Capture) -> None:
    """The beta-binomial's p stands in the claim, not the one that counts every trial as new."""
    assert notesmith("evidence", "repeated", "triangle", "5/8", "3/8", "6/8", "2/8") == 0
    assert "(n = 32, p = 0.096)" in " ".join(capsys.readouterr().out.split())


def test_trials_needed(notesmith: Command, capsys: Capture) -> None:
    """283 triangles, 82 tetrads, 30 pairs."""
    assert notesmith("evidence", "trials") == 0
    told = {line[:36].strip(): line.split()[-4] for line in capsys.readouterr().out.splitlines()[2:-1]}
    assert [told[name] for name in ("triangle test", "tetrad test", "paired comparison")] == ["283", "82", "30"]


def test_power(notesmith: Command, capsys: Capture) -> None:
    """Thirty pairs find d′ 1 with .92; seven tests stand below one another."""
    assert notesmith("evidence", "power", "30") == 0
    lines = capsys.readouterr().out.splitlines()[3:]
    assert len(lines) == 7
    assert next(line for line in lines if line.startswith("paired")).split()[3] == "0.92"


def test_table_of_counts(notesmith: Command, capsys: Capture) -> None:
    """Computed, a dash where no count will do."""
    assert notesmith("evidence", "table", "triangle", "--trials", "7") == 0
    assert [line.split() for line in capsys.readouterr().out.splitlines()][1:3] == [
        ["3", "3", "3", "3", "-", "-"], ["4", "3", "4", "4", "-", "-"],
    ]  # fmt: skip


def test_ranking(notesmith: Command, tmp_path: Path, capsys: Capture) -> None:
    """A table of scores is weighed, with the order foreseen if asked."""
    (tmp_path / "scores.csv").write_text("P,Q,R\n1,2,3\n1,2,3\n2,1,3\n1,2,3\n1,3,2\n")
    assert notesmith("evidence", "ranking", "scores.csv", "--foreseen") == 0
    out = capsys.readouterr().out
    assert "R: rank sum 14" in out
    assert "Page's L 68 for the order foreseen" in out


@pytest.mark.parametrize(
    "text", ["", "P,Q,R\n1,2\n", "P,Q,R\n1,2,x\n2,1,3\n", "P,Q\n1,2\n2,1\n", "P,Q,R\n1,1,1\n1,1,1\n"]
)
def test_scores_that_will_not_do(notesmith: Command, tmp_path: Path, capsys: Capture, text: str) -> None:
    """Empty, ragged, no numbers, too few samples, all alike: one line that names the file."""
    (tmp_path / "scores.csv").write_text(text)
    assert notesmith("evidence", "ranking", "scores.csv") == 2
    assert capsys.readouterr().err.startswith("notesmith: scores.csv: ")


def test_notes(notesmith: Command, tmp_path: Path, capsys: Capture) -> None:
    """Notes are read as evidence, as text and as JSON."""
    shutil.copy(SMALL, tmp_path / "small.notes.json")
    assert notesmith("evidence", "notes", "small.notes.json") == 0
    assert notesmith("evidence", "notes", "small.notes.json", "--format", "json", "--output", "proof.json") == 0
    assert (tmp_path / "proof.json").read_text().startswith("[")


def test_no_notes(notesmith: Command, tmp_path: Path, capsys: Capture) -> None:
    """What holds no notes is told as everywhere."""
    (tmp_path / "x.json").write_text("{}")
    assert notesmith("evidence", "notes", "x.json") == 3
