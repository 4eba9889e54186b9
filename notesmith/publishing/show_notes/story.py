"""What the show notes of one recording are told from: its records without health claims, and the words themselves."""

import re
from collections.abc import Iterable, Sequence
from dataclasses import dataclass, replace
from functools import cached_property
from typing import Any, TypeVar

from notesmith.clock import format_clock, seconds_to_ms
from notesmith.lexicon import Lexicon
from notesmith.publishing.arrange import several_tasters
from notesmith.publishing.episode import Episode, records_of
from notesmith.publishing.mended import inside_sentence, mended
from notesmith.publishing.show_notes.cautions import health_words
from notesmith.publishing.show_notes.lines import Part, Style
from notesmith.publishing.show_notes.phrases import Passage, find
from notesmith.records import Evidenced, Notes, Observation, Presence, Section, Sheet
from notesmith.transcript.talk import Talk

R = TypeVar("R", bound=Evidenced)
SHADE = {"low": "slight", "high": "strong"}
STYLE: dict[Presence, Style] = {"present": "plain", "absent": "no", "uncertain": "unsure"}
PUBLISHED = ("observations", "comparisons", "preferences", "facts", "reveals", "sections", "repairs")


@dataclass(frozen=True)
class Story:
    """One recording, ready to be told of."""

    episode: Episode
    """The episode as it may be told: without the records that sound like health claims and are not kept."""
    talk: Talk | None
    """Every word of the captions, where they are those that the notes were taken from."""
    left_out: tuple[Evidenced, ...]
    """The records that sound like health claims: neither told nor kept."""
    healthy: tuple[Passage, ...]
    """Where the talk sounds like a health claim."""

    @classmethod
    def of(cls, episode: Episode) -> "Story":
        """Make a story of an episode."""
        talk = _talk_of(episode)
        healthy = tuple(find(talk.text, health_words())) if talk else ()
        claiming = [record for record in records_of(episode.notes) if sounds_of_health(record, talk, healthy)]
        out = [record for record in claiming if record.id not in episode.keep]
        return cls(replace(episode, notes=_notes_without(episode.notes, out)), talk, tuple(out), healthy)

    @property
    def notes(self) -> Notes:
        """The records that may be told."""
        return self.episode.notes

    @property
    def sheet(self) -> Sheet:
        """The tasting sheet."""
        return self.episode.notes.sheet

    @cached_property
    def tells_tasters(self) -> bool:
        """Whether it must be said who said what."""
        return several_tasters(self.notes)

    @cached_property
    def lexicon(self) -> Lexicon:
        """Our lexicon."""
        return Lexicon.load()

    def words(self, span: tuple[int, int], quote: str) -> str:
        """The words of a span as they were meant: what the captions got wrong stands mended in square brackets."""
        return mended(self.notes.repairs, span, quote)

    def is_one_turn(self, start: int, end: int) -> bool:
        """Whether the captions name but one speaker, or none, for these characters."""
        if not self.talk:
            return False
        cues = self.talk.cues[self.talk.cue_at(start) : self.talk.cue_at(end - 1) + 1]
        return len({cue.speaker for cue in cues}) == 1

    def turn(self, start: int, end: int) -> tuple[int, int]:
        """From where to where one speaker speaks around these characters; only they themselves where two do."""
        if not self.talk:
            return start, end
        if not self.is_one_turn(start, end):
            return start, end
        cues = self.talk.cues
        first, last = self.talk.cue_at(start), self.talk.cue_at(end - 1)
        speaker = cues[first].speaker
        while first and cues[first - 1].speaker == speaker:
            first -= 1
        while last + 1 < len(cues) and cues[last + 1].speaker == speaker:
            last += 1
        return cues[first].start, cues[last].end

    @staticmethod
    def word_spans(text: str) -> list[tuple[int, int]]:
        """Where the words of a text stand, in characters."""
        return [match.span() for match in re.finditer(r"\w+(?:['’-]\w+)*", text)]

    def term(self, seen: Observation) -> Part:
        """What was perceived, in the word used, with its strength."""
        at = seen.term_span[0] - seen.span[0]
        term = seen.quote[at : at + len(seen.term)]
        text = self.words(seen.term_span, term) if term == seen.term else seen.term
        marks = self.marks(seen, SHADE.get(seen.intensity or ""))
        return Part(inside_sentence(text), (seen,), marks, self.style(seen.term, seen.presence))

    def style(self, term: str, presence: Presence) -> Style:
        """How a term is written: `no` before a thing that is not there, `not` before a quality that it has not."""
        label = self.lexicon.look_up(term) if presence == "absent" else None
        is_quality = label and label.form == "adjective" and not term.casefold().endswith("ness")
        return "not" if is_quality else STYLE[presence]

    def marks(self, record: Any, *more: str | None) -> tuple[str, ...]:
        """What the reader should know: `more`, whether it was said after the reveal, and by whom."""
        after = "after the reveal" if getattr(record, "after_reveal", False) else None
        taster = getattr(record, "taster", None) if self.tells_tasters else None
        return tuple(mark for mark in (*more, after, taster) if mark)

    def name(self, sample: str | None, record: Evidenced | None = None) -> str:
        """What a sample is called where the record was said; without a record, at the end."""
        if sample is None:
            return "another"
        return self.episode.name(sample, record.start if record else None)


def time_of(record: Evidenced) -> str:
    """The start of a record as m:ss; empty where the captions carry no times."""
    return "" if record.start is None else format_clock(seconds_to_ms(record.start))


def sounds_of_health(record: Evidenced, talk: Talk | None, healthy: Sequence[Passage]) -> bool:
    """Whether the words of a record are part of what sounds like a health claim; without a talk, whether they do alone.

    A section never does: it says when, not what.
    """
    if isinstance(record, Section):
        return False
    if not talk:
        return bool(find(record.quote, health_words()))
    return any(_touch((passage.start, passage.end), record.span) for passage in healthy)


def _touch(one: tuple[int, int], other: tuple[int, int]) -> bool:
    return one[0] < other[1] and other[0] < one[1]


def _notes_without(notes: Notes, out: Sequence[Evidenced]) -> Notes:
    gone = {record.id for record in out}
    kept = {name: _kept(getattr(notes, name), gone) for name in (*PUBLISHED, "ignored")}
    return notes.model_copy(update=kept)


def _kept(records: Iterable[R], gone: set[str]) -> tuple[R, ...]:
    return tuple(record for record in records if record.id not in gone)


def _talk_of(episode: Episode) -> Talk | None:
    """The talk of the captions, unless a record's words do not stand where it says."""
    if episode.captions is None:
        return None
    talk = Talk.from_captions(episode.captions)
    fits = all(talk.text[slice(*record.span)] == record.quote for record in records_of(episode.notes))
    return talk if fits else None
