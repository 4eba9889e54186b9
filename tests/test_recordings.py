"""The annotated recordings: every file keeps to the guidelines, and the split keeps product kinds apart."""

import re
import sys
from collections import Counter
from collections.abc import Iterator
from functools import cache
from itertools import pairwise
from pathlib import Path
from typing import Any, Literal, get_args

from pydantic import BaseModel, ConfigDict

FOLDER = Path(__file__).parents[1] / "samples" / "recordings"
sys.path.insert(0, str(FOLDER))
from card import Recording, card, read  # noqa: E402

Facet = Literal["appearance", "aroma", "flavour", "mouthfeel", "finish", "overall"]
Degree = Literal["low", "high"] | None
SectionKind = Literal[
    "opening", "method", "appearance", "aroma", "tasting", "comparison", "verdict", "quoted", "reveal", "background",
    "sponsor", "closing",
]  # fmt: skip
SECTION_S = 5.0  # the guidelines say 20 or so, a few are shorter; below this it is a slip
# A use that the talk names and the sheet has no preparation for.
USES = {"d10": {"beets", "mussels"}, "d15": {"eating", "melting"}, "d17": {"cooking"}}
LISTS = ("observations", "comparisons", "preferences", "facts", "reveals", "sections", "repairs")


class Closed(BaseModel):
    """A record with the guidelines' fields and no other."""

    model_config = ConfigDict(extra="forbid", strict=True)


class Placed(Closed):
    """What every record begins with."""

    start: float
    end: float | None


class Observation(Placed):
    """One sensory term of one sample."""

    term: str
    quote: str
    facet: Facet
    presence: Literal["present", "absent", "uncertain"]
    intensity: Degree
    sample: str | None
    taster: str | None
    preparation: str | None
    voice: Literal["taster", "quoted"]


class Comparison(Placed):
    """Two samples on one property."""

    quote: str
    attribute: str
    more: str | None
    less: str | None
    samples: tuple[str | None, str | None] | None = None
    relation: Literal["more", "equal"]
    degree: Degree
    taster: str | None = None


class Preference(Placed):
    """Which is liked better."""

    quote: str
    preferred: str | None
    over: list[str]
    scope: str
    degree: Degree
    taster: str | None = None


class Fact(Placed):
    """What is stated of a sample, or of how all are made."""

    quote: str
    kind: str
    value: int | float | str
    unit: str | None
    sample: str | None
    preparation: str | None


class Reveal(Placed):
    """Where a blind sample's identity becomes known."""

    quote: str | None = None
    sample: str
    product: str


class Section(Placed):
    """A chapter."""

    kind: SectionKind
    sample: str | None


class Repair(Placed):
    """What the captions got wrong."""

    heard: str
    meant: str


class Annotation(Closed):
    """A whole annotation."""

    transcript: str
    samples: list[str]
    observations: list[Observation]
    comparisons: list[Comparison]
    preferences: list[Preference]
    facts: list[Fact]
    reveals: list[Reveal]
    sections: list[Section]
    repairs: list[Repair]


@cache
def recordings() -> list[Recording]:
    """All of them, read once."""
    return read()


@cache
def annotations() -> list[tuple[Recording, Annotation]]:
    """Every annotation with its recording: the first ones, then the second ones of the same recordings."""
    of = {r.name: r for r in recordings()}
    again = sorted((FOLDER / "again").glob("*.gold.json"))
    files = [*sorted(FOLDER.glob("*.gold.json")), *again]
    return [(of[f.name.split(".")[0]], Annotation.model_validate_json(f.read_text("utf-8"))) for f in files]


def letters(text: str) -> str:
    """A text without case, spaces and punctuation."""
    return re.sub(r"[^\w']", "", text.lower().replace("’", "'").replace("‘", "'"))


class Said:
    """A recording's words run together, and where each begins."""

    def __init__(self, recording: Recording) -> None:
        self.seconds: dict[int, float] = {}
        spelt, at = [], 0
        for second, text in recording.words:
            spelt.append(letters(text))
            self.seconds.setdefault(at, second)
            at += len(spelt[-1])
        self.text = "".join(spelt)

    def begins(self, quote: str) -> Iterator[float]:
        """The seconds at which these words are said."""
        at = self.text.find(quote)
        while at >= 0:
            if at in self.seconds:
                yield self.seconds[at]
            at = self.text.find(quote, at + 1)


def slack(recording: Recording) -> float:
    """How many seconds a record may be off: one where the captions are timed in whole seconds."""
    return 1.0 if recording.captions.format == "stamped" else 0.02


@cache
def said(name: str) -> Said:
    """A recording's words, run together once."""
    return Said(next(r for r in recordings() if r.name == name))


def quoting(annotation: Annotation) -> Iterator[tuple[Any, str]]:
    """Every record that quotes, and its words as letters."""
    for name in LISTS:
        for record in getattr(annotation, name):
            words = getattr(record, "quote", None) or getattr(record, "heard", None)
            if words:
                yield record, letters(words)


def test_every_annotation_has_the_fields_of_the_guidelines_and_no_other() -> None:
    """Each is read by a closed model; none is empty."""
    assert all(a.observations and a.sections for _, a in annotations())


