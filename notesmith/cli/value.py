"""`notesmith value`: what offers cost by weight, serving or litre, and which are worth it."""

from pathlib import Path
from typing import Annotated, Literal

import typer

from notesmith.cli.speaking import Force, Output, give


def value(
    offers: Annotated[
        Path, typer.Argument(metavar="OFFERS", help="CSV (name, price, currency, pack …), or a tasting sheet.")
    ],
    by: Annotated[
        Literal["100 g", "kg", "100 ml", "l", "serving", "litre drunk"], typer.Option(help="What is paid for.")
    ] = "100 g",
    into: Annotated[
        str | None, typer.Option(metavar="CODE", help="The currency to set prices beside each other in.")
    ] = None,
    rate: Annotated[
        list[str] | None,
        typer.Option(metavar="CODE=WORTH", help="What one unit of a currency is worth; several times."),
    ] = None,
    preparation: Annotated[
        str | None, typer.Option(metavar="ID", help="The preparation of the sheet whose dose and water count.")
    ] = None,
    chart: Annotated[Path | None, typer.Option(metavar="FILE", help="Draw price and score, as .svg or .png.")] = None,
    output: Output = None,
    force: Force = False,
) -> None:
    """Tell what offers cost, which ones none beats in price and score, and where a higher price stops paying.

    \b
    Examples:
      notesmith value offers.csv --by kg
      notesmith value offers.csv --by "litre drunk" --into EUR --rate GBP=1.15 --chart value.svg

    Of a sheet the samples with price, currency and net weight are read, and one infusion of its preparation.
    Of a table the columns score, dose, infusions and drunk may be empty: `3 g`, `6`, `110 ml`.
    Rates are yours, never fetched.
    """
    from notesmith.evidence.offers import draw_value, offers_of, rates_of, tell_value, write_chart

    read, rates = offers_of(offers, preparation), rates_of(into, rate or ())
    give(tell_value(read, by, rates), output, force=force)
    if chart:
        write_chart(draw_value(read, by, rates), chart, force=force)
