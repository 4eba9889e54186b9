"""Critical counts against the published tables in tests/cases/sensory; each file names its source."""

import numpy as np
import pytest

from notesmith.sensory.difference import least_majority, least_right, most_right
from tests.sensory.published import counts


def computed(cell: tuple[int, float, int | None], chance: float) -> int | None:
    """The count at the trials and the level of a cell."""
    least = int(least_right(cell[0], chance, cell[1]))
    return least if least <= cell[0] else None


def test_triangle_table_whole() -> None:
    """All 44 rows and 4 columns that the FAO prints, and one column more, agree."""
    cells = counts("triangle.tsv")
    assert len(cells) == 44 * 5
    assert [computed(cell, 1 / 3) for cell in cells] == [count for _, _, count in cells]


@pytest.mark.parametrize("table", ["duo-trio.tsv", "pair-one-sided.tsv"])
def test_tables_of_one_in_two(table: str) -> None:
    """Every cell of the duo-trio table and of the one-sided paired one agrees."""
    cells = counts(table)
    assert [computed(cell, 1 / 2) for cell in cells] == [count for _, _, count in cells]


def test_misprint_is_refused() -> None:
    """Three cells of the row that a published table misprints are not what is computed; two are."""
    cells = counts("misprints.tsv")
    assert [computed(cell, 1 / 2) == count for cell in cells for count in [cell[2]]] == [False] * 3 + [True] * 2


def test_two_sided_pairs() -> None:
    """Every cell of the two-sided table agrees."""
    for trials, level, count in counts("pair-two-sided.tsv"):
        least = int(least_majority(trials, level))
        assert (least if least <= trials else None) == count


@pytest.mark.parametrize(("chance", "least"), [(1 / 2, 59), (1 / 3, 42), (1 / 4, 33), (1 / 9, 17), (1 / 10, 16)])
def test_hundred_trials(chance: float, least: int) -> None:
    """Critical counts of 100 trials at 5 %; computed, no printed table seen."""
    assert least_right(100, chance) == least


def test_triangle_of_25() -> None:
    """13 of 25 for a difference, 7 of 25 for likeness with a fifth told apart: sensR's findcr. Seen."""
    assert least_right(25, 1 / 3) == 13
    assert most_right(25, 1 / 3 + 0.2 * 2 / 3) == 7


def test_no_count_is_few_enough() -> None:
    """Three trials can never show that products are alike."""
    assert most_right(3, 0.5) == -1


def test_counts_come_in_arrays() -> None:
    """Many numbers of trials are answered at once."""
    assert least_right(np.array([7, 24]), 1 / 3).tolist() == [5, 13]
