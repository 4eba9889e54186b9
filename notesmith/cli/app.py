"""The command `notesmith`: its groups of commands, and how an error is told."""

import sys
from typing import Annotated

import typer

from notesmith import __version__
from notesmith.cli import evidence, learn, lexicon, notes, plan, publish, review, schema, sheet, value
from notesmith.cli.speaking import plain_output, tell
from notesmith.errors import NotesmithError

# Plain help: the words are the same, and it comes in a third of the time.
app = typer.Typer(
    name="notesmith",
    rich_markup_mode=None,
    pretty_exceptions_enable=False,
    add_completion=False,
    no_args_is_help=True,
    context_settings={"help_option_names": ["-h", "--help"]},
)
app.command("notes")(notes.notes)
app.command("publish")(publish.publish)
app.command("review")(review.review)
app.command("learn")(learn.learn)
app.add_typer(sheet.app, name="sheet")
app.add_typer(plan.app, name="plan")
app.add_typer(evidence.app, name="evidence")
app.command("value")(value.value)
app.command("schema")(schema.schema)
app.add_typer(lexicon.app, name="lexicon")


def _version(asked: bool) -> None:
    if asked:
        typer.echo(f"notesmith {__version__}")
        raise typer.Exit


@app.callback()
def start(
    version: Annotated[
        bool, typer.Option("--version", callback=_version, is_eager=True, help="Print the version and leave.")
    ] = False,
) -> None:
    """Tasting notes from the captions of a recorded tasting, each with the words that prove it.

    \b
    First time:
      notesmith sheet draft talk.vtt --output talk.sheet.toml    then correct it
      notesmith notes talk.vtt                                   what was perceived of which sample
    \b
    Then:
      notesmith notes talk.vtt --format json --output talk.notes.json
      notesmith notes *.vtt --format markdown --output-dir notes/
      notesmith publish talk.notes.json --to episode/            show notes, chapters, charts and more

    \b
    Before you record:
      notesmith plan draw oolongs.plan.toml --to oolongs/        codes, orders, cards and a sealed key

    A sheet named like the captions (talk.sheet.toml beside talk.vtt) is found by itself.
    """


def run() -> None:
    """Run the command line; an error of the user's is one line and an exit status."""
    plain_output()
    try:
        app(prog_name="notesmith")
    except NotesmithError as error:
        tell(error)
        sys.exit(error.exit_status)
