"""The verdict, and what it rests on."""

import re
from collections.abc import Iterator

from notesmith.publishing.show_notes.lines import Block, Line, Part, block, listed
from notesmith.publishing.show_notes.said import whole_words
from notesmith.publishing.show_notes.story import Story
from notesmith.records import Comparison, Observation, Preference

DEGREE = {"low": "by a little", "high": "by a lot"}
NEAR_S = 45.0
"""Seconds before and after a verdict in which what is perceived of the winner is told as its reason."""
AROUND = 200
"""Most characters before and after a verdict that are quoted with it."""


def verdict(story: Story) -> Block | None:
    """The last overall preference of each taster in their own words, what was said for it, and what went before."""
    last = final(story)
    earlier = [liked for liked in story.notes.preferences if liked not in last]
    lines = [
        *(Line("verdict", tuple(_told(story, liked))) for liked in last),
        Line("said of it then", tuple(_reasons(story, last))),
        Line("compared", tuple(_compared(story, said) for said in story.notes.comparisons)),
        Line("preferred on the way", tuple(_preferred(story, liked) for liked in earlier)),
    ]
    return block("verdict", "The verdict, and what it rests on", lines, rank=0)


def final(story: Story) -> tuple[Preference, ...]:
    """The verdict: each taster's last overall preference; those in a section of that kind come before any other."""
    overall = [liked for liked in story.notes.preferences if liked.scope == "overall" and liked.preferred]
    judged = [liked for liked in overall if _kind_at(story, liked) in ("verdict", "reveal", "closing")]
    last: dict[str | None, Preference] = {}
    for liked in judged or overall:
        last[liked.taster] = liked
    return tuple(last.values())


def _kind_at(story: Story, liked: Preference) -> str | None:
    begun = [section for section in story.notes.sections if section.span[0] <= liked.span[0]]
    return max(begun, key=lambda section: section.span).kind if begun else None


def _told(story: Story, liked: Preference) -> Iterator[Part]:
    yield _preferred(story, liked)
    yield Part(_in_full(story, liked), (liked,), style="quote")


def _in_full(story: Story, liked: Preference) -> str:
    """The words of a verdict with what was said before and after it: reasons are given there."""
    if not story.talk:
        return story.words(liked.span, liked.quote)
    start, end = liked.span
    text = story.talk.text
    begins = [section.span[0] for section in story.notes.sections]
    turn = story.turn(start, end)
    first = max([turn[0], start - AROUND, *(at for at in begins if at <= start)])
    last = min([end + AROUND // 2, turn[1], *(at for at in begins if at >= end)])
    span = _whole_sentences(text, whole_words(story, first, start, end, last), liked.span)
    return story.words(span, text[slice(*span)]).strip()


def _whole_sentences(text: str, span: tuple[int, int], quote: tuple[int, int]) -> tuple[int, int]:
    """The span from the first sentence that begins in it to where that of the quote ends."""
    lead, tail = text[span[0] : quote[0]], text[quote[1] : span[1]]
    begun = re.search(r"[.!?] ", lead)
    ended = [match.end() for match in re.finditer(r"[.!?](?= |$)", tail)]
    return span[0] + begun.end() if begun else span[0], quote[1] + ended[0] if ended else span[1]


def _preferred(story: Story, liked: Preference) -> Part:
    over = ", then ".join(liked.over)
    text = f"{liked.preferred or 'none'} over {over}" if over else liked.preferred or "none"
    scope = None if liked.scope == "overall" else liked.scope
    return Part(text, (liked,), story.marks(liked, scope, DEGREE.get(liked.degree or "")))


def _reasons(story: Story, last: tuple[Preference, ...]) -> Iterator[Part]:
    """What was perceived of a winner around the verdict, or where that winner was liked best before."""
    winners = {liked.preferred for liked in last}
    praise = [liked for liked in story.notes.preferences if liked.scope == "overall" and liked.preferred in winners]
    judged = [liked for liked in praise if liked in last or _kind_at(story, liked) == "verdict"]
    for seen in story.notes.observations:
        if seen.voice == "taster" and any(_near(seen, liked) for liked in judged):
            term = story.term(seen)
            yield Part(term.text, term.proofs, (seen.sample or "", *term.marks), term.style)


def _near(seen: Observation, liked: Preference) -> bool:
    if seen.sample != liked.preferred or seen.start is None or liked.start is None:
        return False
    return abs(seen.start - liked.start) <= NEAR_S


def _compared(story: Story, said: Comparison) -> Part:
    marks = story.marks(said, DEGREE.get(said.degree or ""))
    if said.relation == "equal":
        text = f"{said.attribute}: the same in {listed(said.samples)}"
    else:
        text = f"{said.attribute}: more in {said.more or 'another'} than in {said.less or 'another'}"
    return Part(text, (said,), marks)
