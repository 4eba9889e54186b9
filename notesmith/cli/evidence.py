"""`notesmith evidence`: what a tasting proves, what it could find, and how many trials it needs."""

from pathlib import Path
from typing import Annotated, Literal

import typer

from notesmith.cli.speaking import Force, Output, give, width

app = typer.Typer(help="What a tasting proves, and how many trials it needs.", no_args_is_help=True)

Protocol = Annotated[
    Literal["triangle", "duo-trio", "pair", "tetrad", "3-afc", "two-out-of-five"], typer.Argument(help="The test.")
]
Alpha = Annotated[float, typer.Option(min=0.0001, max=0.5, metavar="0-1", help="How often chance may pass for more.")]
Tasters = Annotated[int | None, typer.Option(min=1, metavar="N", help="How many tasters gave the answers.")]
Blind = Annotated[bool | None, typer.Option("--blind/--sighted", help="Whether they did not know which was which.")]
Balanced = Annotated[bool | None, typer.Option("--balanced/--unbalanced", help="Whether orders were balanced.")]


@app.command()
def notes(
    notes: Annotated[list[Path], typer.Argument(metavar="NOTES...", help="Notes written with --format json.")],
    format: Annotated[Literal["text", "json"], typer.Option(help="text to read, json for programs.")] = "text",  # noqa: A002
    curves: Annotated[
        Path | None, typer.Option(metavar="DIR", help="Draw the order of sensations of each product into this folder.")
    ] = None,
    output: Output = None,
    force: Force = False,
) -> None:
    """Tell what recordings prove: tests of difference, preferences, rankings, profiles, the order of sensations.

    \b
    Examples:
      notesmith evidence notes talk.notes.json
      notesmith evidence notes season/*.notes.json --format json

    A recording whose sheet pours one product twice is read as a triangle test (a tetrad, a two-out-of-five; with a
    sample called `reference` a duo-trio): which samples a taster calls equal is the answer. Only what was said before
    the reveal counts. From several recordings only those are read whose samples were all made known.
    """
    from notesmith.evidence.curves import draw_curves
    from notesmith.evidence.results import weigh
    from notesmith.evidence.text import as_json, render
    from notesmith.notes_file import read_notes

    read = [read_notes(path) for path in notes]
    results, left_out = weigh(read)
    for line in left_out:
        typer.echo(f"notesmith: left out {line}", err=True)
    give(as_json(results) if format == "json" else render(results, width()), output, force=force)
    if curves:
        draw_curves(read, curves, force=force)


@app.command()
def difference(
    protocol: Protocol,
    right: Annotated[int, typer.Argument(min=0, help="How many answers were right.")],
    trials: Annotated[int, typer.Argument(min=1, help="How many trials there were.")],
    alike: Annotated[
        float | None,
        typer.Option(min=0.01, max=0.99, metavar="0-1", help="Ask for likeness: this share told apart is too many."),
    ] = None,
    tasters: Tasters = None,
    blind: Blind = None,
    balanced: Balanced = None,
    method: Annotated[
        Literal["exact", "likelihood", "score"], typer.Option(help="How p and intervals are made.")
    ] = "exact",
) -> None:
    """Tell what right answers among trials say of a difference, or with --alike of likeness.

    \b
    Examples:
      notesmith evidence difference triangle 10 15 --tasters 15 --blind
      notesmith evidence difference duo-trio 58 100 --alike 0.33
    """
    from notesmith.evidence.counts import tell_difference
    from notesmith.sensory.claims import Circumstances

    at = Circumstances(tasters or trials, blind, balanced)
    give(tell_difference(protocol, right, trials, alike, at, method))


@app.command()
def repeated(
    protocol: Protocol,
    counts: Annotated[list[str], typer.Argument(metavar="RIGHT/TRIALS...", help="The counts of each taster.")],
) -> None:
    """Tell what trials repeated by the same tasters say: some may tell better than others.

    \b
    Example:
      notesmith evidence repeated triangle 5/8 3/8 6/8 2/8
    """
    from notesmith.evidence.counts import tell_repeated

    give(tell_repeated(protocol, counts))


@app.command()
def preference(
    first: Annotated[int, typer.Argument(min=0, help="How many preferred the first.")],
    second: Annotated[int, typer.Argument(min=0, help="How many preferred the second.")],
    neither: Annotated[int, typer.Option(min=0, metavar="N", help="How many had no preference.")] = 0,
    expected: Annotated[
        bool, typer.Option("--expected", help="The first was expected to win: ask for that side only.")
    ] = False,
    tasters: Tasters = None,
    blind: Blind = None,
    balanced: Balanced = None,
) -> None:
    """Tell what preferences of a pair say, to either side, with `no preference` if it could be answered."""
    from notesmith.evidence.counts import tell_preference
    from notesmith.sensory.claims import Circumstances

    at = Circumstances(tasters or first + second + neither, blind, balanced)
    give(tell_preference(first, neither, second, expected, at))


@app.command()
def calls(
    hits: Annotated[int, typer.Argument(min=0, help="Cups of A that were called A.")],
    of_a: Annotated[int, typer.Argument(min=1, help="Cups of A.")],
    false_alarms: Annotated[int, typer.Argument(min=0, help="Other cups that were called A.")],
    of_other: Annotated[int, typer.Argument(min=1, help="Other cups.")],
) -> None:
    """Tell what an A-not-A test says: cups of A and of another, each called A or not A."""
    from notesmith.evidence.counts import tell_calls

    give(tell_calls(hits, of_a, false_alarms, of_other))


@app.command()
def trials(
    distance: Annotated[
        float, typer.Option("--distance", min=0.05, max=6, metavar="D", help="The d′ to be found.")
    ] = 1.0,
    power: Annotated[
        float, typer.Option(min=0.5, max=0.999, metavar="0-1", help="How often it should be found.")
    ] = 0.9,
    alpha: Alpha = 0.05,
) -> None:
    """Tell how many trials each test needs to find a difference."""
    from notesmith.evidence.counts import table_of_trials

    give(table_of_trials(distance, power, alpha))


@app.command()
def power(
    trials: Annotated[int, typer.Argument(min=2, max=2000, help="How many trials there are.")],
    alpha: Alpha = 0.05,
) -> None:
    """Tell how often each test of so many trials finds a difference, by its size."""
    from notesmith.evidence.counts import table_of_power

    give(table_of_power(trials, alpha))


@app.command()
def table(
    protocol: Protocol,
    most: Annotated[int, typer.Option("--trials", min=3, max=500, metavar="N", help="The last row.")] = 60,
) -> None:
    """Print the fewest right answers that are more than chance, by trials and level."""
    from notesmith.evidence.counts import table_of_counts

    give(table_of_counts(protocol, most))


@app.command()
def ranking(
    scores: Annotated[Path, typer.Argument(metavar="SCORES", help="CSV: a header of samples, a row for each taster.")],
    foreseen: Annotated[
        bool, typer.Option("--foreseen", help="Columns stand in the order foreseen, least first.")
    ] = False,
) -> None:
    """Tell whether tasters score samples apart, how far they agree, and which samples differ; higher is better."""
    from notesmith.evidence.counts import tell_ranking

    give(tell_ranking(scores, foreseen=foreseen))
