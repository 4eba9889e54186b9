"""`notesmith notes`: take notes from captions."""

import sys
from collections.abc import Iterable
from pathlib import Path
from typing import TYPE_CHECKING, Annotated, Literal

import typer

from notesmith.cli.speaking import Force, Output, colour, give, tell, width
from notesmith.errors import NotesmithError

if TYPE_CHECKING:
    from notesmith.jobs import Job


def notes(
    captions: Annotated[list[Path], typer.Argument(metavar="CAPTIONS...", help="Caption files, or a transcript.")],
    sheet: Annotated[
        Path | None,
        typer.Option(metavar="SHEET", help="The tasting sheet; by default the one named like the captions."),
    ] = None,
    format: Annotated[  # noqa: A002 - the option's name
        Literal["table", "json", "csv", "markdown"],
        typer.Option(help="table to read, json for everything, csv for a spreadsheet, markdown for a page."),
    ] = "table",
    confidence: Annotated[
        float,
        typer.Option(
            min=0, max=1, metavar="0-1", help="Leave out perceptions less sure than this: fewer notes, and surer ones."
        ),
    ] = 0.0,
    lexicon: Annotated[
        list[Path] | None, typer.Option(metavar="DIR", help="A folder of your own words to lay over the lexicon.")
    ] = None,
    output: Output = None,
    output_dir: Annotated[
        Path | None, typer.Option(metavar="DIR", help="Write NAME.notes.* for each caption file into this folder.")
    ] = None,
    force: Force = False,
) -> None:
    """Take notes from captions: what was perceived of which sample, how strongly, by whom and when.

    \b
    Examples:
      notesmith notes talk.vtt
      notesmith notes talk.vtt --sheet cups.toml --format json
      notesmith notes *.srt --format csv --output-dir notes/

    With several caption files, one that cannot be read is reported and the others are still done.
    """
    from notesmith.jobs import do, plan, renderer

    jobs = plan(
        captions, format, sheet=sheet, output=output, folder=output_dir, force=force, confidence=confidence,
        lexicon=lexicon or (),
    )  # fmt: skip
    render = renderer(format, width=width(), colour=colour() and not (output or output_dir))
    status = 0
    for job in _shown(jobs):
        try:
            if text := do(job, render):
                give(text)
        except NotesmithError as error:
            tell(error)
            status = status or error.exit_status
    raise typer.Exit(status)


def _shown(jobs: "list[Job]") -> "Iterable[Job]":
    """The jobs, with a bar on the terminal that tells how many are done; none among notes that are printed."""
    if len(jobs) < 2 or not sys.stderr.isatty() or not all(job.output for job in jobs):
        return jobs
    from rich.console import Console
    from rich.progress import track

    return track(jobs, "Taking notes", console=Console(stderr=True), transient=True)
