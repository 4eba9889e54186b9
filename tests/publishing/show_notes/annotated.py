"""The annotated recordings as episodes: every annotation made a record, with its words found in the talk."""

import json
from collections.abc import Iterator
from functools import cache
from pathlib import Path
from typing import Any, get_args

from notesmith.publishing.episode import Episode
from notesmith.records import FactKind, Notes
from notesmith.sheet import read_sheet
from notesmith.transcript import Talk, read_captions

FOLDER = Path(__file__).parents[3] / "samples" / "recordings"
LISTS = {
    "observations": "observation", "comparisons": "comparison", "preferences": "preference", "facts": "fact",
    "reveals": "reveal", "sections": "section", "repairs": "repair",
}  # fmt: skip


def names() -> list[str]:
    """The names of all annotated recordings."""
    return sorted(path.name.removesuffix(".gold.json") for path in FOLDER.glob("*.gold.json"))


@cache
def episode(name: str) -> Episode:
    """The episode that a perfect listener would publish of a recording."""
    gold = json.loads((FOLDER / f"{name}.gold.json").read_text("utf-8"))
    captions = read_captions(FOLDER / gold["transcript"])
    sheet = read_sheet(FOLDER / f"{name}.sheet.json")
    talk = Talk.from_captions(captions)
    records = {kind: list(_records(talk, kind, one, gold[kind])) for kind, one in LISTS.items()}
    notes = Notes.model_validate({
        "transcript": gold["transcript"], "sheet": sheet, "sheet_drafted": False,
        "samples": tuple(sample.id for sample in sheet.samples), "ignored": (), "warnings": (), **records,
    })  # fmt: skip
    return Episode(notes, captions)


def _records(talk: Talk, kind: str, one: str, annotated: list[dict[str, Any]]) -> Iterator[dict[str, Any]]:
    ends = [record["start"] for record in annotated[1:]] + [None]
    for number, record in enumerate(annotated):
        fields = {key: value for key, value in record.items() if key not in ("start", "end", "quote")}
        if kind == "facts" and record["kind"] not in get_args(FactKind):
            continue
        span = _section(talk, record, ends[number]) if kind == "sections" else _found(talk, record, kind)
        if span is None:
            continue
        if kind == "observations":
            fields |= {"concept": None, "after_reveal": False, "term_span": _term(talk, span, record["term"])}
        if kind == "comparisons":
            fields["samples"] = record.get("samples") or ()
        if kind in ("comparisons", "preferences"):
            fields.setdefault("taster", None)
        if kind == "repairs":
            fields["heard"] = talk.text[slice(*span)]
        cue = talk.cues[talk.cue_at(span[0])], talk.cues[talk.cue_at(span[1] - 1)]
        start = talk.ms_at(span[0]) / 1000 if talk.timed else None
        yield {
            **fields, "id": f"{one}-{number}", "start": start, "end": cue[1].end_ms / 1000 if talk.timed else None,
            "quote": talk.text[slice(*span)], "span": span, "confidence": 1.0, "why": (),
        }  # fmt: skip


def _found(talk: Talk, record: dict[str, Any], kind: str) -> tuple[int, int] | None:
    """Where the quote stands: nearest to the time annotated, in whatever case and spacing."""
    quote = " ".join((record["heard"] if kind == "repairs" else record.get("quote") or "").casefold().split())
    if not quote:  # of some records only the time is annotated
        cue = min(talk.cues, key=lambda cue: abs(cue.start_ms / 1000 - record["start"]))
        return cue.start, cue.end
    text = talk.text.casefold()
    places, at = [], text.find(quote)
    while quote and at >= 0 and len(text) == len(talk.text):
        places.append(at)
        at = text.find(quote, at + 1)
    best = min(places, key=lambda at: abs(talk.ms_at(at) / 1000 - record["start"]), default=None)
    return None if best is None else (best, best + len(quote))


def _section(talk: Talk, record: dict[str, Any], end: float | None) -> tuple[int, int]:
    first = next((cue for cue in talk.cues if cue.start_ms / 1000 >= record["start"] - 0.5), talk.cues[-1])
    last = [cue for cue in talk.cues if end is None or cue.start_ms / 1000 < end]
    return first.start, max(last[-1].end if last else first.end, first.end)


def _term(talk: Talk, span: tuple[int, int], term: str) -> tuple[int, int]:
    """Where the term stands: in the quote, or, where that only points back, before it."""
    text = talk.text.casefold()
    within, before = text.find(term.casefold(), *span), text.rfind(term.casefold(), 0, span[0])
    at = within if within >= 0 else before
    return (at, at + len(term)) if at >= 0 else span
