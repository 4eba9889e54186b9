"""A-not-A, pairs with `no preference`, and repeated trials, against worked examples."""

import numpy as np
import pytest

from notesmith.sensory.no_preference import judge_pair
from notesmith.sensory.replicated import judge_replicated
from notesmith.sensory.yes_no import judge_calls, power_of_calls

RIGHT = [3, 2, 6, 8, 3, 4, 6, 0, 9, 9, 0, 2, 1, 2, 8, 9, 5, 7]
TRIALS = [10, 9, 8, 9, 8, 6, 9, 10, 10, 10, 9, 9, 10, 10, 10, 10, 9, 10]


@pytest.mark.parametrize(
    ("calls", "d", "error", "p"),
    [((10, 20, 3, 20), 1.036433, 0.4425006, 0.0203712), ((8, 25, 1, 25), 1.282987, 0.5243127, 0.01160771)],
)
def test_calls(calls: tuple[int, int, int, int], d: float, error: float, p: float) -> None:
    """d′, its error and Fisher's p: sensR's A-not-A examples. Seen."""
    found = judge_calls(*calls)
    assert found.distance.value == pytest.approx(d, abs=1e-6)
    assert found.distance.error == pytest.approx(error, abs=1e-6)
    assert found.p_difference == pytest.approx(p, abs=1e-7)


def test_interval_of_calls() -> None:
    """Wald's interval of 10 of 20 against 3 of 20: sensR. Seen."""
    found = judge_calls(10, 20, 3, 20).distance
    assert [found.low, found.high] == [pytest.approx(0.1691, abs=5e-5), pytest.approx(1.9037, abs=5e-5)]


def test_every_cup_called_a() -> None:
    """Calls without exception have no finite d′."""
    assert judge_calls(10, 10, 0, 10).distance.value == np.inf


def test_no_cups() -> None:
    """Without cups of one kind nothing is said."""
    with pytest.raises(ValueError, match="there must be cups"):
        judge_calls(1, 2, 0, 0)


def test_guessing_calls_have_no_more_power_than_the_level() -> None:
    """Where nothing differs, A-not-A finds a difference at most as often as its level."""
    assert float(power_of_calls(0.0, 40)) <= 0.05


@pytest.mark.parametrize(
    ("counts", "d", "p_second", "p_either"),
    [((2, 2, 6), 0.7743, None, 0.14798), ((2, 5, 8), 0.8446, 0.024801, None), ((3, 5, 12), 0.9120, None, 0.016188),
     ((5, 0, 15), 0.9539, None, 0.022153)],
)  # fmt: skip
def test_no_preference(counts: tuple[int, int, int], d: float, p_second: float | None, p_either: float | None) -> None:
    """d′ and p of pairs with `no preference`: sensR's 2-AC. Seen; its last p differs in the fifth digit."""
    found = judge_pair(*counts)
    assert found.distance.value == pytest.approx(d, abs=6e-5)
    for computed, printed in ((found.p_second, p_second), (found.p_either, p_either)):
        assert printed is None or computed == pytest.approx(printed, abs=2e-5)


def test_error_and_interval_of_no_preference() -> None:
    """Middle, error and likelihood interval of 2, 2, 6: sensR. Seen."""
    found = judge_pair(2, 2, 6)
    assert (found.middle, found.distance.error) == (pytest.approx(0.4160, abs=5e-5), pytest.approx(0.5417, abs=5e-5))
    assert [found.distance.low, found.distance.high] == [
        pytest.approx(-0.271, abs=5e-4),
        pytest.approx(1.859, abs=5e-4),
    ]


def test_sides_may_be_swapped() -> None:
    """Naming the sides the other way round turns the sign of d′ and nothing else."""
    one, other = judge_pair(3, 5, 12), judge_pair(12, 5, 3)
    assert other.distance.value == pytest.approx(-one.distance.value)
    assert other.p_either == pytest.approx(one.p_either)


def test_all_for_one() -> None:
    """A side that nobody names leaves d′ without an end, and with a limit on the near side."""
    found = judge_pair(0, 2, 5).distance
    assert (found.value, found.high, found.error) == (np.inf, np.inf, None)
    assert 0 < found.low < 1


def test_nobody_asked() -> None:
    """No answers say nothing."""
    with pytest.raises(ValueError, match="nor all 0"):
        judge_pair(0, 0, 0)


@pytest.mark.parametrize(
    ("chance", "mean", "gamma", "likelihood"),
    [(None, 0.49381, 0.31443, -41.7087), (1 / 2, 0.17605092, 0.50427263, -55.298699),
     (1 / 3, 0.29788209, 0.46834374, -47.243354)],
)  # fmt: skip
def test_replicated(chance: float | None, mean: float, gamma: float, likelihood: float) -> None:
    """18 tasters with 6 to 10 trials each, plain and corrected for guessing: sensR. Seen."""
    found = judge_replicated(RIGHT, TRIALS, chance)
    assert found.mean == pytest.approx(mean, abs=1e-5)
    assert found.gamma == pytest.approx(gamma, abs=1e-5)
    assert found.likelihood == pytest.approx(likelihood, abs=5e-5)


def test_repeated_trials_count_for_less() -> None:
    """166 trials of 18 tasters who differ tell as much as a third as many would of as many tasters."""
    found = judge_replicated(RIGHT, TRIALS)
    assert found.p_alike < 0.001
    assert 18 < found.effective < 166 / 3


def test_tasters_who_are_alike() -> None:
    """Where all tasters do alike, repeated trials count in full."""
    found = judge_replicated([5, 5, 5, 5], [10, 10, 10, 10], 1 / 3)
    assert found.gamma == pytest.approx(0, abs=1e-3)
    assert found.p_alike > 0.4


def test_one_taster_alone() -> None:
    """How tasters differ cannot be told from one."""
    with pytest.raises(ValueError, match="two or more"):
        judge_replicated([5], [10], 1 / 3)
