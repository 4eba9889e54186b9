"""Notes taken with corrections heeded: names and words that were taught before listening, the rest after."""

from collections.abc import Sequence
from functools import lru_cache
from pathlib import Path

from notesmith.lexicon import Lexicon
from notesmith.lexicon.folders import Domain, Row, own_domains
from notesmith.lexicon.merge import merged
from notesmith.lexicon.words import pieces
from notesmith.records import Notes, Sheet
from notesmith.review.applying import corrected
from notesmith.review.edits import Alias, Edit, Mend, Teach, standing
from notesmith.review.saying import FIELDS, is_corrected
from notesmith.transcript import Captions, Talk


def listened(captions: Captions, sheet: Sheet | None, edits: Sequence[Edit], confidence: float = 0.0) -> Notes:
    """The notes of a recording with all corrections made. Raises what take_notes raises."""
    taken = heeding(captions, sheet, edits, confidence)
    unknown = [edit for edit in standing(edits) if isinstance(edit, Teach) and not _is_concept(edit.concept)]
    told = (f'"{e.label}" could not be taught: the lexicon has no concept {e.concept!r}' for e in unknown)
    taken = taken.model_copy(update={"warnings": (*taken.warnings, *told)})
    return corrected(taken, Talk.from_captions(captions), edits)


def heeding(captions: Captions, sheet: Sheet | None, edits: Sequence[Edit], confidence: float = 0.0) -> Notes:
    """The notes as listening makes them once names and words are taught: what the other corrections are applied to."""
    from notesmith.listening import draft_sheet, take_notes

    lexicon = taught_lexicon(edits)
    if sheet or not any(isinstance(edit, Alias) for edit in standing(edits)):
        known = amended_sheet(sheet, edits) if sheet else None
        return take_notes(captions, known, lexicon=lexicon, confidence=confidence)
    drafted = amended_sheet(draft_sheet(captions, lexicon=lexicon), edits)
    notes = take_notes(captions, drafted, lexicon=lexicon, confidence=confidence)
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


def taught_lexicon(edits: Sequence[Edit]) -> Lexicon:
    """Our lexicon with the words that were taught in review, and mis-hearings of its words that were mended."""
    rows = tuple(row for edit in standing(edits) for row in taught_rows(edit, Lexicon.load()))
    return _laid_over(rows) if rows else Lexicon.load()


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


def _is_concept(concept: str) -> bool:
    return concept in Lexicon.load().concepts


@lru_cache(maxsize=4)
def _laid_over(rows: tuple[Row, ...]) -> Lexicon:
    return Lexicon(merged(own_domains(), [Domain(Path("corrections"), {}, rows)]))
