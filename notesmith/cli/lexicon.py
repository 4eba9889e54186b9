"""Commands that look into the lexicon."""

from pathlib import Path
from typing import TYPE_CHECKING, Annotated, Literal

import typer

from notesmith.cli.speaking import Force, Output, colour, give, tell, width

if TYPE_CHECKING:
    from notesmith.lexicon import Concept, Lexicon

app = typer.Typer(help="Look into the lexicon, or check one of your own.", no_args_is_help=True)

Folders = Annotated[list[Path] | None, typer.Argument(help="Folders of your own; none checks the built-in lexicon.")]
Extra = Annotated[
    list[Path] | None, typer.Option("--lexicon", help="A folder of your own to lay over the built-in one.")
]


@app.command("check")
def check_folders(folders: Folders = None) -> None:
    """Tell everything that does not fit together in a lexicon."""
    from notesmith.errors import LexiconError
    from notesmith.lexicon.check import check

    findings = check(folders or [])
    for finding in findings:
        typer.echo(finding)
    errors = sum(finding.severity == "error" for finding in findings)
    summary = f"{_counted(errors, 'error')}, {_counted(len(findings) - errors, 'warning')}"
    if errors:
        raise LexiconError(summary, mend="mend the lines named above")
    typer.echo(summary)


@app.command()
def find(
    words: Annotated[list[str], typer.Argument(help="A word or phrase.")],
    lexicon: Extra = None,
) -> None:
    """Tell which concept a word stands for, where that has its place, and what it means."""
    from notesmith.errors import LexiconError
    from notesmith.lexicon import Lexicon

    known, text = Lexicon.load(*lexicon or ()), " ".join(words)
    label = known.look_up(text)
    if not label:
        raise LexiconError(f"the lexicon has no label {text!r}", mend="add it in a folder of your own")
    guard = " (only where a perception is talked about)" if label.guarded else ""
    typer.echo(f"{text}: {label.concept}{guard}")
    _tell(known, known.concepts[label.concept])


@app.command()
def show(
    concept: Annotated[str, typer.Argument(help="The id of a concept.")],
    lexicon: Extra = None,
) -> None:
    """Tell all the lexicon holds about a concept."""
    from notesmith.errors import LexiconError
    from notesmith.lexicon import Lexicon

    known = Lexicon.load(*lexicon or ())
    if concept not in known.concepts:
        raise LexiconError(f"the lexicon has no concept {concept!r}", mend="try `find` with a word")
    typer.echo(concept)
    _tell(known, known.concepts[concept])
    for label in known.labels(concept):
        guarded = ", guarded" if label.guarded else ""
        typer.echo(f"  {label.kind}{guarded}: {label.text}")


@app.command()
def gaps(
    notes: Annotated[list[Path], typer.Argument(metavar="NOTES...", help="Notes written with --format json.")],
    lexicon: Extra = None,
    format: Annotated[  # noqa: A002 - the option's name
        Literal["table", "tsv"], typer.Option(help="table to read, tsv for the labels.tsv of a folder of your own.")
    ] = "table",
    output: Output = None,
    force: Force = False,
) -> None:
    """Tell which descriptors of your notes the lexicon lacks, how often they were said, and what they are near to.

    \b
    Examples:
      notesmith lexicon gaps notes/*.notes.json
      notesmith lexicon gaps notes/*.notes.json --format tsv --output mine/labels.tsv

    Where no concept is near enough none is offered, and in tsv its column is left empty for you to fill.
    """
    from notesmith.errors import NotesFileError
    from notesmith.lexicon import Lexicon
    from notesmith.lexicon.gaps import find_gaps
    from notesmith.notes_file import read_notes
    from notesmith.publishing.gaps import render

    read, status = [], 0
    for path in notes:
        try:
            read.append(read_notes(path))
        except NotesFileError as error:
            tell(error)
            status = error.exit_status
    if read:
        found = find_gaps(read, Lexicon.load(*lexicon or ()))
        give(render(found, format, width=width(), colour=colour() and not output), output, force=force)
    raise typer.Exit(status)


def _tell(lexicon: "Lexicon", concept: "Concept") -> None:
    place = " > ".join((*reversed(lexicon.ancestors(concept.id)), concept.id))
    facets = f" of {', '.join(concept.facets)}" if concept.facets else ""
    typer.echo(f"  place: {place}")
    typer.echo(f"  sort: {concept.sort}{facets}")
    typer.echo(f"  meaning: {concept.definition}")
    typer.echo(f"  source: {concept.source} (domain {concept.domain})")


def _counted(count: int, noun: str) -> str:
    return f"{count} {noun}{'' if count == 1 else 's'}"
