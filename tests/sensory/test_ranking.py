"""Rankings, profiles and order, against published examples."""

import numpy as np
import pytest
from numpy.typing import NDArray

from notesmith.sensory.dominance import Sip, dominance
from notesmith.sensory.positions import drift, first_favoured
from notesmith.sensory.posthoc import conover, nemenyi
from notesmith.sensory.profiles import cochran, intensity, presence
from notesmith.sensory.ranking import concordance, trend

WINE = np.array([[10, 8, 7, 9, 7, 4, 5, 6, 5, 10, 4, 7], [7, 5, 8, 6, 5, 7, 9, 6, 4, 6, 7, 3],
                 [8, 5, 6, 4, 7, 5, 3, 7, 6, 4, 4, 3]]).T  # fmt: skip
PAGE = np.array(
    [[3, 4, 3], [2, 2, 4], [3, 3, 5], [1, 3, 2], [2, 3, 2], [2, 4, 5], [1, 2, 4], [3, 4, 4], [2, 4, 5], [1, 3, 4]]
)
BLOCKS = np.array([[4, 3, 4, 4, 5, 6, 3], [1, 2, 3, 5, 6, 7, 7], [1, 2, 6, 4, 1, 5, 1]])
ANXIETY = np.array([
    [3, 3, 3, 4, 5, 5, 2, 3, 5, 2, 2, 6, 1, 5, 2, 2, 1, 2, 4, 3],
    [3, 6, 4, 6, 2, 4, 2, 4, 3, 3, 2, 3, 3, 3, 2, 2, 1, 3, 3, 4],
    [2, 1, 4, 4, 3, 2, 1, 6, 1, 1, 1, 2, 3, 3, 1, 1, 3, 3, 2, 2],
])  # fmt: skip


def test_wine() -> None:
    """12 judges of three wines: Q 2, p .3679, W .0833: pingouin's tests, after R's friedman.test. Seen."""
    found = concordance(WINE)
    assert found.statistic == pytest.approx(2.0)
    assert found.p == pytest.approx(0.367879, abs=1e-6)
    assert found.w == pytest.approx(0.083333, abs=1e-6)
    assert found.rank_sums == (27.5, 23.5, 21.0)


@pytest.mark.parametrize(
    ("columns", "statistic", "p"),
    [([[7.0, 9.9, 8.5, 5.1, 10.3], [5.3, 5.7, 4.7, 3.5, 7.7], [4.9, 7.6, 5.5, 2.8, 8.4], [8.8, 8.9, 8.1, 3.3, 9.1]],
      10.68, 0.0135882729582176),
     ([[9, 9.5, 5, 7.5, 9.5, 7.5, 8, 7, 8.5, 6], [7, 6.5, 7, 7.5, 5, 8, 6, 6.5, 7, 7],
       [6, 8, 4, 6, 7, 6.5, 6, 4, 6.5, 3]],
      10.4737, 0.005317)],
)  # fmt: skip
def test_friedman(columns: list[list[float]], statistic: float, p: float) -> None:
    """Zar's example 12.6, and one with ties: SciPy's tests. Seen."""
    found = concordance(np.array(columns).T)
    assert found.statistic == pytest.approx(statistic, abs=5e-5)
    assert found.p == pytest.approx(p, abs=1e-6)


def test_agreement_is_among_tasters() -> None:
    """Three raters of 20 subjects, W .5397 corrected for ties: data of R's irr (seen); the value is computed."""
    assert concordance(ANXIETY).w == pytest.approx(0.5396569, abs=1e-6)


def test_page() -> None:
    """L 133.5 with its exact p: SciPy's documentation, after statext. Seen."""
    found = trend(PAGE)
    assert (found.statistic, found.p) == (133.5, pytest.approx(0.0018191161948127822, abs=1e-12))


def test_nemenyi() -> None:
    """Three pairs of seven samples: scikit-posthocs' tests. Seen."""
    found = {(at.one, at.other): at.p for at in nemenyi(BLOCKS)}
    assert [found[0, 1], found[0, 2], found[0, 5]] == pytest.approx([0.9999999, 0.8414506, 0.2147827], abs=1e-6)


