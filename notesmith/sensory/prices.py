"""What an offer costs: by weight or volume, by the serving, by the litre as drunk; currencies never mixed silently.

A unit price is the final price, tax included, for one kilogram or litre (Directive 98/6/EC, from memory).
"""

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Literal

from notesmith.sensory import value
from notesmith.sensory.amounts import Amount, Dimension

Unit = Literal["100 g", "kg", "100 ml", "l"]
MEASURES: dict[Unit, tuple[Dimension, float]] = {
    "100 g": ("weight", 100), "kg": ("weight", 1000), "100 ml": ("volume", 100), "l": ("volume", 1000),
}  # fmt: skip


@dataclass(frozen=True)
class Money:
    """A sum in a currency, by its ISO 4217 code."""

    value: float
    currency: str

    def __str__(self) -> str:
        return f"{self.value:.2f} {self.currency}"


@dataclass(frozen=True)
class Serving:
    """How much of a product goes into one serving, and how much drink comes of it."""

    dose: Amount
    infusions: int = 1
    drunk: float = 0.0
    """Millilitres of each infusion; 0 where nothing is poured on."""


@dataclass(frozen=True)
class Rates:
    """Rates of exchange, as the user gives them: what one unit of each currency is worth in `into`."""

    into: str
    worth: Mapping[str, float]

    def convert(self, money: Money) -> Money:
        """The sum in the currency of these rates.

        >>> str(Rates("EUR", {"GBP": 1.15}).convert(Money(20, "GBP")))
        '23.00 EUR'

        Raises:
            ValueError: no rate was given for its currency, or one that is not above 0.
        """
        if money.currency == self.into:
            return money
        rate = self.worth.get(money.currency, 0.0)
        if not rate > 0:
            raise ValueError(f"no rate from {money.currency} to {self.into} was given: currencies are never mixed")
        return Money(money.value * rate, self.into)


def unit_price(price: Money, pack: Amount, unit: Unit) -> Money:
    """Price of so much of the product.

    >>> str(unit_price(Money(9, "EUR"), Amount(50, "weight"), "kg"))
    '180.00 EUR'

    Raises:
        ValueError: the pack is sold by weight and the unit is one of volume, or the other way round.
    """
    dimension, size = MEASURES[unit]
    if pack.dimension != dimension:
        raise ValueError(f"a pack of {pack} has no price for {unit}: weight and volume are never mixed")
    return Money(value.unit_price(price.value, pack.value) * size, price.currency)


def serving_price(price: Money, pack: Amount, serving: Serving) -> Money:
    """Price of what goes into one serving.

    >>> str(serving_price(Money(9, "EUR"), Amount(50, "weight"), Serving(Amount(3, "weight"))))
    '0.54 EUR'
    """
    if pack.dimension != serving.dose.dimension:
        raise ValueError(f"{serving.dose} cannot be taken of a pack of {pack}: weight and volume are never mixed")
    return Money(value.unit_price(price.value, pack.value) * serving.dose.value, price.currency)


def drunk_price(price: Money, pack: Amount, serving: Serving) -> Money:
    """Price of one litre as drunk: all infusions of a serving together.

    >>> gongfu = Serving(Amount(5, "weight"), infusions=6, drunk=110)
    >>> str(drunk_price(Money(9, "EUR"), Amount(50, "weight"), gongfu))  # 0.90 for 660 ml
    '1.36 EUR'

    Raises:
        ValueError: nothing is drunk of the serving.
    """
    millilitres = serving.infusions * serving.drunk
    if millilitres <= 0:
        raise ValueError("no litre is drunk of it: say how much water goes onto a serving")
    return Money(serving_price(price, pack, serving).value * 1000 / millilitres, price.currency)