def test_every_file_belongs_to_a_recording_of_the_list() -> None:
    """A recording has captions, a sheet, an annotation and a line of kinds.tsv; nothing else lies there."""
    own = {"README.md", "GUIDELINES.md", "card.py", "kinds.tsv"}
    due = {n for r in recordings() for n in (r.gold["transcript"], f"{r.name}.sheet.json", f"{r.name}.gold.json")}
    assert {p.name for p in FOLDER.iterdir() if p.is_file()} == due | own
    assert [r.name for r in recordings()] == sorted({r.name for r in recordings()})
    assert all(Path(r.gold["transcript"]).stem == r.name for r in recordings())


def test_there_are_enough_recordings_of_enough_kinds() -> None:
    """A hundred or more, of fifteen kinds of product or more, in three manners."""
    assert len(recordings()) >= 100
    assert len({r.kind for r in recordings()}) >= 15
    assert {r.manner for r in recordings()} == {"earnest", "review", "amateur"}


def test_no_kind_of_product_is_in_two_folds() -> None:
    """What is held out was never met; the folds are about as long as one another."""
    folds = {(r.kind, r.fold) for r in recordings()}
    assert len(folds) == len({r.kind for r in recordings()})
    words = Counter[int]()
    for r in recordings():
        words[r.fold] += len(r.words)
    assert sorted(words) == [0, 1, 2, 3]
    assert min(words.values()) > 0.9 * max(words.values())


def test_quotes_are_verbatim_and_begin_in_the_cue_of_their_record() -> None:
    """They may differ in case and punctuation; captions in whole seconds lie up to one before the record."""
    wrong = []
    for r, annotation in annotations():
        for record, words in quoting(annotation):
            first, last = record.start - slack(r), (record.start if record.end is None else record.end) + slack(r)
            if not any(first <= s <= last for s in said(r.name).begins(words)):
                wrong.append((r.name, record.start, words))
    assert wrong == []


def test_terms_are_in_their_quotes_or_were_said_before() -> None:
    """A term stands outside its quote only where it was left out: then it was said elsewhere."""
    wrong = [
        (r.name, o.start, o.term)
        for r, annotation in annotations()
        for o in annotation.observations
        if letters(o.term) not in letters(o.quote) and letters(o.term) not in said(r.name).text
    ]
    assert wrong == []


def test_samples_tasters_and_preparations_are_those_of_the_sheet() -> None:
    """No record names another."""
    wrong = []
    for r, annotation in annotations():
        known = {"sample": {s.id for s in r.sheet.samples}, "taster": set(r.sheet.tasters)}
        known |= dict.fromkeys(("preferred", "more", "less"), known["sample"])
        known["preparation"] = {p.id for p in r.sheet.preparations}
        for record in (record for name in LISTS for record in getattr(annotation, name)):
            named = [(field, getattr(record, field, None)) for field in known]
            named += [("sample", s) for s in (*getattr(record, "over", ()), *(getattr(record, "samples", None) or ()))]
            wrong += [(r.name, record.start, *n) for n in named if n[1] is not None and n[1] not in known[n[0]]]
        assert annotation.samples == [s.id for s in r.sheet.samples], r.name
    assert wrong == []


def test_a_sheet_with_one_taster_leaves_nobody_else_to_perceive() -> None:
    """What a taster perceived is then that taster's."""
    wrong = [
        (r.name, o.start, o.term)
        for r, annotation in annotations()
        for o in annotation.observations
        if len(r.sheet.tasters) == 1 and o.voice == "taster" and o.taster is None
    ]
    assert wrong == []


def test_comparisons_are_of_two_samples() -> None:
    """Equals stand in `samples`; of others one at least is known, and no sample exceeds itself."""
    wrong = []
    for r, annotation in annotations():
        for c in annotation.comparisons:
            pair = (c.more, c.less) if c.relation == "more" else c.samples
            if not pair or pair[0] == pair[1] or (c.relation == "more") == bool(c.samples):
                wrong.append((r.name, c.start, c.quote))
    assert wrong == []


def test_preferences_have_a_scope_and_prefer_nothing_to_itself() -> None:
    """The scope is overall, a facet, a preparation, or a use known to the list above."""
    wrong = []
    for r, annotation in annotations():
        scopes = {"overall", *get_args(Facet), *(p.id for p in r.sheet.preparations), *USES.get(r.name, ())}
        wrong += [(r.name, p.start) for p in annotation.preferences if p.scope not in scopes or p.preferred in p.over]
    assert wrong == []


def test_sections_follow_one_another() -> None:
    """The first opens the recording; each next one is some seconds later."""
    wrong = []
    for r, annotation in annotations():
        starts = [s.start for s in annotation.sections]
        wrong += [(r.name, a, b) for a, b in pairwise(starts) if b - a < SECTION_S]
    assert wrong == []


def test_records_stand_in_order_and_within_the_recording() -> None:
    """Each list is in order of time."""
    wrong = []
    for r, annotation in annotations():
        for name in LISTS:
            starts = [record.start for record in getattr(annotation, name)]
            if starts != sorted(starts) or not all(0 <= s <= r.seconds + slack(r) for s in starts):
                wrong.append((r.name, name))
    assert wrong == []


def test_the_card_in_the_readme_is_of_these_recordings() -> None:
    """`python samples/recordings/card.py` prints what the README says."""
    assert card(recordings()) in (FOLDER / "README.md").read_text("utf-8")
