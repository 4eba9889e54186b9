"""Unit prices, strengths and dilutions."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from notesmith.sensory.value import dilute, dose_per_100_ml, unit_price

AMOUNTS = st.floats(min_value=0.01, max_value=10_000)


def test_nothing_weighs_nothing() -> None:
    """A pack without weight has no unit price."""
    with pytest.raises(ValueError, match="above 0"):
        unit_price(5, 0)


def test_no_water_no_strength() -> None:
    """A dose without water has no strength."""
    with pytest.raises(ValueError, match="above 0 ml"):
        dose_per_100_ml(2, 0)


def test_nothing_to_dilute() -> None:
    """Nothing cannot be diluted."""
    with pytest.raises(ValueError, match="above 0"):
        dilute(40, 0, 10)


def test_standard_brew_of_tea_for_testing() -> None:
    """ISO 3103 (from memory): 2 g to 100 ml."""
    assert dose_per_100_ml(2, 100) == 2


def test_thick_powdered_tea_is_many_times_thin() -> None:
    """By hand: 3.75 g in 40 ml is 9.375 g, 1 g in 60 ml is 1.67 g to 100 ml; common practice, no source."""
    assert dose_per_100_ml(3.75, 40) / dose_per_100_ml(1, 60) == pytest.approx(5.625)


@given(strength=AMOUNTS, volume=AMOUNTS, added=AMOUNTS)
def test_diluting_keeps_what_is_dissolved(strength: float, volume: float, added: float) -> None:
    """Water changes the strength and not the amount of what is dissolved."""
    assert dilute(strength, volume, added) * (volume + added) == pytest.approx(strength * volume)
