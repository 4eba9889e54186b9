"""`notesmith sheet`: begin a tasting sheet."""

from pathlib import Path
from typing import Annotated

import typer

from notesmith.cli.speaking import Force, Output, give

app = typer.Typer(help="Begin a tasting sheet: what is tasted, and what it is called.", no_args_is_help=True)


@app.command()
def new(output: Output = None, force: Force = False) -> None:
    """Write an empty sheet with a word about every field.

    \b
    Example:
      notesmith sheet new --output talk.sheet.toml
    """
    from notesmith.sheet import write_template

    give(write_template(), output, force=force)


@app.command()
def draft(
    captions: Annotated[Path, typer.Argument(metavar="CAPTIONS", help="A caption file, or a transcript.")],
    output: Output = None,
    force: Force = False,
) -> None:
    """Draft a sheet from the talk alone; look it through before you rely on it.

    \b
    Example:
      notesmith sheet draft talk.vtt --output talk.sheet.toml
    """
    from notesmith.jobs import drafted_sheet

    give(drafted_sheet(captions), output, force=force)
