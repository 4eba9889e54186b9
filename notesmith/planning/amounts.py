"""What to weigh and heat for each preparation, and what is needed of everything."""

import math
from collections.abc import Iterable, Iterator
from dataclasses import dataclass

from notesmith.planning.methods import Method, every_method
from notesmith.planning.wishes import WishedPreparation, WishedProduct, Wishes
from notesmith.records import SheetPreparation


@dataclass(frozen=True)
class Brew:
    """How one pot is made: grams, millilitres, degrees Celsius and seconds; and how many of them a round takes."""

    id: str
    aliases: tuple[str, ...]
    method: Method | None
    dose: float | None
    tolerance: float | None
    water: float | None
    pour: float | None
    temperature: float | None
    times: tuple[float, ...]
    vessel: str
    pots: int

    @property
    def heated(self) -> float:
        """Millilitres of water that one pot takes, over all its infusions."""
        return (self.water or 0) * max(1, len(self.times))

    def for_sheet(self) -> SheetPreparation:
        """The preparation as the tasting sheet lists it; of several infusions, the time of the first."""
        return SheetPreparation(
            id=self.id, aliases=self.aliases, dose=self.dose, water=self.water, temperature=self.temperature,
            time=self.times[0] if self.times else None,
        )  # fmt: skip


def brews_of(wishes: Wishes) -> tuple[Brew, ...]:
    """How each preparation is made: what is wished goes before what its method says.

    Where only the water is wished, the method's dose is kept in proportion to it; where only the dose is, the water.
    """
    return tuple(_brew(way, wishes) for way in wishes.preparations)


def _brew(way: WishedPreparation, wishes: Wishes) -> Brew:
    method = every_method()[way.method] if way.method else None
    published = method or Method(id="", name="", source="")
    dose, water = _in_proportion(way, published)
    pour = way.pour or published.pour
    volume = (water or 0) * max(1, len(published.infusions)) or pour
    return Brew(
        id=way.id, aliases=way.aliases, method=method, dose=dose,
        tolerance=published.tolerance if dose == published.dose else None,
        water=water, pour=pour,
        temperature=published.temperature if way.temperature is None else way.temperature,
        times=_times(way, published), vessel=way.vessel or published.vessel or _unnamed(way, volume),
        pots=way.pots or _pots(volume, published.pots or 1, wishes),
    )  # fmt: skip


def _unnamed(way: WishedPreparation, volume: float | None) -> str:
    """What a preparation is made in, where nobody says and something is poured."""
    return f"vessel for {way.id}" if volume else ""


def _in_proportion(way: WishedPreparation, method: Method) -> tuple[float | None, float | None]:
    """Dose in grams and water in millilitres."""
    dose, water = way.dose or method.dose, way.water or method.water
    if method.dose and method.water and way.water and not way.dose:
        dose = round(method.dose * way.water / method.water, 2)
    if method.dose and method.water and way.dose and not way.water:
        water = round(method.water * way.dose / method.dose)
    return dose, water


def _times(way: WishedPreparation, method: Method) -> tuple[float, ...]:
    """Seconds of each infusion."""
    if way.time:
        return (way.time,)
    return method.infusions or ((method.time,) if method.time else ())


def _pots(volume: float | None, made: int, wishes: Wishes) -> int:
    """How many pots all tasters need of one sample; one each where it is nothing to pour from."""
    each = max(1, int(volume * made // wishes.drunk)) if volume else made
    return made * math.ceil(len(wishes.tasters) / each)


@dataclass(frozen=True)
class Need:
    """Something to have ready: how much of what, and a word about it."""

    amount: float
    unit: str
    what: str
    remark: str = ""


def needs_of(wishes: Wishes, brews: Iterable[Brew]) -> tuple[Need, ...]:
    """What the whole tasting takes: each product, the water, the vessels in use at once, and the tasters' cups."""
    brews = tuple(brews)
    return (*_products(wishes, brews), *_water(wishes, brews), *_vessels(wishes, brews))


def _products(wishes: Wishes, brews: tuple[Brew, ...]) -> Iterator[Need]:
    for product in wishes.products:
        pots = wishes.repeats * wishes.most_poured(product)
        grams = sum((brew.dose or 0) * brew.pots for brew in brews) * pots * (1 + wishes.spare)
        poured = sum((brew.pour or 0) * brew.pots for brew in brews) * pots * (1 + wishes.spare)
        if grams:
            yield Need(_up(grams), "g", product.name, _packs(grams, product))
        elif poured:
            yield Need(_up(poured), "ml", product.name)


def _packs(grams: float, product: WishedProduct) -> str:
    if product.net_weight is None:
        return ""
    packs = math.ceil(round(grams / product.net_weight, 6))
    return f"{packs} pack{'s' if packs > 1 else ''} of {product.net_weight:g} g"


def _water(wishes: Wishes, brews: tuple[Brew, ...]) -> Iterator[Need]:
    used = sum(brew.heated * brew.pots for brew in brews) * wishes.served * wishes.repeats
    if used:
        yield Need(_up(used * (1 + wishes.spare) / 1000, 1), "l", "water for the preparations")


def _vessels(wishes: Wishes, brews: tuple[Brew, ...]) -> Iterator[Need]:
    """The most that are in use at once; they are washed between rounds."""
    most: dict[str, int] = {}
    for brew in filter(lambda brew: brew.vessel, brews):
        most[brew.vessel] = max(most.get(brew.vessel, 0), brew.pots * wishes.served)
    yield from (Need(count, "×", vessel, "washed between rounds") for vessel, count in most.items())
    shared = any(brew.pots < len(wishes.tasters) or brew.heated for brew in brews)
    if shared or not brews:
        cups = wishes.served * len(wishes.tasters)
        yield Need(cups, "×", "tasting cup", "alike, and marked with nothing but the code")


def _up(amount: float, digits: int = 0) -> float:
    """The amount rounded up, but not for what arithmetic alone has added."""
    scale: float = 10**digits
    return math.ceil(round(amount * scale, 6)) / scale
