"""From a record of the notes to what an edit keeps of it, and back to a record of the talk as it now is."""

from hashlib import sha256
from typing import Any

from notesmith.records import (
    Comparison,
    Evidenced,
    Fact,
    Notes,
    Observation,
    Preference,
    Repair,
    Reveal,
    Section,
    Why,
)
from notesmith.review.edits import Kind, Said, Value, Words
from notesmith.review.finding import Span, words_after, words_before
from notesmith.transcript import Talk

KINDS: dict[Kind, type[Evidenced]] = {
    "observation": Observation, "comparison": Comparison, "preference": Preference, "fact": Fact,
    "reveal": Reveal, "section": Section, "repair": Repair,
}  # fmt: skip
FIELDS: dict[Kind, str] = {kind: f"{kind}s" for kind in KINDS}
"""Under which name the notes hold the records of a kind."""
IDENTIFYING: dict[Kind, tuple[str, ...]] = {
    "observation": ("sample",), "comparison": ("attribute", "more", "less"), "preference": ("scope",),
    "fact": ("kind", "sample"), "reveal": ("sample",), "section": (), "repair": (),
}  # fmt: skip
"""What tells apart the records of the same words."""
DERIVED = frozenset({*Evidenced.model_fields, "term", "term_span", "after_reveal"})
"""What follows from the words and the other records, and so is nothing to say."""
OPENING = 60
"""Characters of a section that are enough to know it by."""


def kind_of(record: Evidenced) -> Kind:
    """Which of the seven records it is. Raises KeyError for what was ignored: that is none."""
    return {model: kind for kind, model in KINDS.items()}[type(record)]


def place_of(record: Evidenced) -> Span:
    """The characters that a record is told by: an observation's term, a section's opening, else its quote."""
    if isinstance(record, Observation):
        return record.term_span
    if isinstance(record, Section):
        return record.span[0], record.span[0] + len(_opening(record.quote))
    return record.span


def identity_of(record: Evidenced) -> dict[str, Value]:
    """What tells the record from others of the same words."""
    return {name: getattr(record, name) for name in IDENTIFYING[kind_of(record)]}


def words_at(talk: Talk, start: int, end: int) -> Words:
    """The words between two characters of the talk, as an edit keeps them."""
    return Words(
        text=talk.text[start:end],
        before=words_before(talk.text, start),
        after=words_after(talk.text, end),
        span=(start, end),
        start=talk.ms_at(start) / 1000 if talk.timed else None,
    )


def said(notes: Notes, talk: Talk, record: Evidenced) -> Said:
    """A record of the notes as an edit keeps it."""
    kind, place = kind_of(record), place_of(record)
    others = [r for r in getattr(notes, FIELDS[kind]) if r.id != record.id and place_of(r) == place]
    return Said(
        kind=kind,
        id=record.id,
        words=words_at(talk, *(place if kind == "section" else record.span)),
        term=words_at(talk, *place) if kind == "observation" else None,
        says={name: value for name, value in record if name not in DERIVED},
        beside=tuple(identity_of(other) for other in others),
    )


def drafted(talk: Talk, kind: Kind, span: Span, says: dict[str, Value], *, term_span: Span | None = None) -> Said:
    """A new record of the words at `span`, for an edit that adds it; an observation's term may be a part of them."""
    term = words_at(talk, *(term_span or span)) if kind == "observation" else None
    return Said(kind=kind, words=words_at(talk, *span), term=term, says=says)


def made(talk: Talk, record: Said, span: Span, term_span: Span | None, edit: str, number: int) -> Evidenced:
    """The record that an edit puts into the notes. Raises ValueError where it says what no such record can."""
    digest = sha256(f"{edit}|{number}".encode()).hexdigest()[:10]
    fields: dict[str, Any] = {
        **evidence(talk, span), **record.says,
        "id": f"{record.kind}-{digest}", "confidence": 1.0, "why": (because(edit, record.words.text),),
    }  # fmt: skip
    if term_span:
        fields |= {"term": talk.text[slice(*term_span)], "term_span": term_span, "after_reveal": False}
    return KINDS[record.kind].model_validate(fields)


def evidence(talk: Talk, span: Span) -> dict[str, Any]:
    """Where and when the words of a record were said."""
    start, end = span
    return {
        "quote": talk.text[start:end],
        "span": span,
        "start": talk.ms_at(start) / 1000 if talk.timed else None,
        "end": talk.cues[talk.cue_at(end - 1)].end_ms / 1000 if talk.timed else None,
    }


def because(edit: str, words: str) -> Why:
    """That a record is as it is because of an edit."""
    return Why(rule=f"correction {edit}", words=words)


def is_corrected(record: Evidenced) -> bool:
    """Whether an edit had a hand in the record."""
    return any(why.rule.startswith("correction ") for why in record.why)


def _opening(quote: str) -> str:
    return quote if len(quote) <= OPENING else quote[:OPENING].rpartition(" ")[0] or quote[:OPENING]
