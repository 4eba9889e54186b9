"""`notesmith publish`: everything that is posted with an episode, from its notes."""

from pathlib import Path
from typing import TYPE_CHECKING, Annotated

import typer

from notesmith.cli.speaking import Force

if TYPE_CHECKING:
    from notesmith.publishing.kinds import Kind


def publish(
    notes: Annotated[
        Path | None, typer.Argument(metavar="NOTES", help="Notes written with `notesmith notes --format json`.")
    ] = None,
    to: Annotated[Path | None, typer.Option("--to", metavar="DIR", help="The folder that the files go into.")] = None,
    only: Annotated[
        list[str] | None, typer.Option(metavar="KIND", help="Make this kind only; may be given several times.")
    ] = None,
    captions: Annotated[
        Path | None,
        typer.Option(metavar="FILE", help="The captions of the notes; by default looked for beside them."),
    ] = None,
    media: Annotated[
        Path | None, typer.Option(metavar="FILE", help="The recording: chapters go into a copy of it, with ffmpeg.")
    ] = None,
    keep: Annotated[
        list[str] | None,
        typer.Option(metavar="ID", help="Publish this record though it sounds like a health claim; several times."),
    ] = None,
    mark_repairs: Annotated[
        bool, typer.Option("--mark-repairs", help="Put what was mended in the captions into square brackets.")
    ] = False,
    length: Annotated[
        int, typer.Option(min=500, metavar="CHARACTERS", help="The most that the plain-text show notes may take.")
    ] = 5000,
    locale: Annotated[
        str, typer.Option(metavar="LOCALE", help="How numbers, prices and dates are written, such as en_GB.")
    ] = "en",
    templates: Annotated[
        Path | None, typer.Option(metavar="DIR", help="A folder of your own templates, each in place of ours.")
    ] = None,
    list_kinds: Annotated[bool, typer.Option("--list", help="Say what can be published, and leave.")] = False,
    force: Force = False,
) -> None:
    """Publish notes: show notes, chapters, corrected captions, tables, charts and clips.

    \b
    Examples:
      notesmith publish talk.notes.json --to episode/
      notesmith publish talk.notes.json --to episode/ --only show-notes --only chapters
      notesmith publish talk.notes.json --to episode/ --media talk.mp4

    Without --only every kind is made. The captions are looked for beside the notes, and in the folder you are in.
    """
    from dataclasses import replace

    from notesmith.publishing import gather
    from notesmith.publishing import publish as issue

    if list_kinds:
        _tell_kinds()
        return
    if notes is None or to is None:
        raise typer.BadParameter("name the notes, and with --to the folder for what is made of them")
    episode = replace(
        gather(notes, captions=captions, media=media),
        locale=locale, keep=frozenset(keep or ()), mark_repairs=mark_repairs, length=length, templates=templates,
    )  # fmt: skip
    edition = issue(episode, to, only=only or (), force=force)
    for line in edition.left_out:
        typer.echo(f"notesmith: left out {line}", err=True)
    for path in edition.written:
        typer.echo(path)


def _tell_kinds() -> None:
    from notesmith.publishing.edition import every_kind

    kinds = every_kind()
    width = max(len(kind.name) for kind in kinds)
    for kind in kinds:
        typer.echo(f"{kind.name:{width}}  NAME.{kind.suffix:20}  {kind.says}{_wants(kind)}")


def _wants(kind: "Kind") -> str:
    wanted = [f"notesmith[{kind.extra}]"] if kind.extra else []
    wanted += [{"captions": "the captions", "media": "--media"}[kind.needs]] if kind.needs else []
    return f" (needs {' and '.join(wanted)})" if wanted else ""
