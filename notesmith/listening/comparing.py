"""What is set beside what?

A grading (`smokier`, `not as dry`) is a comparison where it has two different samples: the one it is said of, and
the one after `than`, or implied. Of a sample graded against itself (`rounder now`) it is a perception like any other.
"""

from bisect import bisect_left, bisect_right
from collections.abc import Iterator
from typing import NamedTuple

from notesmith.listening.gradings import OVERALL, Grading, find_gradings
from notesmith.listening.hearing import Compared, Grounds, Hearing, LeftOut
from notesmith.listening.siding import Named, all_but, other_than, said_by, singled_out, topic_at, within
from notesmith.listening.vocabulary import HIGH, LOW
from notesmith.records import Intensity

STOPS = frozenset([".", "?", "!", ";", "..."])
REACH = 9  # words between a property and its `than`
FAR = HIGH | frozenset("much lot far miles mile good deal street country long heaps whole easily times ton".split())
NEAR = LOW - {"background"} | frozenset("just hair marginally".split())
BESIDE = (("compared", "to"), ("compared", "with"), ("next", "to"), ("up", "against"), ("relative", "to"))
ALL_OTHERS = frozenset("either both others all them any anything rest two".split())
CHANGES = frozenset(
    "now getting gets got become becomes becoming became cools cooled cooling cooler warm warmed warming hot "
    "cold infusion steep steeping round pour time today going goes gone turned turning opened opening again "
    "longer".split()
)
AGAIN = 20  # words within which the same comparison is said again
FRESH, FRESH_OF_TWO = 30, 45  # words since a sample was taken up in which it is set beside the one before
RECENT = 30  # words before `the same` in which the two it is said of are named
CHAIN = 14  # words within which a bare comparative goes on with the comparison before it


class Sides(NamedTuple):
    """The sample a grading is said of, those it is set beside, and the word where that is said last."""

    subject: str
    others: tuple[str, ...]
    end: int
    rule: str
    score: float


def find_comparisons(hearing: Hearing) -> None:
    """Fill in the comparisons, and leave out the descriptions that only name what is compared."""
    named = singled_out(hearing)
    found: list[Compared] = []
    last: tuple[Grading, Sides] | None = None
    for grading in find_gradings(hearing):
        if hearing.clauses[hearing.clause_of[grading.start]].asks:
            continue
        sides = _sides(hearing, named, grading, last)
        if sides:
            last = (grading, sides)
            found.extend(c for c in _compared(hearing, grading, sides) if not _said_already(found, c))
            _leave_out(hearing, grading)
    hearing.comparisons = found


def _said_already(found: list[Compared], new: Compared) -> bool:
    """The same in other words at once (`softer than the other, a lot softer`)."""
    near = (c for c in found[-4:] if new.start - c.end < AGAIN)
    return any((c.attribute, c.more, c.less, c.equal) == (new.attribute, new.more, new.less, new.equal) for c in near)


def _compared(hearing: Hearing, grading: Grading, sides: Sides) -> Iterator[Compared]:
    start, end = grading.start, max(grading.end, sides.end)
    degree, taster = _degree(hearing, grading, end), said_by(hearing, start)
    grounds = (Grounds(sides.rule, start, end),)
    for other in sides.others:
        more, less = (sides.subject, other) if grading.way > 0 else (other, sides.subject)
        equal = (sides.subject, other) if grading.way == 0 else ()
        yield Compared(
            start, end, grading.attribute, None if equal else more, None if equal else less, equal,
            None if equal else degree, taster, sides.score, grounds,
        )  # fmt: skip


def _leave_out(hearing: Hearing, grading: Grading) -> None:
    """A description that only names what is compared is no perception."""
    start, end = grading.says
    perceptions, grounds = hearing.perceptions, Grounds("comparison", grading.start, grading.end)
    first = bisect_right(perceptions, start, key=lambda p: p.description.end)
    last = bisect_left(perceptions, end, key=lambda p: p.description.start)
    for p in perceptions[first:last]:
        hearing.left_out.append(LeftOut(p.description, "set beside another sample", grounds))
    del perceptions[first:last]


def _sentence(hearing: Hearing, grading: Grading) -> tuple[int, int]:
    """The words around a grading that one speaker says in one sentence."""
    words = hearing.words
    first, last = grading.start, grading.end
    speaker = words[first].speaker

    def goes_on(i: int) -> bool:
        return words[i].norm not in STOPS and words[i].speaker == speaker

    while first > max(0, grading.start - REACH) and goes_on(first - 1):
        first -= 1
    while last < min(len(words), grading.end + REACH) and goes_on(last):
        last += 1
    return first, last


def _sides(
    hearing: Hearing, named: list[Named], grading: Grading, before: tuple[Grading, Sides] | None
) -> Sides | None:
    first, last = _sentence(hearing, grading)
    subject = _carrier(hearing, named, grading) or _subject(hearing, named, grading, first)
    than = _than(hearing, grading, last)
    if than >= 0 and hearing.words[than].norm != "each":
        return _told(hearing, named, subject, than, last)
    if grading.most:
        return _above_all(hearing, grading, subject)
    if grading.attribute == OVERALL:
        return _alike(named, grading, first, last)
    if grading.way == 0:
        return _level(hearing, named, grading, last)
    return _implied(hearing, named, grading, subject, before, first, last)


