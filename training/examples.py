"""From an annotated recording to an example: its words, what the rules make of them, and what a listener wrote."""

import json
import re
from bisect import bisect_right
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from pathlib import Path
from typing import Any

import numpy as np
from numpy.typing import NDArray

from notesmith.lexicon import Lexicon
from notesmith.listening.facts import candidates
from notesmith.listening.hearing import Hearing
from notesmith.listening.pipeline import listen
from notesmith.listening.shown import (
    FACETS,
    FACT_KINDS,
    FOLLOWING,
    PARTS,
    PRESENCES,
    SECTION_KINDS,
    SIGHTS,
    SINCE,
    cast_parts,
    following_parts,
    show,
    since_parts,
    slots_of,
)
from notesmith.listening.told import INTENSITIES, POINTERS, VOICES, WIDTHS
from notesmith.sheet import read_sheet
from notesmith.transcript import Captions, Talk, read_captions
from training.layout import UNTOLD, Layout

Record = dict[str, Any]
LAYOUT = Layout(
    SIGHTS, ["named", "since", "until", "pointed", "pause", "samples", "echo", "since echo"], WIDTHS, list(POINTERS),
    list(PARTS),
    [
        "nobody", "last", "earlier", "coming", "named before in the thought", "named after in the thought",
        "echoed", "echoed in the thought", "echoed soon", "not named yet", "named longest ago", "named since",
        "echoed since",
    ],
)  # fmt: skip
TARGETS = LAYOUT.targets


@dataclass(frozen=True)
class Example:
    """One recording as the training sees it: a row a word."""

    name: str
    words: list[str]
    sights: NDArray[np.int16]
    parts: NDArray[np.int16]  # the slot of the sample that plays each part
    targets: NDArray[np.int16]  # a column a target
    samples: int
    unfound: int  # records whose words could not be placed

    def stretches(self) -> list[tuple[int, int, int]]:
        """Every description: its first word, the word after its last, and the slot of its sample."""
        marks, samples = (self.targets[:, TARGETS.index(name)].tolist() for name in ("description", "sample"))
        ends = [*(k for k, mark in enumerate(marks) if mark != 2), len(marks)]  # 2: a description goes on
        return [
            (start, ends[bisect_right(ends, start)], samples[start]) for start, mark in enumerate(marks) if mark == 1
        ]


def caption_file(gold: Path) -> Path:
    """The captions that an annotation lies beside."""
    return gold.parent / str(json.loads(gold.read_text(encoding="utf-8"))["transcript"])


def read_example(gold: Path, lexicon: Lexicon, *, bare: bool) -> tuple[Example, Hearing]:
    """Listen to a recording by the rules and place its annotation; `bare` takes away case and punctuation first."""
    captions = read_captions(caption_file(gold))
    if bare:
        captions = strip(captions)
    hearing = listen(Talk.from_captions(captions), read_sheet(_sheet_of(gold)), lexicon, by_rules=True)
    labels = Labels(hearing, json.loads(gold.read_text(encoding="utf-8")))
    words, cast = [w.norm for w in hearing.words], cast_parts(hearing)
    parts, sights = cast.parts, show(hearing, cast)
    last, before = labels.perceived_last()
    parts[:, SINCE:FOLLOWING] = np.stack(since_parts(cast, np.arange(len(words)), before), axis=1)
    parts[:, FOLLOWING:] = np.stack(following_parts(last, len(slots_of(hearing))), axis=1)
    name = gold.name.removesuffix(".gold.json")
    return Example(name, words, sights, parts, labels.targets, len(slots_of(hearing)), labels.unfound), hearing


def _sheet_of(gold: Path) -> Path:
    stem = gold.name.removesuffix(".gold.json")
    return next(p for p in (gold.parent / f"{stem}.sheet.{kind}" for kind in ("json", "toml")) if p.exists())


def strip(captions: Captions) -> Captions:
    """The captions as a recogniser without case and punctuation would have printed them."""
    cues = []
    for cue in captions.cues:
        texts = [(w, re.sub(r"[^\w\s']", "", w.text.lower())) for w in cue.words]
        words = tuple(replace(w, text=text) for w, text in texts if text)
        if words:
            cues.append(replace(cue, words=words))
    return replace(captions, cues=tuple(cues))


def letters(text: str) -> str:
    """A text reduced to what both kinds of captions have in common, to find one in the other."""
    return re.sub(r"[^\w']", "", text.lower().replace("’", "'").replace("‘", "'"))


