"""From what was heard to the published notes: every record verbatim, timed and identified."""

from collections import Counter
from collections.abc import Sequence
from hashlib import sha256
from pathlib import Path
from typing import Any, TypeVar

from notesmith.collection import collection_put_off
from notesmith.errors import CaptionError, FaultError, NoTastingError
from notesmith.lexicon import Lexicon
from notesmith.listening.drafting import draft_from_talk
from notesmith.listening.hearing import Grounds, Heard, Hearing, LeftOut, Perception, Word
from notesmith.listening.pipeline import listen
from notesmith.records import (
    Comparison,
    Evidenced,
    Fact,
    Ignored,
    Notes,
    Observation,
    Preference,
    Repair,
    Reveal,
    Section,
    Sheet,
)
from notesmith.transcript import Captions, Talk

R = TypeVar("R", bound=Evidenced)
LONGEST_WORD = 1_000  # characters; the tokenizer's time grows with the square of a word, and nobody says a longer one
CONVINCING = 0.6  # a perception so sure that it is no figure of speech


@collection_put_off()
def take_notes(
    captions: Captions, sheet: Sheet | None = None, *, lexicon: Lexicon | None = None, confidence: float = 0.0
) -> Notes:
    """Take the notes of one recording.

    Without a sheet, one is drafted from the talk. Perceptions less sure than `confidence` (0 to 1) are listed among
    what was ignored. Raises NoTastingError where nothing is tasted, and CaptionError
    where a word is too long to have been said.
    """
    _check_words(captions)
    talk = Talk.from_captions(captions)
    lexicon = lexicon or Lexicon.load()
    hearing = listen(talk, sheet or draft_from_talk(talk, lexicon), lexicon)
    if not _is_tasting(hearing, drafted=sheet is None):
        raise NoTastingError("nothing is tasted in it", where=captions.name, mend="give a sheet with --sheet if it is")
    _leave_unsure(hearing, confidence)
    return write_notes(hearing, captions, drafted=sheet is None)


def _leave_unsure(hearing: Hearing, confidence: float) -> None:
    """Put away the perceptions that are less sure than asked for."""
    unsure = [p for p in hearing.perceptions if p.confidence < confidence]
    hearing.perceptions = [p for p in hearing.perceptions if p.confidence >= confidence]
    for p in unsure:
        grounds = Grounds(f"confidence {p.confidence:.2f}", p.description.start, p.description.end)
        hearing.left_out.append(LeftOut(p.description, "less sure than asked for", grounds))


def draft_sheet(captions: Captions, *, lexicon: Lexicon | None = None) -> Sheet:
    """Propose a tasting sheet from the talk alone. Raises NoTastingError where nothing is tasted."""
    return take_notes(captions, lexicon=lexicon).sheet


def _check_words(captions: Captions) -> None:
    """Refuse what only looks like a caption file: markup or data without a space for a thousand characters."""
    longest = max((len(word.text) for cue in captions.cues for word in cue.words), default=0)
    if longest > LONGEST_WORD:
        what = f"a word of {longest:,} characters, which nobody can have said"
        raise CaptionError(what, where=captions.name, mend="export the captions again")


def _is_tasting(hearing: Hearing, *, drafted: bool) -> bool:
    """Whether a sample is named or something perceived; without a sheet or a product, stray words are not enough."""
    if any(mention.kind == "name" for mention in hearing.mentions):
        return True
    surest = max((perception.confidence for perception in hearing.perceptions), default=0.0)
    return surest >= CONVINCING if drafted and not hearing.sheet.category else surest > 0


