"""Episodes made up for tests: what is said, cue by cue, and the records of it."""

from typing import Any

from notesmith.publishing.episode import Episode
from notesmith.records import Notes, Sheet
from notesmith.transcript import Talk
from notesmith.transcript.reading import parse_captions

CUE_S = 10
LISTS = ("observations", "comparisons", "preferences", "facts", "reveals", "sections", "repairs", "ignored")
USUAL: dict[str, dict[str, Any]] = {
    "observations": {"concept": None, "facet": "flavour", "presence": "present", "intensity": None, "sample": "A",
                     "taster": "Ines", "preparation": None, "voice": "taster", "after_reveal": False},
    "comparisons": {"more": None, "less": None, "samples": (), "relation": "more", "degree": None, "taster": "Ines"},
    "preferences": {"over": (), "scope": "overall", "degree": None, "taster": "Ines"},
    "facts": {"unit": None, "sample": None, "preparation": None},
    "reveals": {}, "sections": {"sample": None}, "repairs": {}, "ignored": {},
}  # fmt: skip


def record(kind: str, cue: int, quote: str, /, **fields: Any) -> tuple[str, int, str, dict[str, Any]]:
    """A record of a kind: words of the cue of that number, from 0."""
    return kind, cue, quote, fields


def seen(cue: int, term: str, /, **fields: Any) -> tuple[str, int, str, dict[str, Any]]:
    """A perception whose quote is its term, unless `quote` is given."""
    return record("observations", cue, fields.pop("quote", term), term=term, **fields)


def told(cues: list[str], *records: tuple[str, int, str, dict[str, Any]], sheet: Sheet, **wishes: Any) -> Episode:
    """The episode in which each cue takes ten seconds; `wishes` are the episode's other fields."""
    lines = [f"{_clock(k)} --> {_clock(k + 1)}\n{cue}\n" for k, cue in enumerate(cues)]
    captions = parse_captions(("WEBVTT\n\n" + "\n".join(lines)).encode(), "made-up.vtt")
    talk = Talk.from_captions(captions)
    lists: dict[str, list[dict[str, Any]]] = {kind: [] for kind in LISTS}
    for number, (kind, cue, quote, fields) in enumerate(records):
        lists[kind].append(_record(talk, kind, number, cue, quote, fields))
    notes = Notes.model_validate({
        "transcript": "made-up.vtt", "sheet": sheet, "sheet_drafted": False, "warnings": (),
        "samples": tuple(sample.id for sample in sheet.samples), **lists,
    })  # fmt: skip
    return Episode(notes, captions, **wishes)


def _clock(cue: int) -> str:
    return f"00:{cue * CUE_S // 60:02}:{cue * CUE_S % 60:02}.000"


def _record(talk: Talk, kind: str, number: int, cue: int, quote: str, fields: dict[str, Any]) -> dict[str, Any]:
    at = talk.text.index(quote, talk.cues[cue].start)
    if kind == "observations" and "term_span" not in fields:
        begin = talk.text.index(fields["term"], at)
        fields = {**fields, "term_span": (begin, begin + len(fields["term"]))}
    return {
        **USUAL[kind], "id": f"{kind}-{number}", "start": cue * float(CUE_S), "end": (cue + 1) * float(CUE_S),
        "quote": quote, "span": (at, at + len(quote)), "confidence": 1.0, "why": (), **fields,
    }  # fmt: skip
