"""Offers read from a table and set beside each other: what each costs, and which are worth it."""

import csv
from collections import Counter
from collections.abc import Sequence
from dataclasses import dataclass
from pathlib import Path
from typing import Literal

from notesmith.errors import NotesmithError
from notesmith.publishing.charts.paper import Paper
from notesmith.publishing.charts.png import png
from notesmith.publishing.charts.svg import svg
from notesmith.publishing.charts.value import Point, value_chart
from notesmith.publishing.files import write_file
from notesmith.records import Sheet
from notesmith.sensory.amounts import Amount, amount
from notesmith.sensory.frontier import frontier, knee
from notesmith.sensory.prices import Money, Rates, Serving, Unit, drunk_price, serving_price, unit_price
from notesmith.sheet import SUFFIXES, read_sheet

By = Literal["100 g", "kg", "100 ml", "l", "serving", "litre drunk"]
NEEDED = ("name", "price", "currency", "pack")
COLUMNS = (*NEEDED, "score", "dose", "infusions", "drunk")


class OfferError(NotesmithError):
    """A table of offers that cannot be read, or whose prices cannot be set beside each other."""

    exit_status = 2


@dataclass(frozen=True)
class Offer:
    """One pack for sale."""

    name: str
    price: Money
    pack: Amount
    score: float | None
    serving: Serving | None


def offers_of(path: Path, preparation: str | None) -> list[Offer]:
    """Read offers from a table, or from a tasting sheet with the dose and water of its preparation.

    Raises:
        OfferError: as in `read_offers`, or the sheet has several preparations, or none of that name.
    """
    if not path.name.endswith(SUFFIXES):
        return read_offers(path)
    sheet = read_sheet(path)
    serving = _serving(sheet, preparation, str(path))
    offers = (
        Offer(at.product or at.id, Money(at.price, at.currency), Amount(at.net_weight, "weight"), None, serving)
        for at in sheet.samples
        if at.price is not None and at.currency and at.net_weight
    )
    return list(dict.fromkeys(offers))  # a product that is poured twice is one offer


def _serving(sheet: Sheet, preparation: str | None, where: str) -> Serving | None:
    ways = [at for at in sheet.preparations if preparation in {None, at.id}]
    if preparation and not ways:
        raise OfferError(f"has no preparation {preparation!r}", where=where)
    if len(ways) > 1:
        mend = f"name one with --preparation: {', '.join(at.id for at in ways)}"
        raise OfferError("has several preparations", where=where, mend=mend)
    if not ways or ways[0].dose is None:
        return None
    return Serving(Amount(ways[0].dose, "weight"), 1, ways[0].water or 0.0)


def read_offers(path: Path) -> list[Offer]:
    """Read a CSV table with the columns name, price, currency and pack, and score, dose, infusions, drunk if known.

    Raises:
        OfferError: it cannot be read, lacks a column, or a row holds what is none.
    """
    try:
        lines = path.read_text("utf-8-sig").splitlines()
    except (OSError, UnicodeDecodeError) as error:
        raise OfferError(f"cannot be read: {error}", where=str(path)) from None
    rows = list(csv.DictReader(lines))
    missing = [name for name in NEEDED if not rows or name not in rows[0]]
    if missing:
        raise OfferError(f"has no column {missing[0]}", where=str(path), mend=f"its columns: {', '.join(COLUMNS)}")
    offers = [_offer(row, f"{path} row {number}") for number, row in enumerate(rows, start=2)]
    twice = next((name for name, count in Counter(at.name for at in offers).items() if count > 1), None)
    if twice:
        raise OfferError(f"two offers are called {twice}", where=str(path), mend="add the pack to their names")
    return offers


def _offer(row: dict[str, str], where: str) -> Offer:
    def given(name: str) -> str:
        return (row.get(name) or "").strip()

    try:
        price, score = float(given("price")), float(given("score")) if given("score") else None
        serving = None
        if given("dose"):
            drunk = amount(given("drunk")).value if given("drunk") else 0.0
            serving = Serving(amount(given("dose")), int(given("infusions") or 1), drunk)
        if price < 0 or not given("currency") or not given("name"):
            raise ValueError("an offer needs a name, a price and its currency")
        return Offer(given("name"), Money(price, given("currency").upper()), amount(given("pack")), score, serving)
    except ValueError as error:
        raise OfferError(str(error), where=where) from None