def write_notes(hearing: Hearing, captions: Captions, *, drafted: bool) -> Notes:
    """Turn what was understood into records."""
    scribe = _Scribe(hearing)
    return Notes(
        transcript=Path(captions.name).name,
        sheet=hearing.sheet,
        sheet_drafted=drafted,
        samples=tuple(s.id for s in hearing.sheet.samples),
        observations=tuple(scribe.observation(p) for p in hearing.perceptions),
        comparisons=tuple(
            scribe.record(
                Comparison, c, attribute=c.attribute, more=c.more, less=c.less, samples=c.equal,
                relation="equal" if c.equal else "more", degree=c.degree, taster=c.taster,
            )
            for c in hearing.comparisons
        ),
        preferences=tuple(
            scribe.record(
                Preference, p, preferred=p.preferred, over=p.over, scope=p.scope, degree=p.degree, taster=p.taster,
            )
            for p in hearing.preferences
        ),
        facts=tuple(
            scribe.record(Fact, f, kind=f.kind, value=f.value, unit=f.unit, sample=f.sample, preparation=f.preparation)
            for f in hearing.facts
        ),
        reveals=tuple(scribe.record(Reveal, r, sample=r.sample, product=r.product) for r in hearing.reveals),
        sections=tuple(scribe.record(Section, s, kind=s.kind, sample=s.sample) for s in hearing.sections),
        repairs=tuple(
            scribe.written(Repair, m.start, m.end, m.score, (Grounds(m.rule, m.start, m.end),),
                           heard=hearing.said(m.start, m.end), meant=m.meant)
            for m in hearing.mendings
        ),
        ignored=tuple(
            scribe.written(Ignored, o.grounds.start, o.grounds.end, 1.0, (o.grounds,),
                           term=hearing.said(o.description.start, o.description.end), reason=o.reason)
            for o in hearing.left_out
        ),
        warnings=(*captions.warnings, *hearing.shortcomings),
    )  # fmt: skip


class _Scribe:
    """Writes records of one hearing; knows the clock and keeps identities apart."""

    def __init__(self, hearing: Hearing) -> None:
        self.hearing = hearing
        self.seen: Counter[str] = Counter()
        self.revealed = {r.sample: r.start for r in hearing.reveals}

    def observation(self, p: Perception) -> Observation:
        """What was perceived, and whether the sample was known by then."""
        d, words = p.description, self.hearing.words
        revealed_at = self.revealed.get(p.sample) if p.sample else None
        return self.written(
            Observation, p.start, p.end, p.confidence, p.grounds,
            term=self.hearing.said(d.start, d.end),
            term_span=(words[d.start].start, words[d.end - 1].end),
            concept=d.label.concept if d.label else None,
            facet=p.facet, presence=p.presence, intensity=p.intensity, sample=p.sample, taster=p.taster,
            preparation=p.preparation, voice=p.voice,
            after_reveal=revealed_at is not None and d.start > revealed_at,
        )  # fmt: skip

    def record(self, model: type[R], heard: Heard, /, **fields: Any) -> R:
        """A record of something heard that keeps its own confidence and grounds."""
        return self.written(model, heard.start, heard.end, heard.confidence, heard.grounds, **fields)

    def written(
        self, model: type[R], start: int, end: int, confidence: float, grounds: Sequence[Grounds], /, **fields: Any
    ) -> R:
        """One record of the words from `start` to `end`. Raises FaultError unless the captions say its quote."""
        talk, first, last = self.hearing.talk, self.hearing.words[start], self.hearing.words[end - 1]
        quote = self._quoted(first, last)
        return model.model_validate({
            "id": self._identity(model.__name__, quote, fields),
            "start": first.ms / 1000 if talk.timed else None,
            "end": talk.cues[last.cue].end_ms / 1000 if talk.timed else None,
            "quote": quote,
            "span": (first.start, last.end),
            "confidence": round(confidence, 3),
            "why": tuple([{"rule": g.rule, "words": self.hearing.said(g.start, g.end)} for g in grounds]),
            **fields,
        })  # fmt: skip

    def _quoted(self, first: Word, last: Word) -> str:
        """The words from `first` to `last`, which must lie within the very cues that give the record its time."""
        talk = self.hearing.talk
        quote = talk.text[first.start : last.end]
        if not quote or first.start < talk.cues[first.cue].start or last.end > talk.cues[last.cue].end:
            where = f"{talk.captions.name}, cue {first.cue + 1}"
            raise FaultError(f'the captions do not say "{quote}"', where=where, mend="please report it with the file")
        return quote

    def _identity(self, kind: str, quote: str, fields: dict[str, Any]) -> str:
        """The same for the same words: counted where the same words come again."""
        text = f"{kind}|{quote}|{fields.get('term', '')}|{fields.get('attribute', '')}|{fields.get('kind', '')}"
        self.seen[text] += 1
        digest = sha256(f"{text}|{self.seen[text]}".encode()).hexdigest()[:10]
        return f"{kind.lower()}-{digest}"
