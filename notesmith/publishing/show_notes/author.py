"""For the author, not for the audience: what sounds like a health claim, and what suggests a connection to a seller."""

from collections.abc import Iterator
from dataclasses import dataclass

from notesmith.clock import format_clock
from notesmith.publishing.episode import Episode, records_of
from notesmith.publishing.show_notes.cautions import Listed, connection_words, health_words, read_cautions
from notesmith.publishing.show_notes.phrases import Passage, Wanted, find
from notesmith.publishing.show_notes.said import shown_span
from notesmith.publishing.show_notes.story import Story, sounds_of_health, time_of

AROUND = 70
"""Most characters shown before and after the words found."""


@dataclass(frozen=True)
class Remark:
    """One passage for the author to look at."""

    time: str
    words: str
    then: str
    """What became of it; empty where there is nothing to say."""


@dataclass(frozen=True)
class Concern:
    """Passages of one kind, with what the author is reminded of."""

    heading: str
    listed: Listed
    remarks: tuple[Remark, ...]


def concerns(episode: Episode) -> tuple[Concern, ...]:
    """What the author should look at; nothing where there is nothing."""
    story = episode.once(Story.of)
    listed = read_cautions()
    health = Concern("Sounds like a health claim", listed.health, tuple(_health(episode, story)))
    connection = Concern("Suggests a connection to a seller", listed.connection, tuple(_connections(episode, story)))
    return tuple(concern for concern in (health, connection) if concern.remarks)


def _health(episode: Episode, story: Story) -> Iterator[Remark]:
    claiming = [record for record in records_of(episode.notes) if sounds_of_health(record, story.talk, story.healthy)]
    for record in sorted(claiming, key=lambda record: record.span):
        fate = "kept on purpose" if record.id in episode.keep else "left out of the show notes"
        yield Remark(time_of(record), record.quote, f"{fate}: {record.id}")
    noted = [record.span for record in claiming]
    for passage in story.healthy:
        if not any(start < passage.end and passage.start < end for start, end in noted):
            yield _spoken(story, passage, "in no record: not in the show notes")
    yield from _described(episode, health_words())


def _connections(episode: Episode, story: Story) -> Iterator[Remark]:
    found = _gathered(find(story.talk.text, connection_words())) if story.talk else []
    yield from (_spoken(story, passage, "") for passage in found)
    for section in episode.notes.sections:
        inside = any(section.span[0] <= passage.start < section.span[1] for passage in found)
        if section.kind == "sponsor" and not inside:
            first, last = (at - section.span[0] for at in shown_span(section))
            yield Remark(time_of(section), f"{section.quote[first:last]}…", "a stretch about a sponsor")
    if not story.talk:
        quoted = [record for record in records_of(episode.notes) if find(record.quote, connection_words())]
        yield from (Remark(time_of(record), record.quote, record.id) for record in quoted)


def _gathered(found: list[Passage]) -> list[Passage]:
    """Passages so near one another that they would show the same words, as one."""
    gathered: list[Passage] = []
    for passage in found:
        if gathered and passage.start - gathered[-1].end <= AROUND:
            gathered[-1] = Passage(gathered[-1].start, passage.end)
        else:
            gathered.append(passage)
    return gathered


def _described(episode: Episode, wanted: Wanted) -> Iterator[Remark]:
    for sample in episode.notes.sheet.samples:
        text = sample.description or ""
        for passage in find(text, wanted):
            yield Remark("", text[passage.start : passage.end], f"left out: the sheet's description of {sample.id}")


def _spoken(story: Story, passage: Passage, then: str) -> Remark:
    """The words found, with some around them, cut between words."""
    talk = story.talk
    if not talk:
        return Remark("", "", then)
    text = talk.text
    start = text.rfind(" ", 0, max(0, passage.start - AROUND)) + 1
    end = text.find(" ", min(len(text), passage.end + AROUND))
    time = format_clock(talk.ms_at(passage.start)) if talk.timed else ""
    words = text[start:] if end < 0 else f"{text[start:end]}…"
    return Remark(time, f"…{words}" if start else words, then)