class Labels:
    """Places every record of an annotation on the words that it quotes."""

    def __init__(self, hearing: Hearing, gold: Record) -> None:
        self.hearing, self.slots, self.unfound = hearing, slots_of(hearing), 0
        self.said = [letters(hearing.said(i, i + 1)) for i in range(len(hearing.words))]
        self.possible = candidates(hearing)
        self.column = {name: np.full(len(self.said), UNTOLD, dtype=np.int16) for name in TARGETS}
        for name in ("description", "fact", "comparison", "preference", "repair", "boundary"):
            self.column[name][:] = 0
        self._place_observations(gold["observations"])
        self._place_facts(gold["facts"])
        self._place_comparisons(gold["comparisons"])
        self._place_preferences(gold["preferences"])
        self._place_sections(gold["sections"])
        for record in gold["repairs"]:
            stretch = self._find(record, record["heard"])
            self._mark("repair", stretch)
        self.targets = np.stack([self.column[name] for name in TARGETS], axis=1)

    def perceived_last(self) -> tuple[NDArray[np.int16], NDArray[np.int64]]:
        """For every word, the slot of the sample perceived last, and where the last description ended."""
        last, ended = np.zeros(len(self.said), dtype=np.int16), np.zeros(len(self.said), dtype=np.int64)
        marks, current, end = self.column["description"], 0, 0
        for i, mark in enumerate(marks):
            if i and marks[i - 1] and mark != 2:  # a description has ended
                current, end = self.column["sample"][i - 1] or current, i
            last[i], ended[i] = current, end
        return last, ended

    def _window(self, record: Record) -> range:
        """The words that a record's quote may begin with: those of its cue, with a little slack."""
        start = record["start"] * 1000
        ends = record.get("end")
        stop = ends * 1000 if ends else start + 30_000
        words = self.hearing.words
        first = next((i for i, w in enumerate(words) if w.ms >= start - 1500), len(words))
        last = next((i for i in range(first, len(words)) if words[i].ms > stop + 500), len(words))
        return range(first, last)

    def _find(self, record: Record, text: str, within: range | None = None) -> range:
        """The words that say `text` in the record's cue; empty where they are not found."""
        want = [w for w in (letters(t) for t in re.split(r"[\s-]+", text)) if w]
        for i in self._window(record) if within is None else within:
            end = self._matches(i, "".join(want))
            if end:
                return range(i, end)
        if within is None:
            self.unfound += 1
        return range(0)

    def _matches(self, i: int, want: str) -> int:
        """Where the words from `i` that spell `want` end; 0 where they spell something else."""
        if not self.said[i]:
            return 0
        while want and i < len(self.said) and want.startswith(self.said[i]):
            want = want[len(self.said[i]) :]
            i += 1
        return 0 if want else i

    def _mark(self, column: str, stretch: range, begin: int = 1, inside: int = 2) -> None:
        if stretch:
            self.column[column][stretch.start : stretch.stop] = inside
            self.column[column][stretch.start] = begin

    def _set(self, stretch: range, **values: int) -> None:
        for name, value in values.items():
            self.column[name][stretch.start : stretch.stop] = value

    def _slot(self, sample: str | None) -> int:
        return self.slots.get(sample, 0)

    def _place_observations(self, records: Sequence[Record]) -> None:
        for record in records:
            quote = self._find(record, record["quote"])
            term = self._find(record, record["term"], quote) if quote else range(0)
            if not term:
                continue
            while self.column["description"][term.start] and self._again(record, term):
                later = self._find(record, record["term"], range(term.stop, self._window(record).stop))
                if not later:
                    break
                term = later
            if self.column["description"][term.start]:  # the same words said of another sample too
                self._set(term, also=self._slot(record["sample"]))
                continue
            self._mark("description", term)
            self._set(
                term,
                presence=PRESENCES.index(record["presence"]), intensity=INTENSITIES.index(record["intensity"]),
                facet=FACETS.index(record["facet"]), voice=VOICES.index(record["voice"]),
                sample=self._slot(record["sample"]), also=0,
            )  # fmt: skip

    def _again(self, record: Record, term: range) -> bool:
        """Whether the same words already stand for the same sample, so that a later place is meant."""
        return int(self.column["sample"][term.start]) == self._slot(record["sample"])

    def _place_facts(self, records: Sequence[Record]) -> None:
        for record in records:
            if record["kind"] not in FACT_KINDS:
                continue
            quote = self._find(record, record["quote"])
            stretch = self._value(record, quote) or quote
            kind = 1 + 2 * FACT_KINDS.index(record["kind"])
            stands = self.column["fact"][stretch.start : stretch.stop] if stretch else np.zeros(0)
            if stretch and not stands.any():
                self._mark("fact", stretch, kind, kind + 1)
                self._set(stretch, stated=self._slot(record["sample"]), stated_also=0)
            elif stretch and stands[0] == kind:
                self._set(stretch, stated_also=self._slot(record["sample"]))

    def _value(self, record: Record, quote: range) -> range:
        """The words of the quote that state the value, as far as the rules can tell an amount."""
        stated = [a for a in self.possible if quote.start <= a.start and a.end <= quote.stop]
        same = [a for a in stated if a.kind == record["kind"] and str(a.value).lower() == str(record["value"]).lower()]
        return range(same[0].start, same[0].end) if same else range(0)

    def _place_comparisons(self, records: Sequence[Record]) -> None:
        for record in records:
            quote = self._find(record, record["quote"])
            stretch = (self._find(record, record["attribute"], quote) if quote else range(0)) or quote
            if stretch and not self.column["comparison"][stretch.start]:
                pair = record.get("samples") or [record.get("more"), record.get("less")]
                self._mark("comparison", stretch)
                self._set(
                    stretch, relation=int(record["relation"] == "equal"),
                    more=self._slot(pair[0]), less=self._slot(pair[1] if len(pair) > 1 else None),
                )  # fmt: skip

    def _place_preferences(self, records: Sequence[Record]) -> None:
        for record in records:
            quote = self._find(record, record["quote"])
            if quote and not self.column["preference"][quote.start]:
                self._mark("preference", quote)
                self._set(quote, scope=int(record["scope"] == "overall"), preferred=self._slot(record["preferred"]))

    def _place_sections(self, records: Sequence[Record]) -> None:
        words = self.hearing.words
        starts = [self._window(r).start for r in records]
        for record, start, end in zip(records, starts, [*starts[1:], len(words)], strict=False):
            first = next((i for i in range(start, len(words)) if words[i].ms >= record["start"] * 1000 - 1), len(words))
            self.column["section"][first:end] = SECTION_KINDS.index(record["kind"])
            if first < len(words):
                self.column["boundary"][first] = 1


def annotations(folder: Path) -> Iterator[Path]:
    """Every annotation of a folder, in order."""
    yield from sorted(folder.glob("*.gold.json"))
