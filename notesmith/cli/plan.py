"""`notesmith plan`: a fair tasting, from what is wished to the reveal."""

from pathlib import Path
from typing import Annotated, Literal

import typer

from notesmith.cli.speaking import Force, Output, give

app = typer.Typer(help="Plan a fair tasting: codes, orders, amounts, cards, and a sealed key.", no_args_is_help=True)


@app.command()
def new(output: Output = None, force: Force = False) -> None:
    """Write an empty plan with a word about every field.

    \b
    Example:
      notesmith plan new --output oolongs.plan.toml
    """
    from notesmith.planning.files import plan_template

    give(plan_template(), output, force=force)


@app.command()
def methods() -> None:
    """List the published ways of preparing that a plan can ask for by name."""
    from notesmith.planning.files import told_methods

    give(told_methods())


@app.command()
def draw(
    plan: Annotated[Path, typer.Argument(metavar="PLAN", help="The plan as you filled it in.")],
    to: Annotated[Path, typer.Option("--to", metavar="DIR", help="The folder that the files go into.")],
    paper: Annotated[Literal["A4", "letter"], typer.Option(help="What the cards are printed on.")] = "A4",
    seed: Annotated[
        str | None,
        typer.Option(metavar="TEXT", help="Draw the same plan again; keep it secret, for it opens the key."),
    ] = None,
    after: Annotated[
        list[Path] | None,
        typer.Option(metavar="SHEET", help="An earlier sheet, whose codes are not used again; several times."),
    ] = None,
    force: Force = False,
) -> None:
    """Draw codes and orders; write the sheet, the sealed key and the cards.

    \b
    Writes NAME.sheet.toml     what taking notes reads; it may be shown
           NAME.key.json       which code is which; nobody who tastes may see it
           NAME.pouring.html   for whoever pours, with the key
           NAME.tasting.html   a card of each taster for every round

    \b
    Examples:
      notesmith plan draw oolongs.plan.toml --to oolongs/
      notesmith plan draw oolongs.plan.toml --to oolongs/ --paper letter --after earlier.sheet.toml
    """
    from notesmith.planning.files import draw_files

    drawn = draw_files(plan, to, paper, seed=seed, after=after or (), force=force)
    for path in drawn.written:
        typer.echo(path)
    for line in drawn.said:
        typer.echo(f"notesmith: {line}", err=True)


@app.command()
def reveal(
    sealed: Annotated[Path, typer.Argument(metavar="SHEET", help="The sealed sheet, or notes taken with it.")],
    key: Annotated[Path, typer.Option(metavar="KEY", help="The key that was sealed.")],
    output: Output = None,
    force: Force = False,
) -> None:
    """Prove that the key is the one that was sealed, and fill the products in.

    \b
    Examples:
      notesmith plan reveal oolongs.sheet.toml --key oolongs.key.json --output revealed.sheet.toml
      notesmith plan reveal talk.notes.json --key oolongs.key.json --output revealed.notes.json
    """
    from notesmith.planning.files import revealed

    give(revealed(sealed, key), output, force=force)


@app.command()
def rounds(
    contest: Annotated[Path, typer.Argument(metavar="CONTEST", help="Who meets whom, and what was played.")],
    notes: Annotated[
        list[Path] | None, typer.Argument(metavar="[NOTES...]", help="Revealed notes of further episodes.")
    ] = None,
    output: Output = None,
    force: Force = False,
) -> None:
    """Tell the rounds of a knock-out or a round robin: standings, byes, and what is still to play.

    \b
    A contest is a TOML file:
      kind = "round-robin"           or "knock-out", with the strongest first
      entrants = ["one tea", "another", "a third"]
      [[played]]
      one = "one tea"
      other = "another"
      winner = "another"             left out where they were equal
      episode = "12"
    A knock-out may have, instead of entrants, after = "league.toml" and best = 4.

    \b
    Examples:
      notesmith plan rounds league.toml
      notesmith plan rounds league.toml episode-13.notes.json
    """
    from notesmith.planning.files import told_rounds

    give(told_rounds(contest, notes or ()), output, force=force)
