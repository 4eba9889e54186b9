"""Reads the published values that the arithmetic is held against."""

import csv
import tomllib
from pathlib import Path
from typing import Any

CASES = Path(__file__).parents[1] / "cases" / "sensory"


def rows(name: str) -> list[dict[str, str]]:
    """The rows of a table; lines that open with # say where it comes from."""
    lines = (CASES / name).read_text("utf-8").splitlines()
    return list(csv.DictReader((line for line in lines if not line.startswith("#")), delimiter="\t"))


def counts(name: str) -> list[tuple[int, float, int | None]]:
    """Trials, level and count of every cell of a table of critical counts; None for a dash."""
    return [
        (int(row["trials"]), float(level), None if count == "-" else int(count))
        for row in rows(name)
        for level, count in row.items()
        if level != "trials"
    ]


def judged() -> list[dict[str, Any]]:
    """Worked examples of tests of difference."""
    return list(tomllib.loads((CASES / "worked.toml").read_text("utf-8"))["judged"])
