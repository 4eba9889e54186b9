"""How the command line speaks: text to the terminal or a file, errors in a line."""

import io
import os
import shutil
import sys
from pathlib import Path
from typing import Annotated

import typer

from notesmith.errors import NotesmithError

Output = Annotated[
    Path | None, typer.Option("--output", "-o", metavar="FILE", help="Write to this file instead of the terminal.")
]
Force = Annotated[bool, typer.Option("--force", help="Replace a file that is there already.")]

PIPE_WIDTH = 100
"""Characters on a line where no terminal tells how many it has."""


def plain_output() -> None:
    """Write UTF-8 whatever the place the program runs in, as the files do."""
    for stream in (sys.stdout, sys.stderr):
        if isinstance(stream, io.TextIOWrapper):
            stream.reconfigure(encoding="utf-8", errors="replace")


def tell(error: NotesmithError) -> None:
    """Say on one line what is wrong."""
    from notesmith.publishing.plain import one_line

    typer.echo(f"notesmith: {one_line(str(error))}", err=True)


def give(text: str, output: Path | None = None, *, force: bool = False) -> None:
    """Write the text to the file, or to the terminal where none is named."""
    from notesmith.publishing.files import write_file

    if output:
        write_file(output, text, force=force)
    else:
        sys.stdout.write(text)
        sys.stdout.flush()


def width() -> int:
    """Characters on a line."""
    return shutil.get_terminal_size((PIPE_WIDTH, 24)).columns


def colour() -> bool:
    """Whether the output is a terminal that shows colours, and nobody asked for none."""
    return sys.stdout.isatty() and not os.environ.get("NO_COLOR") and os.environ.get("TERM") != "dumb"
