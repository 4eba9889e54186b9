"""Power and numbers of trials, against worked examples."""

import time

import numpy as np
import pytest

from notesmith.sensory.power import fewest, power, power_alike, power_curve, power_of_pair, trials_for
from notesmith.sensory.protocols import DUO_TRIO, PAIR, PROTOCOLS, TETRAD, TRIANGLE, Protocol
from notesmith.sensory.yes_no import power_of_calls


@pytest.mark.parametrize(
    ("protocol", "d", "trials", "found"),
    [(PAIR, 1.0, 30, 0.917255217993622), (PAIR, 1.0, 50, 0.98111473), (TETRAD, 1.0, 50, 0.731897),
     (TRIANGLE, 1.5, 100, 0.96651326), (DUO_TRIO, 1.0, 100, 0.48182978)],
)  # fmt: skip
def test_power_by_distance(protocol: Protocol, d: float, trials: int, found: float) -> None:
    """Exact power: sensR's example output and golden_sensr.json. Seen."""
    assert float(power_curve(protocol, d, trials)) == pytest.approx(found, abs=1e-6)


def test_power_beyond_a_small_difference() -> None:
    """A duo-trio of 20 to show more than a tenth told apart: critical count 16, power 0.415: sensR's vignette. Seen."""
    assert float(power(0.75, 20, 0.55)) == pytest.approx(0.415, abs=5e-4)


@pytest.mark.parametrize(("told_apart", "found"), [(0.0, 0.956), (0.2, 0.377)])
def test_power_for_likeness(told_apart: float, found: float) -> None:
    """A hundred duo-trios, a third told apart being too many: sensR's vignette. Seen."""
    assert float(power_alike(DUO_TRIO.share(told_apart), 100, 2 / 3)) == pytest.approx(found, abs=5e-4)


def test_power_for_likeness_of_triangles() -> None:
    """A tenth told apart where a fifth is too many, 100 triangles: sensR. Seen."""
    found = float(power_alike(TRIANGLE.share(0.1), 100, TRIANGLE.share(0.2)))
    assert found == pytest.approx(0.306809762270984, abs=1e-12)


def test_double_duo_trio() -> None:
    """Bi 2001, double duo-trio (chance 1/4), 100 trials at 35 % right: exact power by sensR, d′ rounded. Seen."""
    assert float(power(0.35, 100, 0.25)) == pytest.approx(0.697083711530984, abs=1e-4)


@pytest.mark.parametrize(
    ("protocol", "d", "wanted", "trials"),
    [(TRIANGLE, 1.0, 0.9, 283), (PAIR, 1.0, 0.9, 30), (TETRAD, 1.0, 0.9, 82), (PAIR, 1.0, 0.8, 23),
     (TRIANGLE, 1.5, 0.9, 71)],
)  # fmt: skip
def test_trials_for_a_distance(protocol: Protocol, d: float, wanted: float, trials: int) -> None:
    """283 triangles, 82 tetrads or 30 pairs find d′ 1 nine times in ten: sensR. Seen."""
    assert trials_for(protocol, d, wanted) == trials


@pytest.mark.parametrize(
    ("chance", "told_apart", "wanted", "first", "steady"),
    [(1 / 2, 0.5, 0.8, 23, 28), (1 / 3, 0.3, 0.9, 53, 57), (1 / 2, 0.4, 0.8, 37, 42), (1 / 3, 0.25, 0.9, 79, 81)],
)
def test_saw_tooth(chance: float, told_apart: float, wanted: float, first: int, steady: int) -> None:
    """The first number of trials that is enough (sensR, seen) and that from which all are (computed)."""
    share = chance + told_apart * (1 - chance)
    found = [fewest(lambda n: power(share, n, chance), wanted, steady=steady) for steady in (False, True)]
    assert found == [first, steady]


def test_trials_for_likeness() -> None:
    """604 trials of one in two show likeness, a tenth told apart and a fifth too many: sensR. Seen."""
    assert fewest(lambda n: power_alike(0.55, n, 0.6), 0.8) == 604


def test_what_no_number_finds() -> None:
    """Products that do not differ are found different by no number of trials."""
    assert trials_for(TRIANGLE, 0.0) is None


def test_either_side_is_dearer() -> None:
    """A pair without an expected side has less power than one with it."""
    assert power_of_pair(0.7, 40) < power(0.7, 40, 0.5)


def test_power_curves_are_quick() -> None:
    """Curves of seven protocols at 200 points take less than a second."""
    distances, start = np.linspace(0, 3, 200), time.perf_counter()
    curves = [power_curve(protocol, distances, 60) for protocol in PROTOCOLS.values()]
    curves.append(power_of_calls(distances, 60))
    assert time.perf_counter() - start < 1
    assert [curve.shape for curve in curves] == [(200,)] * 7
    assert all((np.diff(curve) > -1e-12).all() for curve in curves)
