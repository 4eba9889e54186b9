"""Amounts as they are printed on packs: weights in grams, volumes in millilitres, and no ounce that could be either."""

import re
from dataclasses import dataclass
from typing import Literal

Dimension = Literal["weight", "volume"]

UNITS: dict[str, tuple[Dimension, float]] = {
    "g": ("weight", 1), "kg": ("weight", 1000), "mg": ("weight", 0.001),
    "oz av": ("weight", 28.349523125), "lb": ("weight", 453.59237),  # exact by agreement of 1959, from memory
    "ml": ("volume", 1), "cl": ("volume", 10), "dl": ("volume", 100), "l": ("volume", 1000),
    "fl oz us": ("volume", 29.5735295625), "fl oz imp": ("volume", 28.4130625),
    "fl oz label": ("volume", 30),  # 21 CFR 101.9(b)(5)(viii)
}  # fmt: skip
"""Units, what they measure, and how many grams or millilitres they are."""


@dataclass(frozen=True)
class Amount:
    """A weight in grams or a volume in millilitres."""

    value: float
    dimension: Dimension

    def __str__(self) -> str:
        return f"{self.value:g} {'g' if self.dimension == 'weight' else 'ml'}"


def amount(text: str) -> Amount:
    """Read an amount such as `50 g`, `0.7 l` or `5 fl oz US`; several packs in one are written `3 x 25 g`.

    >>> str(amount("3 x 25 g")), str(amount("1 fl oz US"))
    ('75 g', '29.5735 ml')

    Raises:
        ValueError: the unit is unknown or could mean two things, or the amount is not above 0.
    """
    found = re.fullmatch(r"(?:(\d+)\s*[x×]\s*)?(\d+(?:\.\d+)?)\s*([a-z][a-z. ]*)", text.strip().casefold())
    if not found:
        raise ValueError(f"{text!r} is no amount: write one such as `50 g`, `0.7 l` or `3 x 25 g`")
    packs, number, unit = int(found[1] or 1), float(found[2]), " ".join(found[3].replace(".", " ").split())
    if unit in {"oz", "ounce", "ounces", "fl oz"}:
        raise ValueError(f"{text!r} could be several amounts: write `oz av`, `fl oz US`, `fl oz imp` or `fl oz label`")
    if unit not in UNITS:
        raise ValueError(f"{text!r}: the unit is none of {', '.join(UNITS)}")
    dimension, factor = UNITS[unit]
    value = packs * number * factor
    if value <= 0:
        raise ValueError(f"{text!r}: an amount must be above 0")
    return Amount(value, dimension)
