"""Which recordings are held out together: whole kinds of product, so that what is answered for was never met."""

import csv
from collections.abc import Iterator
from pathlib import Path

RECORDINGS = Path("samples/recordings")
FOLDS = 4


def kinds(folder: Path = RECORDINGS) -> dict[str, str]:
    """The product kind of every recording."""
    return {row["name"]: row["kind"] for row in _lines(folder)}


def manners(folder: Path = RECORDINGS) -> dict[str, str]:
    """In what manner each recording is talked: in earnest, as a review, or by amateurs."""
    return {row["name"]: row["manner"] for row in _lines(folder)}


def folds(folder: Path = RECORDINGS) -> dict[str, int]:
    """The fold of every product kind. They were dealt once, the longest kind first, each to the shortest fold."""
    return {row["kind"]: int(row["fold"]) for row in _lines(folder)}


def _lines(folder: Path) -> Iterator[dict[str, str]]:
    with (folder / "kinds.tsv").open(encoding="utf-8") as f:
        yield from csv.DictReader(f, delimiter="\t")
