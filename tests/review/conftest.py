"""A small talk, what the listener made of it, and edits told by their words."""

import tomllib
from dataclasses import dataclass
from pathlib import Path
from typing import Any

import pytest

from notesmith.records import Evidenced, Notes, Sheet, SheetSample
from notesmith.review.edits import EDIT, Edit, Kind, Said, Value
from notesmith.review.finding import Span
from notesmith.review.saying import FIELDS, drafted, made, place_of, said, words_at
from notesmith.transcript import Talk, parse_captions

CASES = Path(__file__).parent.parent / "cases" / "review"
TOLD: dict[str, Any] = tomllib.loads((CASES / "edits.toml").read_text("utf-8"))
PERCEIVED: dict[str, Value] = {
    "concept": None, "facet": "flavour", "presence": "present", "intensity": None, "taster": None,
    "preparation": None, "voice": "taster",
}  # fmt: skip


@dataclass(frozen=True)
class Bench:
    """A talk and its notes, to which edits are told in words."""

    talk: Talk
    notes: Notes

    def record(self, told: str, nth: int = 1) -> Evidenced:
        """The record of some words, and where need be of a sample: `grassy of two`."""
        quote, _, sample = told.partition(" of ")
        place = self.place(quote, nth)
        records = [r for name in FIELDS.values() for r in getattr(self.notes, name)]
        return next(
            r for r in records if place in (r.span, place_of(r)) and (not sample or getattr(r, "sample", "") == sample)
        )

    def said(self, told: str, nth: int = 1) -> Said:
        """The same as an edit keeps it."""
        return said(self.notes, self.talk, self.record(told, nth))

    def draft(self, told: dict[str, Any]) -> Said:
        """A record told by its words and what it says."""
        kind: Kind = told["kind"]
        span = self.place(told["words"], told.get("nth", 1))
        says = {name: value if value != "" else None for name, value in told.get("says", {}).items()}
        if kind == "observation":
            says = PERCEIVED | {n: v for n, v in told.items() if n not in ("kind", "words", "nth", "term")}
        return drafted(self.talk, kind, span, says, term_span=self.term(told, span))

    def term(self, told: dict[str, Any], span: Span) -> Span:
        """Where its term stands."""
        start = self.talk.text.lower().index(told.get("term", told["words"]).lower(), span[0])
        return start, start + len(told.get("term", told["words"]))

    def place(self, words: str, nth: int = 1) -> Span:
        """Where words stand for the nth time, whatever their case."""
        at = -1
        for _ in range(nth):
            at = self.talk.text.lower().index(words.lower(), at + 1)
        return at, at + len(words)

    def edits(self, told: list[dict[str, Any]]) -> tuple[Edit, ...]:
        """Edits as told in words, numbered from 1."""
        return tuple(EDIT.validate_python(self._edit(number, one)) for number, one in enumerate(told, 1))

    def _edit(self, number: int, told: dict[str, Any]) -> dict[str, Any]:
        edit = {"at": "2031-05-01T09:00:00+00:00", **told, "id": f"e{number}"}
        nth, of = edit.pop("nth", 1), edit.pop("of", None) if told["do"] != "alias" else None
        if "record" in edit:
            edit["record"] = self.said(f"{told['record']} of {of}" if of else told["record"], nth)
        for name in {"first", "last", "words"} & edit.keys():
            edit[name] = words_at(self.talk, *self.place(edit[name]))
        if told["do"] in ("undo", "redo"):
            edit["edit"] = "e1"
        if told["do"] in ("split", "join", "delete", "add"):
            edit["records"] = [self.said(record) for record in told.get("records", ())]
            edit["by"] = [self.draft(record) for record in told.get("by", ())]
        if told["do"] == "alias":
            edit["of"] = told["of"]
        return edit


def bench_of(text: str, *, without: tuple[str, ...] = (), heard: tuple[dict[str, Any], ...] = ()) -> Bench:
    """The talk of some captions and what the listener made of it; of words that do not stand there it made nothing."""
    talk = Talk.from_captions(parse_captions(text.encode(), "cups.vtt"))
    notes = Notes(
        transcript="cups.vtt", sheet=Sheet(samples=(SheetSample(id="one"), SheetSample(id="two"))), sheet_drafted=False,
        samples=("one", "two"), observations=(), comparisons=(), preferences=(), facts=(), reveals=(), sections=(),
        repairs=(), ignored=(), warnings=(),
    )  # fmt: skip
    bench, records = Bench(talk, notes), []
    for number, told in enumerate(TOLD["records"]):
        named = {told["words"], f"{told['words']} of {told.get('sample')}"}
        if named.isdisjoint(without) and told["words"].lower() in talk.text.lower():
            now = next(({**told, **other} for other in heard if other["record"] == told["words"]), told)
            records.append(_listened(bench, {n: v for n, v in now.items() if n != "record"}, number))
    kinds = {
        FIELDS[kind]: tuple(r for of, r in sorted(records, key=lambda pair: place_of(pair[1])) if of == kind)
        for kind in FIELDS
    }
    return Bench(talk, notes.model_copy(update=kinds))


def _listened(bench: Bench, told: dict[str, Any], number: int) -> tuple[Kind, Evidenced]:
    draft, span = bench.draft(told), bench.place(told["words"], told.get("nth", 1))
    term = bench.term(told, span) if draft.kind == "observation" else None
    record = made(bench.talk, draft, span, term, "listening", number)
    return draft.kind, record.model_copy(update={"why": (), "confidence": 0.7})


@pytest.fixture
def cups() -> Bench:
    """The talk of the cases."""
    return bench_of((CASES / "cups.vtt").read_text("utf-8"))
