"""Which recordings are held out together: whole kinds of product, so that what is answered for was never met."""

import csv
from pathlib import Path

RECORDINGS = Path("samples/recordings")
FOLDS = 4


def kinds(folder: Path = RECORDINGS) -> dict[str, str]:
    """The product kind of every recording."""
    with (folder / "kinds.tsv").open(encoding="utf-8") as f:
        return {row["name"]: row["kind"] for row in csv.DictReader(f, delimiter="\t")}


def folds(sizes: dict[str, int], count: int = FOLDS) -> dict[str, int]:
    """Whole product kinds dealt to folds of about one size, the largest first.

    >>> folds({"tea": 9, "wine": 5, "beer": 3, "oil": 1}, 2)
    {'tea': 0, 'wine': 1, 'beer': 1, 'oil': 1}
    """
    filled, dealt = [0] * count, {}
    for kind, size in sorted(sizes.items(), key=lambda item: (-item[1], item[0])):
        dealt[kind] = filled.index(min(filled))
        filled[dealt[kind]] += size
    return dealt