def priced(offer: Offer, by: By, rates: Rates | None) -> Money:
    """What an offer costs by weight, volume, serving or litre as drunk.

    Raises:
        OfferError: its currency has no rate, or it has no such price.
    """
    try:
        price = rates.convert(offer.price) if rates else offer.price
        if by not in ("serving", "litre drunk"):
            return unit_price(price, offer.pack, _unit(by))
        if offer.serving is None:
            raise ValueError("no dose is given, so it has no price by the serving")
        return (serving_price if by == "serving" else drunk_price)(price, offer.pack, offer.serving)
    except ValueError as error:
        raise OfferError(str(error), where=offer.name) from None


def compare(offers: Sequence[Offer], by: By, rates: Rates | None) -> list[Point]:
    """The offers with a score, cheapest first, each told whether it is on the frontier and its knee.

    Raises:
        OfferError: they are in several currencies without rates, or have no such price.
    """
    currencies = sorted({offer.price.currency for offer in offers})
    if len(currencies) > 1 and not rates:
        mend = f"give a rate, such as --into {currencies[0]} --rate {currencies[1]}=1.15"
        raise OfferError(f"prices are in {' and '.join(currencies)}", mend=mend)
    prices = [priced(offer, by, rates).value for offer in offers]
    scored = [(offer, price) for offer, price in zip(offers, prices, strict=True) if offer.score is not None]
    figures = [price for _, price in scored], [offer.score or 0.0 for offer, _ in scored]
    best, bend = set(frontier(*figures)), knee(*figures) if scored else None
    points = [Point(at.name, price, at.score or 0.0, n in best, n == bend) for n, (at, price) in enumerate(scored)]
    return sorted(points, key=lambda at: (at.price, at.name))


def tell_value(offers: Sequence[Offer], by: By, rates: Rates | None) -> str:
    """The prices of all offers, the frontier and its knee, and what may be claimed."""
    points = {at.name: at for at in compare(offers, by, rates)}
    lines = [f"Price by {by}"]
    for offer in sorted(offers, key=lambda at: (priced(at, by, rates).value, at.name)):
        score = f"score {offer.score:g}" if offer.score is not None else "no score"
        lines.append(f"  {priced(offer, by, rates)!s:>14}  {offer.name} ({offer.pack}), {score}{_sign(points, offer)}")
    return "\n".join((*lines, *_claim(list(points.values())), ""))


def draw_value(offers: Sequence[Offer], by: By, rates: Rates | None) -> Paper | None:
    """The chart of all offers with a score; None where there are none."""
    points = compare(offers, by, rates)
    currency = rates.into if rates else offers[0].price.currency if offers else ""
    return value_chart(points, "What is worth its price", f"{currency} by {by}")


def _unit(by: By) -> Unit:
    units: dict[str, Unit] = {"100 g": "100 g", "kg": "kg", "100 ml": "100 ml", "l": "l"}
    return units[by]


def _sign(points: dict[str, Point], offer: Offer) -> str:
    at = points.get(offer.name)
    return "" if not at or not at.best else ", the knee" if at.knee else ", on the frontier"


def _claim(points: Sequence[Point]) -> tuple[str, ...]:
    bend = next((at.name for at in points if at.knee), None)
    if len(points) < 3:
        return ()
    says = (
        f"Beyond {bend} a higher price buys ever less" if bend else "No offer marks where a higher price stops paying"
    )
    weakest = "Weakest link: each score is taken as exact; score them again to see whether the frontier keeps."
    return (f"  {says} (n = {len(points)} offers).", f"  {weakest}")


def rates_of(into: str | None, given: Sequence[str]) -> Rates | None:
    """Rates as typed, such as `GBP=1.15`.

    Raises:
        OfferError: one is no rate, or no currency is named to convert into.
    """
    worth: dict[str, float] = {}
    for text in given:
        code, _, figure = text.partition("=")
        try:
            worth[code.strip().upper()] = float(figure)
        except ValueError:
            raise OfferError(f"{text!r} is no rate", mend="write one such as GBP=1.15") from None
    if worth and not into:
        raise OfferError("rates need a currency to convert into", mend="name it with --into")
    return Rates(into.upper(), worth) if into else None


def write_chart(paper: Paper | None, path: Path, *, force: bool) -> None:
    """Write the chart as SVG or PNG, as the file is called."""
    if paper is None:
        raise OfferError("no offer has a score", mend="fill in the column score, or leave out --chart")
    if path.suffix == ".svg":
        write_file(path, svg(paper), force=force)
    elif path.suffix == ".png":
        write_file(path, png(paper), force=force)
    else:
        raise OfferError("a chart is an .svg or a .png", where=str(path))
