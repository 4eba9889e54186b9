"""Wishes for a small tasting."""

import pytest

from notesmith.planning.wishes import WishedPreparation, WishedProduct, Wishes


@pytest.fixture
def wishes() -> Wishes:
    """Three teas, one of them poured twice, in one published preparation, for two tasters."""
    return Wishes(
        title="Three hill oolongs",
        category="oolong tea",
        tasters=("Ana", "Bram"),
        products=(
            WishedProduct(name="Spring oolong", duplicates=1, net_weight=10, price=9, currency="EUR"),
            WishedProduct(name="Winter oolong"),
            WishedProduct(name="Roasted oolong"),
        ),
        preparations=(WishedPreparation(id="standard", method="iso-3103-small"),),
    )
