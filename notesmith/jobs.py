"""From caption files to written notes: what is to be done is settled first, then done one file at a time."""

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from functools import partial
from pathlib import Path
from typing import Literal

from notesmith.errors import OutputError
from notesmith.publishing import csv_text, json_text, markdown, table
from notesmith.publishing.files import make_folder, output_paths, refuse_existing, write_file
from notesmith.records import Notes
from notesmith.sheet import find_sheet, read_sheet, sheet_to_toml
from notesmith.transcript import read_captions

Form = Literal["table", "json", "csv", "markdown"]
SUFFIX: dict[Form, str] = {"table": ".txt", "json": ".json", "csv": ".csv", "markdown": ".md"}


@dataclass(frozen=True)
class Job:
    """One caption file to take notes from; without an output the text goes to the terminal."""

    captions: Path
    sheet: Path | None
    output: Path | None
    force: bool
    confidence: float = 0.0
    lexicon: tuple[Path, ...] = ()


def plan(
    captions: Sequence[Path],
    form: Form,
    *,
    sheet: Path | None = None,
    output: Path | None = None,
    folder: Path | None = None,
    force: bool = False,
    confidence: float = 0.0,
    lexicon: Sequence[Path] = (),
) -> list[Job]:
    """Settle where the notes of each caption file go; a folder for them that is missing is made.

    Raises:
        OutputError: two notes would go to one place, an output and a folder are both given, or the folder
            cannot be made.
    """
    _refuse_mixing(captions, form, output, folder)
    outputs = output_paths(captions, folder, SUFFIX[form]) if folder else [output] * len(captions)
    if folder:
        make_folder(folder)
    return [
        Job(source, sheet, place, force, confidence, tuple(lexicon))
        for source, place in zip(captions, outputs, strict=True)
    ]


def _refuse_mixing(captions: Sequence[Path], form: Form, output: Path | None, folder: Path | None) -> None:
    if output and folder:
        raise OutputError("--output and --output-dir are both given", mend="leave one out")
    if len(captions) > 1 and output:
        raise OutputError("several captions cannot go into one file", mend="give --output-dir")
    if len(captions) > 1 and not folder and form in ("json", "csv"):
        raise OutputError(f"several captions make several {form.upper()} files", mend="give --output-dir")


def do(job: Job, render: Callable[[Notes], str]) -> str | None:
    """Take the notes and write them; returns the text where there is no file to write it to.

    Raises:
        NotesmithError: the captions, the sheet or the output will not do.
    """
    if job.output:
        refuse_existing(job.output, job.force)
    text = render(notes_of(job.captions, job.sheet, job.confidence, job.lexicon))
    if not job.output:
        return text
    write_file(job.output, text, force=job.force)
    return None


def notes_of(
    captions: Path, sheet: Path | None = None, confidence: float = 0.0, lexicon: tuple[Path, ...] = ()
) -> Notes:
    """The notes of one caption file, with the sheet given or the one beside it, and the corrections that lie there.

    `lexicon` names folders of one's own, laid over ours.

    Raises:
        NotesmithError: the captions, the sheet, the corrections or the lexicon will not do.
    """
    from notesmith.review.corrections import corrections_path, read_corrections
    from notesmith.review.taking import listened

    sheet = sheet or find_sheet(captions)
    known, edits = read_sheet(sheet) if sheet else None, read_corrections(corrections_path(captions))
    return listened(read_captions(captions), known, edits, confidence, lexicon=lexicon)


def renderer(form: Form, *, width: int, colour: bool) -> Callable[[Notes], str]:
    """What writes notes in that form; width in characters and colour matter to the table only."""
    forms: dict[Form, Callable[[Notes], str]] = {
        "table": partial(table.render, width=width, colour=colour),
        "json": json_text.render,
        "csv": csv_text.render,
        "markdown": markdown.render,
    }
    return forms[form]


def drafted_sheet(captions: Path) -> str:
    """A sheet drafted from the talk, as TOML.

    Raises:
        NotesmithError: the captions will not do.
    """
    from notesmith.listening import draft_sheet

    return sheet_to_toml(draft_sheet(read_captions(captions)))
