"""The long table: one row a record, of every kind, with a column for each field that any of them has."""

from collections.abc import Iterator
from typing import Any

from notesmith.publishing.episode import Episode
from notesmith.publishing.tables.model import Column, Table, Value
from notesmith.records import Evidenced, Fact, Notes

COLUMNS = (
    Column("transcript", "text", "Name of the caption file."),
    Column("record", "text", "Which kind of record the row is."),
    Column("id", "text", "Identity of the record."),
    Column("start", "number", "Seconds from the start of the recording."),
    Column("end", "number", "Seconds from the start of the recording."),
    Column("sample", "text", "The sample it is about."),
    Column("preparation", "text", "The preparation it is about."),
    Column("taster", "text", "Who said it."),
    Column("facet", "text", "Observation: which side of the sample is perceived."),
    Column("term", "text", "Observation, ignored: the word or phrase as spoken."),
    Column("concept", "text", "Observation: the lexicon's concept."),
    Column("presence", "text", "Observation: present, absent or uncertain."),
    Column("intensity", "text", "Observation: low, high, or nothing where unmarked."),
    Column("voice", "text", "Observation: taster or quoted."),
    Column("after_reveal", "truth", "Observation: whether the sample's identity was known by then."),
    Column("attribute", "text", "Comparison: the property."),
    Column("relation", "text", "Comparison: more or equal."),
    Column("more", "text", "Comparison: the sample that has more."),
    Column("less", "text", "Comparison: the sample that has less."),
    Column("samples", "texts", "Comparison: the samples that are equal."),
    Column("preferred", "text", "Preference: the sample liked best."),
    Column("over", "texts", "Preference: the samples it is preferred to, best first."),
    Column("scope", "text", "Preference: overall, a facet, or a preparation."),
    Column("degree", "text", "Comparison, preference: low, high, or nothing where unmarked."),
    Column("kind", "text", "Fact, section: which kind."),
    Column("value", "text", "Fact: what was stated."),
    Column("number", "number", "Fact: what was stated, where that is one number."),
    Column("unit", "text", "Fact: the unit as spoken."),
    Column("product", "text", "Reveal: what the sample turns out to be."),
    Column("heard", "text", "Repair: the words as the captions print them."),
    Column("meant", "text", "Repair: what was said."),
    Column("reason", "text", "Ignored: why it is no observation."),
    Column("confidence", "number", "How sure the listener is, from 0 to 1."),
    Column("quote", "text", "The words, verbatim."),
    Column("span_start", "whole", "Where the quote begins in the talk, in characters."),
    Column("span_end", "whole", "Where the quote ends in the talk, in characters."),
    Column("term_start", "whole", "Where the term begins in the talk, in characters."),
    Column("term_end", "whole", "Where the term ends in the talk, in characters."),
    Column("why", "texts", "The rules or scores that decided, each with its words."),
)


def records(episode: Episode) -> Table:
    """Every record of the notes, kind by kind, in the order of the notes."""
    rows = (row_of(episode.notes, kind, record) for kind, record in _every(episode.notes))
    return Table(COLUMNS, tuple(tuple(row.get(column.name) for column in COLUMNS) for row in rows))


def row_of(notes: Notes, kind: str, record: Evidenced) -> dict[str, Value]:
    """The fields of one record by the names of their columns; one that stands for two columns is taken apart."""
    row: dict[str, Any] = record.model_dump(exclude={"span", "term_span", "why"})
    for name in ("span", "term_span"):
        if span := getattr(record, name, None):
            side = name.removesuffix("_span")
            row |= {f"{side}_start": span[0], f"{side}_end": span[1]}
    row["why"] = tuple(f"{why.rule}: {why.words}" if why.words else why.rule for why in record.why)
    if isinstance(record, Fact):
        row |= {"value": str(record.value), "number": None if isinstance(record.value, str) else record.value}
    return {"transcript": notes.transcript, "record": kind, **row}


def _every(notes: Notes) -> Iterator[tuple[str, Evidenced]]:
    kinds = {
        "observation": notes.observations, "comparison": notes.comparisons, "preference": notes.preferences,
        "fact": notes.facts, "reveal": notes.reveals, "section": notes.sections, "repair": notes.repairs,
        "ignored": notes.ignored,
    }  # fmt: skip
    for kind, several in kinds.items():
        for record in several:
            yield kind, record
