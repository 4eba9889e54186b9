"""Amounts on packs; each unit with its source."""

import pytest

from notesmith.sensory.amounts import amount


@pytest.mark.parametrize(
    ("text", "value"),
    [("1 fl oz US", 29.5735295625), ("1 fl oz imp", 28.4130625), ("1 fl oz label", 30), ("1 oz av", 28.349523125)],
)
def test_ounces(text: str, value: float) -> None:
    """US and imperial fluid ounces by definition and 30 ml on US labels (seen); the ounce of weight from memory."""
    assert amount(text).value == value


def test_fluid_ounces_differ() -> None:
    """A US fluid ounce is 1.040842731 imperial ones. Seen."""
    assert amount("1 fl oz US").value / amount("1 fl oz imp").value == pytest.approx(1.040842731, abs=5e-10)


@pytest.mark.parametrize("text", ["1 oz", "2 ounces", "5 fl oz", "5 fl. oz."])
def test_an_ounce_alone_is_refused(text: str) -> None:
    """It could be weight or volume, US or imperial."""
    with pytest.raises(ValueError, match="could be several"):
        amount(text)


@pytest.mark.parametrize("text", ["", "50", "g", "50 stone", "0 g", "-5 g", "1,5 kg"])
def test_no_amount(text: str) -> None:
    """What is no amount is refused."""
    with pytest.raises(ValueError, match=r"amount|unit"):
        amount(text)


@pytest.mark.parametrize(("text", "told"), [("0.7 l", "700 ml"), ("2 x 250 g", "500 g"), ("1 KG", "1000 g")])
def test_packs(text: str, told: str) -> None:
    """Larger units and several packs in one."""
    assert str(amount(text)) == told
