"""`notesmith review`: hear, check and correct the notes on a page of this machine."""

from pathlib import Path
from typing import TYPE_CHECKING, Annotated

import typer

if TYPE_CHECKING:
    from notesmith.review.page import Table


def review(
    notes: Annotated[
        Path | None, typer.Argument(metavar="NOTES", help="Notes written with `notesmith notes --format json`.")
    ] = None,
    media: Annotated[
        Path | None,
        typer.Option(metavar="FILE", help="The recording; by default the one beside the captions, named like them."),
    ] = None,
    captions: Annotated[
        Path | None, typer.Option(metavar="FILE", help="The captions; by default looked for beside the notes.")
    ] = None,
    queue: Annotated[
        Path | None,
        typer.Option(metavar="DIR", help="Go through all NAME.notes.json of a folder, the least sure first."),
    ] = None,
    port: Annotated[int, typer.Option(min=0, max=65535, help="The port; 0 takes one that is free.")] = 0,
    browser: Annotated[bool, typer.Option("--browser/--no-browser", help="Open the page in your browser.")] = True,
) -> None:
    """Review notes on a page of this machine: hear the words, correct what is wrong, by keyboard alone if you like.

    \b
    Examples:
      notesmith review talk.notes.json
      notesmith review talk.notes.json --media talk.mp3
      notesmith review --queue notes/

    Corrections go into NAME.corrections.json beside the captions, and `notesmith notes` heeds them on every run.
    """
    from notesmith.errors import MissingError

    if (notes is None) == (queue is None):
        raise typer.BadParameter("name the notes of one recording, or with --queue a folder of them")
    try:
        from notesmith.review.page import application
        from notesmith.review.server import serve
    except ModuleNotFoundError as error:
        raise MissingError(f"{error.name} is not installed", mend="install notesmith[review]") from None

    def opened(address: str) -> None:
        typer.echo(f"The page is at {address}\nThis address opens it once. Stop with Ctrl+C.")
        if browser:
            _browse(address)

    serve(application(_table(notes, captions, media, queue)), port, opened)


def _table(notes: Path | None, captions: Path | None, media: Path | None, queue: Path | None) -> "Table":
    from notesmith.review.opening import open_notes, queued
    from notesmith.review.page import Table

    sittings = [open_notes(notes, captions, media)] if notes else queued(queue or Path())
    return Table(sittings)


def _browse(address: str) -> None:
    """Open the browser beside the server, which would otherwise wait for it."""
    import threading
    import webbrowser

    threading.Thread(target=webbrowser.open, args=(address,), daemon=True).start()
