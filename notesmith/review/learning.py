"""What corrections teach: words for a lexicon of one's own, and recordings to measure a listener with."""

import json
from collections import Counter
from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from pathlib import Path
from typing import Any

from notesmith.errors import CaptionError, MissingError
from notesmith.lexicon import Lexicon
from notesmith.lexicon.check import common_words
from notesmith.lexicon.folders import COLUMNS, LABELS, Row, read_domain
from notesmith.lexicon.words import pieces
from notesmith.publishing.files import make_folder, write_file
from notesmith.records import Evidenced, Notes, Repair, Section
from notesmith.review.corrections import SUFFIX, read_corrections
from notesmith.review.edits import Change, Edit, Replace, Said, standing
from notesmith.review.looks import progress
from notesmith.review.saying import FIELDS
from notesmith.review.taking import listened, taught_rows
from notesmith.sheet import find_sheet, read_sheet
from notesmith.transcript import read_captions

NO_CAPTIONS = (".json", ".toml", ".mp3", ".mp4", ".m4a", ".wav", ".ogg", ".opus", ".flac", ".webm", ".mkv", ".mov")
"""Endings of what may lie beside captions under their name; captions in JSON are tried where there are no others."""
UNQUOTED = (Section, Repair)


@dataclass(frozen=True)
class Reviewed:
    """A recording with corrections: its captions, its notes as corrected, and how much of it was looked at."""

    captions: Path
    notes: Notes
    edits: tuple[Edit, ...]
    looked_at: int
    due: int

    @property
    def is_whole(self) -> bool:
        """Whether everything that deserved a look had one, so that others may be measured by it."""
        return self.looked_at == self.due


@dataclass(frozen=True)
class Lesson:
    """A label that the lexicon lacks, and how often corrections say so."""

    row: Row
    times: int
    now: str | None = None
    """The concept that the lexicon takes the words for as it is."""


def reviewed_in(folder: Path) -> list[Reviewed]:
    """The recordings of a folder, and of those in it, that have corrections; they are listened to anew.

    Raises:
        NotesmithError: there are none, or one of them will not do.
    """
    files = sorted(folder.rglob(f"*{SUFFIX}"))
    if not files:
        raise MissingError(f"no corrections (*{SUFFIX}) lie there", where=str(folder), mend="make some in review")
    return [_reviewed(path) for path in files]


def lessons(reviewed: Iterable[Reviewed], lexicon: Lexicon) -> list[Lesson]:
    """What the lexicon may learn from them, the most frequent first; what it knows already is left out.

    Where the same words were said to stand for two concepts, the one that was said more often is offered.
    """
    counted = Counter(row for one in reviewed for edit in standing(one.edits) for row in _rows(edit, lexicon))
    offered: dict[tuple[str, ...], Lesson] = {}
    for row, times in sorted(counted.items(), key=lambda pair: (-pair[1], pair[0])):
        if not _is_known(row, lexicon):
            label = lexicon.look_up(row.label)
            offered.setdefault(pieces(row.label), Lesson(row, times, label.concept if label else None))
    return list(offered.values())


def write_lessons(learned: Iterable[Lesson], folder: Path) -> Path | None:
    """Add the labels to those of a lexicon's folder, which is made where it is missing; None where all stand there.

    Raises:
        NotesmithError: the folder holds no labels that can be read, or cannot be written.
    """
    make_folder(folder)
    path, held = folder / LABELS, read_domain(folder).rows
    known = {pieces(row.label) for row in held}
    new = [lesson.row[:5] for lesson in learned if pieces(lesson.row.label) not in known]
    if not new:
        return None
    rows = [COLUMNS, *(row[:5] for row in held), *new]
    write_file(path, "".join("\t".join(row) + "\n" for row in rows), force=True)
    return path


