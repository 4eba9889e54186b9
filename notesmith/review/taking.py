"""Notes taken with corrections heeded: names and words that were taught before listening, the rest after."""

from collections.abc import Sequence
from functools import lru_cache
from pathlib import Path
from typing import TypeAlias

from notesmith.lexicon import Lexicon
from notesmith.lexicon.folders import Domain, Row, own_domains, read_folder
from notesmith.lexicon.merge import merged
from notesmith.lexicon.words import pieces
from notesmith.records import Notes, Sheet
from notesmith.review.applying import corrected
from notesmith.review.edits import Alias, Edit, Mend, Teach, standing
from notesmith.review.saying import FIELDS, is_corrected
from notesmith.transcript import Captions, Talk

Folders: TypeAlias = tuple[Path, ...]


def listened(
    captions: Captions, sheet: Sheet | None, edits: Sequence[Edit], confidence: float = 0.0, *, lexicon: Folders = ()
) -> Notes:
    """The notes of a recording with all corrections made; `lexicon` names folders of one's own.

    Raises:
        NotesmithError: what take_notes raises, and a folder of the lexicon that will not do.
    """
    taken = heeding(captions, sheet, edits, confidence, lexicon=lexicon)
    known = Lexicon.load(*lexicon).concepts
    unknown = [edit for edit in standing(edits) if isinstance(edit, Teach) and edit.concept not in known]
    told = (f'"{e.label}" could not be taught: the lexicon has no concept {e.concept!r}' for e in unknown)
    taken = taken.model_copy(update={"warnings": (*taken.warnings, *told)})
    return corrected(taken, Talk.from_captions(captions), edits)


def heeding(
    captions: Captions, sheet: Sheet | None, edits: Sequence[Edit], confidence: float = 0.0, *, lexicon: Folders = ()
) -> Notes:
    """The notes as listening makes them once names and words are taught: what the other corrections are applied to."""
    from notesmith.listening import draft_sheet, take_notes

    words = taught_lexicon(edits, lexicon)
    if sheet or not any(isinstance(edit, Alias) for edit in standing(edits)):
        known = amended_sheet(sheet, edits) if sheet else None
        return take_notes(captions, known, lexicon=words, confidence=confidence)
    drafted = amended_sheet(draft_sheet(captions, lexicon=words), edits)
    notes = take_notes(captions, drafted, lexicon=words, confidence=confidence)
    return notes.model_copy(update={"sheet_drafted": True})


def uncorrected(notes: Notes, captions: Captions, edits: Sequence[Edit]) -> Notes:
    """The notes without corrections: as they are where none was made in them, else listened to anew, which takes long.

    Corrections are always made to these, never on top of one another.
    """
    records = [record for name in (*FIELDS.values(), "ignored") for record in getattr(notes, name)]
    if not any(map(is_corrected, records)):
        return notes
    return heeding(captions, None if notes.sheet_drafted else notes.sheet, edits)


def amended_sheet(sheet: Sheet, edits: Sequence[Edit]) -> Sheet:
    """The sheet with the names that were added in review, and without those that were undone since."""
    holding = {(edit.of, edit.alias) for edit in standing(edits) if isinstance(edit, Alias)}
    for edit in edits:
        if isinstance(edit, Alias):
            sheet = _named(sheet, edit, holds=(edit.of, edit.alias) in holding)
    return sheet


def taught_lexicon(edits: Sequence[Edit], folders: Folders = ()) -> Lexicon:
    """The lexicon with the words that were taught in review, and mis-hearings of its words that were mended."""
    known = Lexicon.load(*folders)
    rows = tuple(row for edit in standing(edits) for row in taught_rows(edit, known))
    return _laid_over(rows, folders) if rows else known


def taught_rows(edit: Edit, lexicon: Lexicon) -> list[Row]:
    """What an edit adds to the labels of a lexicon."""
    if isinstance(edit, Teach) and edit.concept in lexicon.concepts and pieces(edit.label):
        kind = ("misheard", "") if edit.misheard else ("synonym", edit.form)
        return [Row(edit.concept, edit.label, *kind, "", 0)]
    if isinstance(edit, Mend) and (meant := lexicon.look_up(edit.meant)) and pieces(edit.heard):
        return [Row(meant.concept, edit.heard.lower(), "misheard", "", "", 0)]
    return []


def _named(sheet: Sheet, edit: Alias, *, holds: bool) -> Sheet:
    def named(aliases: tuple[str, ...]) -> tuple[str, ...]:
        others = tuple(alias for alias in aliases if alias.casefold() != edit.alias.casefold())
        return (*others, edit.alias) if holds else others

    samples, preparations = (
        tuple(one.model_copy(update={"aliases": named(one.aliases)}) if one.id == edit.of else one for one in listed)
        for listed in (sheet.samples, sheet.preparations)
    )
    return sheet.model_copy(update={"samples": samples, "preparations": preparations})


@lru_cache(maxsize=4)
def _laid_over(rows: tuple[Row, ...], folders: Folders) -> Lexicon:
    users = [domain for folder in folders for domain in read_folder(folder)]
    return Lexicon(merged(own_domains(), [*users, Domain(Path("corrections"), {}, rows)]))