def test_conover() -> None:
    """The same by Conover's t, uncorrected: scikit-posthocs' tests. Seen."""
    found = {(at.one, at.other): at.p for at in conover(BLOCKS, holm=False)}
    assert [found[0, 1], found[0, 2], found[0, 5]] == pytest.approx([0.9147508, 0.1518030, 0.0181602], abs=1e-6)


def test_many_looks_are_corrected() -> None:
    """With Holm's correction no p is smaller, and the smallest is as many times larger as there are pairs."""
    plain, holm = ([at.p for at in conover(PAGE, holm=holm)] for holm in (False, True))
    assert all(one >= other for one, other in zip(holm, plain, strict=True))
    assert min(holm) == pytest.approx(3 * min(plain))


@pytest.mark.parametrize("table", [[], [[1, 2, 3]], [[1, 2], [2, 1]]])
def test_too_little_to_rank(table: list[list[float]]) -> None:
    """Nothing, one taster or two samples make no ranking."""
    with pytest.raises(ValueError, match="two tasters"):
        concordance(table)


def test_gaps_are_refused() -> None:
    """A score that is missing is not guessed."""
    with pytest.raises(ValueError, match="every sample"):
        concordance([[1, 2, 3], [1, np.nan, 3]])


def test_all_alike() -> None:
    """Nothing is ranked where all samples are put alike."""
    with pytest.raises(ValueError, match="nothing to rank"):
        concordance([[1, 1, 1], [2, 2, 2]])


def test_cochran() -> None:
    """Found by 9, 3 and 3 of ten: by hand, Q = 2 · (3 · 99 − 15²) / (3 · 15 − 33)."""
    found: NDArray[np.int64] = np.array([[1, 1, 1]] * 2 + [[1, 1, 0]] + [[1, 0, 1]] + [[1, 0, 0]] * 5 + [[0, 0, 0]])
    assert cochran(found)[0] == pytest.approx(2 * (3 * 99 - 15**2) / (3 * 15 - (9 * 2 + 4 * 2 + 5)))


def test_share_without_looks() -> None:
    """Where nobody looked nothing was found, nor missed."""
    with pytest.raises(ValueError, match="there must be looks"):
        presence(0, 0)


def test_strength_with_interval() -> None:
    """Mean and Student's interval, cut to what the scale holds: by hand 2.5 ± 3.182 · 0.2887."""
    found = intensity([2, 3, 2, 3])
    assert (found.value, found.low, found.high) == (2.5, pytest.approx(1.5813, abs=1e-3), 3.0)


def test_sips_of_different_lengths() -> None:
    """A sip of ten seconds and one of two are laid upon each other: by hand."""
    found = dominance(
        [Sip(0, 10, ((0, "sweet"), (5, "bitter"))), Sip(20, 22, ((20, "sweet"), (21, "bitter")))], steps=10
    )
    assert list(found.curves) == ["sweet", "bitter"]
    assert found.curves["bitter"].tolist() == [0] * 5 + [1] * 6
    assert (found.chance, found.significant) == (0.5, np.inf)


def test_few_sips_prove_nothing() -> None:
    """With 19 sensations one sip of three is still chance (p = .15 each), two are not: by hand."""
    names = [f"term {number}" for number in range(19)]
    sips = [Sip(0, 20, tuple((float(at), name) for at, name in enumerate(names))) for _ in range(3)]
    assert dominance(sips).significant == pytest.approx(2 / 3)


def test_dominance_needs_sips() -> None:
    """Without a sensation there is no curve."""
    with pytest.raises(ValueError, match="no sip"):
        dominance([])


def test_sensation_outside_of_its_sip() -> None:
    """A sensation named after the sip is not laid into it."""
    with pytest.raises(ValueError, match="lie in it"):
        dominance([Sip(0, 5, ((6, "sweet"),))])


def test_drift_of_five_places() -> None:
    """Five figures that only grow: two orders of 120 are as even."""
    assert drift([1, 2, 3, 4, 5]).p == pytest.approx(2 / 120)


def test_no_drift_in_what_is_alike() -> None:
    """Figures that are all alike drift nowhere."""
    with pytest.raises(ValueError, match="all alike"):
        drift([2, 2, 2])


def test_first_cup_wins_half() -> None:
    """Five of ten for the cup tasted first say nothing."""
    assert first_favoured(5, 10).p == 1.0