def _above_all(hearing: Hearing, grading: Grading, subject: str | None) -> Sides | None:
    """`The thickest of the three`: more than all the others, where these are meant."""
    after = [w.norm for w in hearing.words[grading.end : grading.end + 3]]
    others = all_but(hearing, subject) if subject else ()
    meant = after[:1] == ["one"] or after[:2] in (["of", "the"], ["of", "them"], ["of", "all"], ["by", "far"])
    if not subject or not others or not meant:
        return None
    return Sides(subject, others, grading.end, "more than all the others", 0.6)


def _alike(named: list[Named], grading: Grading, first: int, last: int) -> Sides | None:
    """The two that a sentence names and calls the same."""
    pair = list(dict.fromkeys(sample for _, sample in within(named, first, last)))
    return Sides(pair[0], (pair[1],), grading.end, "alike", 0.6) if len(pair) == 2 else None


def _level(hearing: Hearing, named: list[Named], grading: Grading, last: int) -> Sides | None:
    """The two that are level: those named last, or the only two there are."""
    near = [sample for _, sample in reversed(within(named, grading.start - RECENT, last))]
    pair = list(dict.fromkeys(near))[:2]
    if len(pair) < 2 and len(hearing.sheet.samples) == 2:
        pair = [s.id for s in hearing.sheet.samples]
    return Sides(pair[0], (pair[1],), grading.end, "level", 0.6) if len(pair) == 2 else None


def _than(hearing: Hearing, grading: Grading, last: int) -> int:
    """Where the name of the other side begins, after `than`, `as`, `compared to`; -1 for nowhere."""
    norms = [w.norm for w in hearing.words[grading.end : last]]
    for k, norm in enumerate(norms):
        if norm == "than" or (norm == "as" and k == 0) or (k and tuple(norms[k - 1 : k + 1]) in BESIDE):
            return grading.end + k + 1
        if norm in ("more", "less", "but") and k:
            break
    return -1


def _subject(hearing: Hearing, named: list[Named], grading: Grading, first: int) -> str | None:
    """The sample named last before the grading in its sentence, unless it is itself set beside; else the topic."""
    words = hearing.words
    for mention, sample in reversed(within(named, first, grading.start)):
        before = {w.norm for w in words[max(0, mention.start - 2) : mention.start]}
        if not before & {"than", "to", "as", "with", "from", "after"}:
            return sample
    return topic_at(hearing, grading.start)


def _carrier(hearing: Hearing, named: list[Named], grading: Grading) -> str | None:
    """The sample it is found on: the green in `more pepper on the green`."""
    end = grading.end
    if end < len(hearing.words) and hearing.words[end].norm in ("on", "in", "with"):
        return next((sample for m, sample in within(named, end + 1, end + 3) if m.kind != "all"), None)
    return None


def _told(hearing: Hearing, named: list[Named], subject: str | None, than: int, last: int) -> Sides | None:
    """The sides where the other one is named after `than`."""
    words = hearing.words
    norms = [w.norm for w in words[than : min(last, than + 4)]]
    for mention, sample in within(named, than, min(last + 1, than + 5)):
        different = sample if sample != subject else other_than(hearing, sample, mention.start)
        pair = (subject, different)
        if sample == subject and mention.kind not in ("this", "that"):
            pair = (different, sample)  # the topic was drawn to what it is set beside
        return Sides(pair[0], (pair[1],), mention.end, "named after than", 0.8) if pair[0] and pair[1] else None
    if not subject:
        return None
    if ALL_OTHERS.intersection(norms):
        return Sides(subject, all_but(hearing, subject), min(last, than + len(norms)), "all the others", 0.65)
    if norms[:1] == ["that"] and (len(norms) == 1 or not words[than + 1].tag.startswith("N")):
        other = other_than(hearing, subject, than)
        return Sides(subject, (other,), than + 1, "than that", 0.6) if other else None
    return None


def _implied(
    hearing: Hearing, named: list[Named], grading: Grading, subject: str | None, before: tuple[Grading, Sides] | None,
    first: int, last: int,
) -> Sides | None:
    """The sides of a bare comparative: those of the comparison it goes on with, or the sample just before."""
    if not subject:
        return None
    if before and grading.start - before[0].end < CHAIN and before[1].subject == subject:
        return Sides(subject, before[1].others, grading.end, "goes on with a comparison", 0.6)
    norms = {w.norm for w in hearing.words[first:last]}
    if norms & CHANGES:
        return None
    named_here = bool(within(named, first, last))
    if hearing.words[grading.start].norm in ("more", "less") and not named_here:
        return None
    fresh = FRESH_OF_TWO if len(hearing.sheet.samples) == 2 else FRESH
    if not named_here and _words_since_taken_up(hearing, grading.start) > fresh:
        return None
    other = other_than(hearing, subject, grading.start)
    return Sides(subject, (other,), grading.end, "the sample just before", 0.5) if other else None


def _words_since_taken_up(hearing: Hearing, i: int) -> int:
    """How long the talk has been about the sample it is about at word `i`; later a grading is against itself."""
    k = hearing.run_of[i]
    sample = hearing.topics[k].sample
    while k and hearing.topics[k - 1].sample == sample and i - hearing.runs[k][0] <= FRESH_OF_TWO:
        k -= 1
    return i - hearing.runs[k][0]


def _degree(hearing: Hearing, grading: Grading, end: int) -> Intensity | None:
    """By a little or by a lot: graded right before the property, or right after it."""
    words = hearing.words
    before = [w.norm for w in words[max(0, grading.start - 4) : grading.start]]
    after = [w.norm for w in words[end : end + 5]]
    if "by" in after[:2]:
        before += after
    if FAR.intersection(before) and "little" not in before:
        return "high"
    return "low" if NEAR.intersection(before) else None
