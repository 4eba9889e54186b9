"""One episode for each hostile text, with that text wherever notes, sheet and captions may hold one."""

import json
import tomllib
from functools import cache
from pathlib import Path
from typing import Any

from notesmith.publishing.episode import Episode, Media
from notesmith.records import Notes
from notesmith.transcript.reading import parse_captions
from notesmith.transcript.talk import Talk

CASES = Path(__file__).parents[2] / "cases"
TEXTS: dict[str, str] = tomllib.loads((CASES / "publishing" / "hostile.toml").read_text("utf-8"))
TEXTS |= {"long": "x" * 10_000, "long_words": "plum smoke " * 909}
RECORDS = (
    "observations", "comparisons", "preferences", "facts", "reveals", "sections", "repairs", "ignored",
)  # fmt: skip


@cache
def episode_with(name: str) -> Episode:
    """The small notes with the hostile text of that name in every place that takes a text."""
    hostile = TEXTS[name]
    notes = json.loads((CASES / "notes" / "small.notes.json").read_text("utf-8"))
    notes["sections"] += [_section(notes, 3650, "tasting", "B"), _section(notes, 3700, "closing", None)]
    records = sorted((record for kind in RECORDS for record in notes[kind]), key=lambda record: record["span"])
    source = _captions(records, hostile)
    captions = parse_captions(source, "hostile.json")
    talk = Talk.from_captions(captions)
    assert len(talk.cues) == len(records)
    for record, cue in zip(records, talk.cues, strict=True):
        record |= {"span": (cue.start, cue.end), "quote": talk.text[cue.start : cue.end]}
    _poison(notes, hostile)
    media = Media(Path("/recordings") / "Ana's cups.mp4", 4_000_000)
    return Episode(Notes.model_validate(notes), captions, source, media)


def _section(notes: dict[str, Any], start: int, kind: str, sample: str | None) -> dict[str, Any]:
    """One more section, so that there are enough for a list of times."""
    where = {"id": f"s{start}", "start": start, "end": start + 40, "span": [start, start + 1]}
    return notes["sections"][0] | where | {"kind": kind, "sample": sample}


def _captions(records: list[dict[str, Any]], hostile: str) -> bytes:
    """A cue for each record: its words, then the hostile ones."""
    segments = [
        {"speaker": hostile, "startTime": 10 * k, "endTime": 10 * k + 9, "body": f"{record['quote']} {hostile}"}
        for k, record in enumerate(records)
    ]
    return json.dumps({"version": "1.0.0", "segments": segments}).encode()


def _poison(notes: dict[str, Any], hostile: str) -> None:
    """Put the text into the sheet, and into what the records make of the words."""
    names = {old: f"{old}{hostile}" for old in ("A", "B", "Ana", "Bram", "short", "mug")}
    sheet = notes["sheet"]
    sheet |= {"title": hostile, "category": hostile, "tasters": [names[one] for one in sheet["tasters"]]}
    for sample in sheet["samples"]:
        sample.update(dict.fromkeys(("harvest", "origin", "cultivar", "process", "description"), hostile))
        sample.update({"id": names[sample["id"]], "product": hostile, "aliases": [hostile], "currency": "EUR"})
    for preparation in sheet["preparations"]:
        preparation["id"] = names[preparation["id"]]
    notes |= {"samples": [names[one] for one in notes["samples"]], "transcript": f"{hostile}.json",
              "warnings": [hostile]}  # fmt: skip
    for record in (record for kind in RECORDS for record in notes[kind]):
        _poison_record(record, names, hostile)


def _poison_record(record: dict[str, Any], names: dict[str, str], hostile: str) -> None:
    for key in ("sample", "taster", "preparation", "more", "less", "preferred"):
        if record.get(key):
            record[key] = names.get(record[key], record[key])
    for key in ("over", "samples"):
        if key in record:
            record[key] = [names[one] for one in record[key]]
    for key in ("attribute", "unit", "product", "meant", "reason"):
        if record.get(key):
            record[key] = f"{record[key]} {hostile}"
    record["why"] = [{"rule": "named", "words": hostile}]
    if "term_span" in record:
        start = record["span"][0]
        record |= {"term": record["quote"][:9], "term_span": (start, start + len(record["quote"][:9]))}
