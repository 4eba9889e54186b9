"""What is wished of a tasting: products, preparations and tasters, filled in by hand and read from TOML or JSON."""

from collections.abc import Iterable
from pathlib import Path
from random import Random
from typing import Literal

from pydantic import Field

from notesmith.errors import SheetError
from notesmith.filled_in import Form, read_filled_in
from notesmith.planning.methods import every_method
from notesmith.records import Record, SheetSample

Test = Literal["triangle", "tetrad", "two-out-of-five"]
POURED: dict[Test, tuple[int, int]] = {"triangle": (2, 1), "tetrad": (2, 2), "two-out-of-five": (3, 2)}
"""How often a test of difference pours its two products; chance decides which of them more often."""

DRUNK = 40.0
"""Millilitres that a taster is given of a sample, unless told otherwise; common practice, no source."""


class WishedProduct(Record):
    """One product to taste; all but its name and its duplicates goes into the sealed key as it stands."""

    name: str = Field(description="What it is.")
    duplicates: int = Field(0, ge=0, description="How many times it is poured once more under another code.")
    price: float | None = Field(None, ge=0, description="Price of one pack, in `currency`.")
    currency: str | None = Field(None, description="Currency of the price, as an ISO 4217 code.")
    net_weight: float | None = Field(None, gt=0, description="Net weight of one pack in grams.")
    harvest: str | None = Field(None, description="When it was picked or made.")
    origin: str | None = Field(None, description="Where it was grown or made.")
    cultivar: str | None = Field(None, description="Cultivar, grape variety or breed.")
    process: str | None = Field(None, description="How it was made.")
    description: str | None = Field(None, description="What its maker or seller says of it.")

    def under(self, code: str, aliases: tuple[str, ...]) -> SheetSample:
        """The product as the sample of this code."""
        known = self.model_dump(exclude={"name", "duplicates"})
        return SheetSample(id=code, aliases=aliases, product=self.name, **known)


class WishedPreparation(Record):
    """One way to prepare the samples: a published method by name, or amounts of one's own, which go before it."""

    id: str = Field(description="Short name of the preparation.")
    aliases: tuple[str, ...] = Field((), description="Other names it is called by on the recording.")
    method: str | None = Field(None, description="A published method; `notesmith plan methods` lists them.")
    dose: float | None = Field(None, gt=0, description="Amount of the product in grams.")
    water: float | None = Field(None, gt=0, description="Amount of water or milk in millilitres.")
    pour: float | None = Field(None, gt=0, description="Amount poured of a drink as it is, in millilitres.")
    temperature: float | None = Field(None, description="Temperature in degrees Celsius.")
    time: float | None = Field(None, gt=0, description="Time in seconds.")
    vessel: str | None = Field(None, description="What it is prepared in.")
    pots: int | None = Field(None, gt=0, description="How many are made of each sample; as many as needed if left out.")


class Wishes(Record):
    """All that a plan is drawn from."""

    title: str = Field("", description="What the session is called.")
    category: str = Field("", description="What kind of product is tasted.")
    tasters: tuple[str, ...] = Field((), description="Who tastes.")
    test: Test | None = Field(None, description="A test of difference between two products, in place of `duplicates`.")
    repeats: int = Field(1, ge=1, description="How many rounds there are: each sample comes in each, under a new code.")
    drunk: float = Field(DRUNK, gt=0, description="How much a taster is given of a sample, in millilitres.")
    spare: float = Field(0.1, ge=0, le=1, description="What to buy and heat beyond what is used, as a share.")
    pause: float = Field(60, ge=0, description="Seconds between two samples.")
    rest: float = Field(300, ge=0, description="Seconds of a longer rest.")
    rest_after: int = Field(4, ge=0, description="After how many samples the longer rest comes; 0 for never.")
    cleanser: str = Field("water and a plain cracker", description="What clears the palate.")
    products: tuple[WishedProduct, ...] = Field((), description="What is tasted.")
    preparations: tuple[WishedPreparation, ...] = Field((), description="How it is prepared.")

    @property
    def served(self) -> int:
        """How many samples a round has."""
        return sum(POURED[self.test]) if self.test else sum(1 + product.duplicates for product in self.products)

    def most_poured(self, product: WishedProduct) -> int:
        """How often a product may come in a round; in a test nobody who reads this learns how often it does."""
        return max(POURED[self.test]) if self.test else 1 + product.duplicates

    def cups(self, random: Random) -> tuple[WishedProduct, ...]:
        """The products of one round, those poured more than once as often as they are."""
        if self.test:
            dealt = zip(random.sample(self.products, 2), POURED[self.test], strict=True)
            return tuple(product for product, times in dealt for _ in range(times))
        return tuple(product for product in self.products for _ in range(1 + product.duplicates))


WISHES = Form(
    Wishes,
    {"products": WishedProduct, "preparations": WishedPreparation},
    called="the plan",
    begun_with="notesmith plan new",
)


def read_wishes(path: Path) -> Wishes:
    """Read what is wished of a tasting.

    Raises:
        SheetError: it cannot be read, or no fair tasting can be made of it.
    """
    wishes = read_filled_in(path, WISHES)
    try:
        check(wishes)
    except SheetError as error:
        raise SheetError(error.what, where=str(path), mend=error.mend) from None
    return wishes


def check(wishes: Wishes) -> None:
    """Refuse wishes of which no fair tasting can be made.

    Raises:
        SheetError: fewer than two samples, nobody to taste them, a name twice or a method that is not known.
    """
    if wishes.test:
        _check_test(wishes)
    if wishes.served < 2:
        raise SheetError("there are not two samples to compare", mend="add [[products]], each with a name")
    if not wishes.tasters:
        raise SheetError("nobody tastes", mend='name whoever does, such as tasters = ["Ana"]')
    _refuse_twice("product", (product.name for product in wishes.products), "give `duplicates` to pour it again")
    _refuse_twice("taster", wishes.tasters, "call each by a name of their own")
    _refuse_twice("preparation", (way.id for way in wishes.preparations), "call each by a name of its own")
    for way in wishes.preparations:
        if way.method is not None and way.method not in every_method():
            what = f"preparation {way.id}: there is no method `{way.method}`"
            raise SheetError(what, mend="see `notesmith plan methods`")


def _check_test(wishes: Wishes) -> None:
    if len(wishes.products) != 2 or any(product.duplicates for product in wishes.products):
        raise SheetError(f"a {wishes.test} is of two products without duplicates", mend="list these two alone")
    if wishes.repeats > 1:
        raise SheetError(f"a {wishes.test} is one round", mend="leave `repeats` out, and draw a plan for each session")


def _refuse_twice(kind: str, names: Iterable[str], mend: str) -> None:
    seen: set[str] = set()
    for name in names:
        if not name.strip():
            raise SheetError(f"a {kind} has no name", mend="give it one")
        if name.strip().casefold() in seen:
            raise SheetError(f"the {kind} `{name}` stands twice", mend=mend)
        seen.add(name.strip().casefold())
