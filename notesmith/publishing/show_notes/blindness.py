"""How blind the tasting was: codes, what was known of a sample before it was made known, what was said after."""

from collections.abc import Iterator

from notesmith.publishing.show_notes.amounts import Amounts
from notesmith.publishing.show_notes.lines import Block, Line, Part, block, listed
from notesmith.publishing.show_notes.story import Story


def blindness(story: Story) -> Block | None:
    """What the sheet says, and what the recording shows."""
    return block("blindness", "How blind it was", _lines(story), rank=2)


def _lines(story: Story) -> Iterator[Line]:
    yield Line("tasted", (_how(story),))
    reveals = sorted(story.notes.reveals, key=lambda reveal: reveal.span)
    yield Line("made known", tuple(Part(reveal.product, (reveal,), (reveal.sample,)) for reveal in reveals))
    yield Line("known of it before", tuple(_known_before(story)))
    after = [seen for seen in story.notes.observations if seen.after_reveal and seen.voice == "taster" and seen.sample]
    yield Line("perceived after", tuple(_after(seen.sample or "", story.term(seen)) for seen in after))
    likes = [liked for liked in story.notes.preferences if reveals and liked.span > reveals[0].span]
    yield Line("preferred after", tuple(Part(liked.quote, (liked,), style="quote") for liked in likes))


def _how(story: Story) -> Part:
    who = listed(story.sheet.tasters) or "those who tasted"
    codes = listed(story.notes.samples)
    if story.sheet.blind:
        return Part(f"blind, under {codes}; {who} did not know which was which", marks=("sheet",))
    if not story.notes.sheet_drafted:
        return Part(f"openly: {who} knew what was what", marks=("sheet",))
    return Part("no sheet says whether it was blind", marks=("drafted from the talk",))


def _known_before(story: Story) -> Iterator[Part]:
    """What was stated of a sample before it was made known: who hears it may guess."""
    amounts = Amounts.of(story.episode.locale)
    for fact in story.notes.facts:
        reveal = story.episode.reveal(fact.sample)
        if reveal and fact.span < reveal.span:
            yield Part(f"{fact.kind.replace('_', ' ')} {amounts.spoken(fact)}", (fact,), (reveal.sample,))


def _after(sample: str, term: Part) -> Part:
    marks = tuple(mark for mark in term.marks if mark != "after the reveal")
    return Part(term.text, term.proofs, (sample, *marks), term.style)
