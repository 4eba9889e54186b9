"""Where tasters disagree of one sample, or one sample's preparations differ."""

from collections.abc import Callable, Iterator
from itertools import combinations

from notesmith.publishing.show_notes.lines import Block, Line, Part, block
from notesmith.publishing.show_notes.story import Story
from notesmith.records import Observation, Preference

Key = Callable[[Observation], str | None]


def disagreements(story: Story) -> Block | None:
    """Tasters first, then preparations, then whom each likes best."""
    lines = [*_differing(story, "tasters", lambda seen: seen.taster),
             *_differing(story, "preparations", lambda seen: seen.preparation), *_favourites(story)]  # fmt: skip
    return block("disagreements", "Where they disagree", lines, rank=2)


def _differing(story: Story, between: str, key: Key) -> Iterator[Line]:
    own = [seen for seen in story.notes.observations if seen.voice == "taster" and seen.concept and key(seen)]
    for sample in story.notes.samples:
        here = [seen for seen in own if seen.sample == sample]
        for one, other in _pairs(story, here, key, alone=between == "preparations"):
            parts = tuple(_part(story, seen, key(seen) or "") for seen in (one, other))
            yield Line(f"{sample}, between {between}", parts)


def _pairs(
    story: Story, seen: list[Observation], key: Key, *, alone: bool
) -> Iterator[tuple[Observation, Observation]]:
    """The first pair of each two tasters (or preparations) that contradict each other, concept by concept."""
    told = set()
    if len(set(map(key, seen))) < 2:
        return
    for one, other in combinations(sorted(seen, key=lambda seen: seen.span), 2):
        same_taster = one.taster == other.taster or not alone
        if key(one) == key(other) or not same_taster or not contradict(story, one, other):
            continue
        pair = frozenset({key(one), key(other)}), _broader(story, one, other)
        if pair not in told:
            told.add(pair)
            yield one, other


def _broader(story: Story, one: Observation, other: Observation) -> str | None:
    return one.concept if story.lexicon.is_a(other.concept or "", one.concept or "") else other.concept


def contradict(story: Story, one: Observation, other: Observation) -> bool:
    """Whether one says there is none of what the other has, or it is slight to one and strong to the other."""
    if one.facet != other.facet and "overall" not in (one.facet, other.facet):
        return False
    if {one.presence, other.presence} == {"present", "absent"}:
        absent, present = (one, other) if one.presence == "absent" else (other, one)
        return story.lexicon.is_a(present.concept or "", absent.concept or "")
    same = one.concept == other.concept and one.presence == other.presence == "present"
    return same and {one.intensity, other.intensity} == {"low", "high"}


def _part(story: Story, seen: Observation, who: str) -> Part:
    term = story.term(seen)
    marks = (who, *(mark for mark in term.marks if mark != who))
    return Part(term.text, term.proofs, marks, term.style)


def _favourites(story: Story) -> Iterator[Line]:
    """The last favourite of each taster, where they differ; then of each preparation or facet."""
    tasters: dict[str | None, Preference] = {}
    scopes: dict[str, Preference] = {}
    for liked in story.notes.preferences:
        if liked.preferred and liked.scope == "overall" and liked.taster:
            tasters[liked.taster] = liked
        elif liked.preferred and liked.scope != "overall":
            scopes[liked.scope] = liked
    for label, last in (("liked best, by taster", tasters), ("liked best, by way or facet", scopes)):
        if len({liked.preferred for liked in last.values()}) > 1:
            yield Line(label, tuple(_favourite(liked, str(who)) for who, liked in last.items()))


def _favourite(liked: Preference, who: str) -> Part:
    return Part(liked.preferred or "", (liked,), (who,))