def write_annotation(one: Reviewed, folder: Path, *, force: bool = False) -> list[Path]:
    """Write a recording's captions, sheet and corrected notes as an annotation, to measure a listener with.

    Raises:
        OutputError: the files are there and may not be replaced, or cannot be written.
    """
    make_folder(folder)
    name = one.captions.stem
    written: dict[str, str | bytes] = {
        one.captions.name: one.captions.read_bytes(),
        f"{name}.sheet.json": _json(one.notes.sheet.model_dump(mode="json", exclude_defaults=True)),
        f"{name}.gold.json": _json(annotation(one.notes)),
    }
    for file, content in written.items():
        write_file(folder / file, content, force=force)
    return [folder / file for file in written]


def annotation(notes: Notes) -> dict[str, Any]:
    """The notes as an annotator would have written them: what was said, without how it was found out."""
    records = {name: [_plain(record) for record in getattr(notes, name)] for name in FIELDS.values()}
    return {"transcript": notes.transcript, "samples": list(notes.samples), **records}


def _plain(record: Evidenced) -> dict[str, Any]:
    fields = record.model_dump(mode="json")
    dropped = {"id", "span", "confidence", "why", "term_span", "after_reveal", "concept"}
    dropped |= {"quote"} if isinstance(record, UNQUOTED) else set()
    dropped |= {"samples"} if not fields.get("samples") else set()
    return {name: value for name, value in fields.items() if name not in dropped}


def _reviewed(corrections: Path) -> Reviewed:
    captions = _captions_of(corrections)
    edits, sheet = read_corrections(corrections), find_sheet(captions)
    notes = listened(read_captions(captions), read_sheet(sheet) if sheet else None, edits)
    return Reviewed(captions, notes, edits, *progress(notes))


def _captions_of(corrections: Path) -> Path:
    name = corrections.name.removesuffix(SUFFIX)
    beside = [path for path in sorted(corrections.parent.iterdir()) if path.stem == name and path.is_file()]
    for path in sorted(beside, key=lambda path: path.suffix.lower() == ".json"):
        if path.suffix.lower() not in NO_CAPTIONS[1:] and _are_captions(path):
            return path
    raise MissingError("its captions do not lie beside it", where=str(corrections), mend=f"put {name}.vtt there")


def _are_captions(path: Path) -> bool:
    try:
        return bool(read_captions(path).cues)
    except CaptionError:
        return False


def _rows(edit: Edit, lexicon: Lexicon) -> Iterator[Row]:
    """The labels that an edit shows to be missing."""
    yield from taught_rows(edit, lexicon)
    if isinstance(edit, Change):
        yield from _of_record(edit.record, {**edit.record.says, **edit.set} if _teaches(edit) else {}, lexicon)
    if isinstance(edit, Replace):
        for record in edit.by:
            yield from _of_record(record, record.says, lexicon)


def _teaches(edit: Change) -> bool:
    return bool({"concept", "meant"} & edit.set.keys())


def _of_record(record: Said, says: dict[str, Any], lexicon: Lexicon) -> Iterator[Row]:
    concept = says.get("concept")
    if record.term and concept in lexicon.concepts:
        label = " ".join(record.term.text.lower().split())
        yield Row(str(concept), label, "synonym", "phrase", "guarded" if label in common_words() else "", 0)
    if record.kind == "repair" and (meant := lexicon.look_up(str(says.get("meant", "")))):
        yield Row(meant.concept, " ".join(record.words.text.lower().split()), "misheard", "", "", 0)


def _is_known(row: Row, lexicon: Lexicon) -> bool:
    """Whether the lexicon says so already, or cannot: what is right somewhere is no mis-hearing everywhere."""
    key, known = pieces(row.label), lexicon.look_up(row.label)
    if row.kind == "misheard":
        return (
            not key or known is not None or (key in lexicon.misheard and lexicon.misheard[key].concept == row.concept)
        )
    return not key or (known is not None and known.concept == row.concept)


def _json(data: Any) -> str:
    return json.dumps(data, ensure_ascii=False, indent=1) + "\n"
