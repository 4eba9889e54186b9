"""The moments worth cutting: what decided the verdict when first said, reveals, the verdict, and disagreements."""

from collections.abc import Iterable, Iterator
from dataclasses import dataclass, replace

from notesmith.clock import seconds_to_ms
from notesmith.publishing.arrange import INTENSITY
from notesmith.publishing.episode import Episode
from notesmith.publishing.show_notes.disagreements import disagreements
from notesmith.publishing.show_notes.lines import parts_of
from notesmith.publishing.show_notes.phrases import unbroken
from notesmith.publishing.show_notes.story import Story
from notesmith.publishing.show_notes.verdict import NEAR_S, final
from notesmith.records import Evidenced, Observation, Preference, Reveal

LEAD_MS, TAIL_MS = 1_000, 500
"""Room before the words and after them, so that no word is cut off."""
LEAST_MS = 4_000
"""A cut shorter than this is over before it is understood."""


@dataclass(frozen=True, slots=True)
class Clip:
    """A stretch worth cutting: why, the words said in it, and the ids of the records that say so."""

    start_ms: int
    end_ms: int
    what: tuple[str, ...]
    words: tuple[str, ...]
    records: tuple[str, ...]


def clips_of(episode: Episode) -> tuple[Clip, ...]:
    """The clips in order of time, those that overlap made one; none where the captions carry no times.

    A record that sounds like a health claim makes a clip only if it is kept on purpose.
    """
    story = episode.once(Story.of)
    moments = [*_deciding(story), *_reveals(story), *_verdicts(story), *_disagreements(story)]
    clips = [_clip(story, what, record) for what, record in moments if record.start is not None]
    return tuple(_merged(sorted(clips, key=lambda clip: (clip.start_ms, clip.end_ms))))


def _deciding(story: Story) -> Iterator[tuple[str, Observation]]:
    """What is said of a winner where it is liked best, at the place where that was first said of it."""
    last = final(story)
    winners = {liked.preferred for liked in last}
    overall = [liked for liked in story.notes.preferences if liked.scope == "overall" and liked.preferred in winners]
    praise = [liked for liked in overall if liked in last or _is_judged(story, liked)]
    own = [seen for seen in story.notes.observations if seen.voice == "taster" and seen.presence != "uncertain"]
    reasons = dict.fromkeys(_says(seen) for seen in own if any(_is_near(seen, liked) for liked in praise))
    for reason in reasons:
        first = next(seen for seen in own if _says(seen) == reason)
        yield f"first said of {_named(story, first.sample, first)}: {_term(story, first)}", first


def _is_judged(story: Story, liked: Preference) -> bool:
    judging = [section.span for section in story.notes.sections if section.kind == "verdict"]
    return any(begin <= liked.span[0] < end for begin, end in judging)


def _is_near(seen: Observation, liked: Preference) -> bool:
    if seen.sample != liked.preferred or seen.start is None or liked.start is None:
        return False
    return abs(seen.start - liked.start) <= NEAR_S


def _says(seen: Observation) -> tuple[str | None, str, str]:
    return seen.sample, seen.concept or seen.term.casefold(), seen.presence


def _term(story: Story, seen: Observation) -> str:
    marks = ["denied" if seen.presence == "absent" else "", INTENSITY.get(seen.intensity or "", "")]
    return _marked(story.term(seen).text, filter(None, marks))


def _marked(text: str, marks: Iterable[str]) -> str:
    told = ", ".join(marks)
    return f"{text} ({told})" if told else text


def _named(story: Story, sample: str | None, record: Evidenced) -> str:
    return story.name(sample, record)


def _reveals(story: Story) -> Iterator[tuple[str, Reveal]]:
    for reveal in story.notes.reveals:
        yield f"reveal: {reveal.sample} is {story.episode.product(reveal.sample) or reveal.product}", reveal


def _verdicts(story: Story) -> Iterator[tuple[str, Preference]]:
    for liked in final(story):
        over = f" over {', then '.join(_named(story, one, liked) for one in liked.over)}" if liked.over else ""
        by = f", {liked.taster}" if liked.taster and story.tells_tasters else ""
        yield f"verdict: {_named(story, liked.preferred, liked)}{over}{by}", liked


def _disagreements(story: Story) -> Iterator[tuple[str, Evidenced]]:
    found = disagreements(story)
    for part in parts_of([found] if found else []):
        denied = ("denied",) if part.style in ("no", "not") else ()
        for record in part.proofs:
            sample = getattr(record, "sample", None)
            of = f" of {_named(story, sample, record)}" if sample else ""
            best = " liked best" if isinstance(record, Preference) else ""
            yield f"disagreement{of}: {_marked(part.text + best, (*denied, *part.marks))}", record


def _clip(story: Story, what: str, record: Evidenced) -> Clip:
    """A clip of whole cues: from the start of the one in which the words begin to the end of the last."""
    episode, talk = story.episode, story.talk
    words = talk.text[slice(*unbroken(talk.text, record.span))] if talk else record.quote
    start_ms = min(_cue_start(episode, record), seconds_to_ms(record.start or 0.0))
    end_ms = seconds_to_ms(record.end if record.end is not None else record.start or 0.0) + TAIL_MS
    begin = max(0, start_ms - LEAD_MS)
    end = min(max(end_ms, begin + LEAST_MS), max(episode.length_ms, begin + 1))
    return Clip(begin, end, (what,), (words,), (record.id,))


def _cue_start(episode: Episode, record: Evidenced) -> int:
    """The start of the last cue that begins no later than the words."""
    at_ms = seconds_to_ms(record.start or 0.0)
    if not episode.captions:
        return at_ms
    starts = [cue.start_ms for cue in episode.captions.cues if cue.start_ms <= at_ms]
    return max(starts, default=at_ms)


def _merged(clips: Iterable[Clip]) -> list[Clip]:
    """Clips that overlap as one, each reason and quote once."""
    merged: list[Clip] = []
    for clip in clips:
        if merged and clip.start_ms < merged[-1].end_ms:
            held = merged[-1]
            merged[-1] = replace(
                held, end_ms=max(held.end_ms, clip.end_ms), what=_once(held.what, clip.what),
                words=_once(held.words, clip.words), records=_once(held.records, clip.records),
            )  # fmt: skip
        else:
            merged.append(clip)
    return merged


def _once(held: tuple[str, ...], more: tuple[str, ...]) -> tuple[str, ...]:
    return tuple(dict.fromkeys((*held, *more)))
