"""Observations as comma-separated values, one row each, for a spreadsheet or a statistics program."""

import csv
import io
from typing import Any

from notesmith.publishing.plain import one_line
from notesmith.records import Notes, Observation

COLUMNS = (
    "transcript", "id", "start", "end", "sample", "preparation", "taster", "facet", "term", "concept", "presence",
    "intensity", "voice", "after_reveal", "confidence", "quote", "span_start", "span_end", "term_start", "term_end",
    "why",
)  # fmt: skip


def render(notes: Notes) -> str:
    """Write all observations; times are seconds, spans are characters, what is null is empty.

    A text that a spreadsheet would take for a formula gets an apostrophe before it.
    """
    lines = io.StringIO()
    writer = csv.DictWriter(lines, COLUMNS, lineterminator="\n")
    writer.writeheader()
    for seen in notes.observations:
        writer.writerow({name: _shown(value) for name, value in _row(notes, seen).items()})
    return lines.getvalue()


def _row(notes: Notes, seen: Observation) -> dict[str, Any]:
    row = seen.model_dump(exclude={"span", "term_span", "why"})
    row |= {"transcript": notes.transcript, "span_start": seen.span[0], "span_end": seen.span[1]}
    row |= {"term_start": seen.term_span[0], "term_end": seen.term_span[1]}
    row["why"] = "; ".join(f"{why.rule}: {why.words}" if why.words else why.rule for why in seen.why)
    return row


def _shown(value: Any) -> Any:
    if isinstance(value, bool):
        return "true" if value else "false"
    if not isinstance(value, str):
        return value
    text = one_line(value)
    return f"'{text}" if text.startswith(("=", "+", "-", "@")) else text
