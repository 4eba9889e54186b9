"""Plain arithmetic of packs and cups: unit prices, strengths and dilutions."""


def unit_price(price: float, net_weight: float) -> float:
    """Price of one unit of weight, in the currency of `price` and the unit of `net_weight`.

    Raises ValueError unless the weight is above 0 and the price not below.

    >>> unit_price(50, 40)  # a 40 g tin at 50
    1.25
    """
    if net_weight <= 0 or price < 0:
        raise ValueError(f"a price of {price} for {net_weight}: the weight must be above 0 and the price not below")
    return price / net_weight


def dose_per_100_ml(grams: float, millilitres: float) -> float:
    """Grams of the product to 100 ml of water.

    Raises ValueError unless the water is above 0 ml and the dose not below 0 g.

    >>> dose_per_100_ml(3.75, 40)  # thick powdered tea, common practice, no source
    9.375
    >>> round(dose_per_100_ml(8.25, 150), 2)  # coffee cupping, a trade association's published protocol, from memory
    5.5
    """
    if millilitres <= 0 or grams < 0:
        raise ValueError(f"{grams} g in {millilitres} ml: the water must be above 0 ml and the dose not below 0 g")
    return grams * 100 / millilitres


def dilute(strength: float, volume: float, added: float) -> float:
    """Strength after `added` of water (or milk) joins `volume`, both in one unit; the strength keeps its own.

    Raises ValueError unless the volume is above 0 and nothing is below 0.

    >>> dilute(40, 50, 50)  # a spirit of 40 % with as much water
    20.0
    """
    if volume <= 0 or added < 0 or strength < 0:
        raise ValueError(f"{added} added to {volume}: the volume must be above 0 and nothing below 0")
    return strength * volume / (volume + added)
