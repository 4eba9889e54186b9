"""What everything published is made from: the notes of one recording, its captions, and the author's wishes."""

import re
from collections.abc import Callable
from dataclasses import dataclass, field
from functools import cached_property
from pathlib import Path, PurePath
from typing import Any, Concatenate, ParamSpec, TypeVar

from notesmith.clock import seconds_to_ms
from notesmith.publishing.plain import one_line
from notesmith.records import Evidenced, Notes, Reveal, SheetSample
from notesmith.transcript.model import Captions

Made = TypeVar("Made")
Told = ParamSpec("Told")

MAX_STEM = 80
DESCRIPTION_LENGTH = 5_000


@dataclass(frozen=True)
class Media:
    """The recording itself: where it lies and how long it is."""

    path: Path
    length_ms: int


@dataclass(frozen=True)
class Episode:
    """One recording about to be published."""

    notes: Notes
    captions: Captions | None = None
    """The captions that the notes were taken from, where they were found."""
    source: bytes | None = None
    """The caption file as it lies on disk, so that it can be mended byte by byte."""
    media: Media | None = None
    locale: str = "en"
    """How numbers, currencies and dates are written, such as `en_GB` or `de`."""
    keep: frozenset[str] = frozenset()
    """Ids of records that the author publishes on purpose though they sound like health claims."""
    mark_repairs: bool = False
    """Whether mended words stand in square brackets in the corrected captions."""
    length: int = DESCRIPTION_LENGTH
    """The most characters of the plain-text show notes."""
    templates: Path | None = None
    """A folder of the author's own templates; each one laid over the built-in one of the same name."""
    _made: dict[Any, Any] = field(default_factory=dict, init=False, repr=False, compare=False)

    def once(self, make: Callable[Concatenate["Episode", Told], Made], *told: Told.args, **named: Told.kwargs) -> Made:
        """What is made of the episode by a function, made the first time only: several kinds may need it."""
        known = (make, told, *named.items())
        if known not in self._made:
            self._made[known] = make(self, *told, **named)
        made: Made = self._made[known]
        return made

    @property
    def stem(self) -> str:
        """What the files are called: the captions' name without folder, ending and what a file name cannot hold.

        At most 80 characters; `notes` where nothing is left.
        """
        plain = re.sub(r"[^\w.() +-]+", "_", PurePath(one_line(self.notes.transcript).replace("\\", "/")).stem)
        return plain[:MAX_STEM].strip(" .") or "notes"

    @cached_property
    def length_ms(self) -> int:
        """Length of the recording in milliseconds: the media's own, else to the end of the last words known."""
        if self.media:
            return self.media.length_ms
        ends = [seconds_to_ms(record.end) for record in records_of(self.notes) if record.end is not None]
        if self.captions and self.captions.timed:
            ends += [cue.end_ms for cue in self.captions.cues if cue.end_ms is not None]
        return max(ends, default=0)

    def sample(self, sample_id: str | None) -> SheetSample | None:
        """The sample of that id on the sheet."""
        return next((sample for sample in self.notes.sheet.samples if sample.id == sample_id), None)

    def reveal(self, sample_id: str | None) -> Reveal | None:
        """Where the sample's identity is first made known on the recording."""
        return next((reveal for reveal in self.notes.reveals if reveal.sample == sample_id), None)

    def product(self, sample_id: str | None) -> str | None:
        """What the sample is: the sheet's word for it, else the one said at the reveal."""
        sample, reveal = self.sample(sample_id), self.reveal(sample_id)
        return (sample.product if sample else None) or (reveal.product if reveal else None)

    def is_known(self, sample_id: str | None, at_s: float | None = None) -> bool:
        """Whether the sample's identity is known at that second; without a second, at the end of the recording."""
        reveal = self.reveal(sample_id)
        if reveal is None:
            return not self.notes.sheet.blind
        return at_s is None or (reveal.start is not None and at_s >= reveal.start)

    def name(self, sample_id: str, at_s: float | None = None) -> str:
        """What a sample is called at a second of the recording: its code alone until it is revealed, then both.

        Without a second, as at the end of the recording. A sample of an open tasting is known from the start.
        """
        product = self.product(sample_id) if self.is_known(sample_id, at_s) else None
        return called(sample_id, product)


def called(code: str, product: str | None) -> str:
    """A sample's code and product; a product that opens with a code of a whole word needs no more before it.

    >>> called("B", "Ferry oolong"), called("Ferry", "Ferry oolong"), called("B", None)
    ('B (Ferry oolong)', 'Ferry oolong', 'B')
    """
    if not product or product.casefold() == code.casefold():
        return code
    opens = len(code) > 2 and product.casefold().startswith(f"{code.casefold()} ")
    return product if opens else f"{code} ({product})"


def records_of(notes: Notes) -> tuple[Evidenced, ...]:
    """Every record of the notes that has words to prove it, kind by kind."""
    return (
        *notes.observations, *notes.comparisons, *notes.preferences, *notes.facts,
        *notes.reveals, *notes.sections, *notes.repairs, *notes.ignored,
    )  # fmt: skip
