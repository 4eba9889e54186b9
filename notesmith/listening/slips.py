"""What stands on a slip that is read out: a sample's name, though the captions misprint it, and a product beside it."""

from bisect import bisect_right
from collections.abc import Iterator, Sequence

from notesmith.listening.hearing import Hearing, Mention, Word
from notesmith.listening.names import CARRIERS
from notesmith.listening.suspects import LOOSE
from notesmith.listening.vocabulary import BE, NOUNS
from notesmith.listening.winners import sounding_sample, spoken_names

UNDER = frozenset("under underneath beneath behind".split())
HEADS = frozenset(". ? ! : , says the".split())
CALLED = BE | frozenset([",", ".", ":"])
BREAKS = frozenset(". , ! ? : ; …".split())
NO_PRODUCT = frozenset(["VBZ", "VBP", "VBD", "MD", "PRP", "WP", "UH"])
UNDER_BAR, HEAD_BAR = 0.6, 0.76  # how much a word must sound like a name: a slip lies under something by its name
IDLE = HEADS | LOOSE - {"from"}
LONGEST = 5  # words of a product


def soon_after(openings: Sequence[int], i: int, reach: int) -> bool:
    """Whether word `i` stands at most so many words after one of the openings, which are in order."""
    k = bisect_right(openings, i)
    return k > 0 and i - openings[k - 1] <= reach


def misprinted_calls(hearing: Hearing, openings: list[int], reach: int) -> Iterator[Mention]:
    """Where a sample is called by a misprinted name soon after a paper is opened."""
    words, names = hearing.words, spoken_names(hearing)
    taken = {i for m in hearing.mentions for i in range(m.start, m.end)}
    for i in sorted({i for o in openings for i in range(o + 1, min(o + reach, len(words) - 3))} - taken):
        bar = _bar(hearing.meant, i)
        found = sounding_sample(words, i, names, bar) if bar else None
        if found and words[found[1]].norm in CALLED and taken.isdisjoint(range(i, found[1])):
            yield Mention(i, found[1], "name", (found[0],), "sounds like a name of the sheet", 0.5)


def _bar(norms: list[str], i: int) -> float | None:
    """How much a word must sound like a name where a name may stand; None where none may."""
    under = norms[i - 1] in UNDER or norms[i - 2] in UNDER
    if not (under or norms[i - 1] in HEADS) or norms[i] in IDLE or CALLED.isdisjoint(norms[i + 1 : i + 3]):
        return None
    return UNDER_BAR if under else HEAD_BAR


def beside_on_slip(words: list[Word], call: Mention) -> tuple[int, int] | None:
    """The words between commas after the name of a sample that follows `it says`."""
    before = {w.norm for w in words[max(0, call.start - 3) : call.start]}
    start = call.end + 1
    if "says" not in before or start >= len(words) or words[call.end].norm not in (",", ":"):
        return None
    end = next((i for i in range(start, min(len(words), start + LONGEST + 1)) if words[i].norm in BREAKS), start)
    tags = {w.tag for w in words[start:end]}
    vessel = words[end - 1].norm in CARRIERS  # `brown bag`
    return (start, end) if tags & NOUNS and not tags & NO_PRODUCT and not vessel else None
