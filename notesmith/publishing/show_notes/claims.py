"""What is claimed of a sample by its maker or in words read out, against what the tasters found."""

from collections.abc import Iterator
from dataclasses import dataclass, replace

from notesmith.publishing.show_notes.cautions import health_words
from notesmith.publishing.show_notes.lines import Block, Group, Line, Part
from notesmith.publishing.show_notes.phrases import find
from notesmith.publishing.show_notes.story import Story
from notesmith.records import Observation, Presence


@dataclass(frozen=True)
class Claim:
    """One thing claimed, as a part to show, with its concept where the lexicon has one."""

    part: Part
    term: str
    concept: str | None
    presence: Presence


def claims(story: Story) -> Block | None:
    """Claim by claim of every sample: found, denied, or not mentioned, with the times that say so."""
    groups = tuple(Group(story.name(sample), tuple(_lines(story, sample)), sample) for sample in story.notes.samples)
    kept = tuple(group for group in groups if group.lines)
    note = "Claimed by the maker on the sheet, or by words read out or quoted; found by the tasters."
    return Block("claims", "Claimed, and found", kept, note=note, rank=2) if kept else None


def _lines(story: Story, sample: str) -> Iterator[Line]:
    found = [seen for seen in story.notes.observations if seen.sample == sample and seen.voice == "taster"]
    for claim in _claims(story, sample):
        here = [seen for seen in found if _same(story, claim, seen)]
        unsaid = () if here else ("not mentioned by the tasters",)
        part = replace(claim.part, marks=(*claim.part.marks, *unsaid))
        yield Line("", (part, *_findings(story, here)))


def _claims(story: Story, sample: str) -> list[Claim]:
    quoted = [seen for seen in story.notes.observations if seen.sample == sample and seen.voice == "quoted"]
    every = [*_described(story, sample), *(_said(story, seen) for seen in quoted)]
    once: dict[tuple[str, Presence], Claim] = {}
    for claim in every:
        once.setdefault((claim.concept or claim.term.casefold(), claim.presence), claim)
    return list(once.values())


def _said(story: Story, seen: Observation) -> Claim:
    term = story.term(seen)
    part = Part(term.text, term.proofs, (*term.marks, "quoted"), term.style)
    return Claim(part, seen.term, seen.concept, seen.presence)


def _described(story: Story, sample_id: str) -> Iterator[Claim]:
    """The sensory words of the sheet's description, those of health claims left out."""
    sample = story.episode.sample(sample_id)
    text = (sample.description if sample else None) or ""
    healthy = find(text, health_words())
    for start, end, concept in sensory_words(story, text):
        if not any(passage.start < end and start < passage.end for passage in healthy):
            presence: Presence = "absent" if _is_denied(text[:start]) else "present"
            part = Part(text[start:end], marks=("sheet",), style=story.style(text[start:end], presence))
            yield Claim(part, part.text, concept, presence)


def sensory_words(story: Story, text: str) -> Iterator[tuple[int, int, str]]:
    """Where the lexicon's descriptors stand in a text, and the concept of each."""
    spans = story.word_spans(text)
    for hit in story.lexicon.match([text[start:end] for start, end in spans]):
        if story.lexicon.concepts[hit.label.concept].sort == "descriptor":
            yield spans[hit.start][0], spans[hit.end - 1][1], hit.label.concept


def _is_denied(before: str) -> bool:
    return not {"no", "not", "without", "never"}.isdisjoint(before.casefold().split()[-2:])


def _same(story: Story, claim: Claim, seen: Observation) -> bool:
    """Whether what was found is what was claimed, or a kind of it; denying the kind denies what was claimed."""
    if claim.concept is None or seen.concept is None:
        return claim.term.casefold() == seen.term.casefold()
    narrower = story.lexicon.is_a(seen.concept, claim.concept)
    return narrower or (seen.presence == "absent" and story.lexicon.is_a(claim.concept, seen.concept))


def _findings(story: Story, found: list[Observation]) -> Iterator[Part]:
    verdicts = {"present": "found", "absent": "denied", "uncertain": "unsure"}
    for presence, verdict in verdicts.items():
        here = tuple(seen for seen in found if seen.presence == presence)
        if here:
            words = dict.fromkeys(story.term(seen).text for seen in here)
            yield Part(f"{verdict}: {', '.join(words)}", here, _marks(here), "plain")


def _marks(found: tuple[Observation, ...]) -> tuple[str, ...]:
    return ("after the reveal",) if all(seen.after_reveal for seen in found) else ()
