"""Which sample is picked: the winner, the favourite, the one that would be bought, the one liked better?"""

from collections.abc import Callable, Iterator
from typing import NamedTuple

from notesmith.listening.hearing import Hearing
from notesmith.listening.scenes import (
    AFTER_PICK,
    PRONOUNS,
    STOPS,
    WINS,
    Scene,
    ends_thought,
    named_after,
    named_before,
    preferred_over,
    subject_of,
)
from notesmith.listening.siding import short_names, singled_out, topic_at, within
from notesmith.listening.vocabulary import BE

TITLES = frozenset("winner favourite favorite champion pick".split())
TAKES = frozenset(
    "take have buy drink pick choose go keep want order reach vote prefer give going picking taking buying "
    "keeping giving say ask".split()
)
WILLING = frozenset("'d would 'll will 'm am want have".split())
SURE = frozenset(["take", "buy", "drink", "pick", "choose", "prefer", "keep"])
DENIED = frozenset("not n't nt never no wouldnt isnt dont least".split())
IMAGINED = frozenset(
    "expected expecting thought thinking hoped hoping supposed wish if mum mother dad father husband wife "
    "people everyone everybody they he she someone somebody folk folks used".split()
)
EARLY = 0.25  # of a recording; nothing is settled before
LEADING = frozenset(
    "for with on in as overall answer final choose winner choosing favourite then straight neat".split()
)
SETTLES = frozenset(
    "contest easily definitely question hands mile hair clear discussion doubt close street win".split()
)
LIKES = frozenset("like liked love enjoy enjoyed".split())


class Pick(NamedTuple):
    """One sample picked, over which others where these are named, and the words that say so."""

    sample: str
    over: tuple[str, ...]
    start: int
    end: int
    rule: str
    score: float


def find_picks(hearing: Hearing) -> Iterator[Pick]:
    """Every place where one sample is picked in a taster's own voice."""
    scene = Scene(hearing, hearing.words, singled_out(hearing), short_names(hearing))
    for i in hearing.places(PATTERNS):
        pick = PATTERNS[hearing.meant[i]](scene, i)
        if pick and not _imagined(scene, i):
            yield pick


def _imagined(scene: Scene, i: int) -> bool:
    """Denied, expected, asked, or somebody else's choice."""
    start = i
    while start > max(0, i - 9) and scene.words[start - 1].norm not in STOPS:
        start -= 1
    before = [w.norm for w in scene.words[start:i]]
    if DENIED.intersection(before[-4:]) or IMAGINED.intersection(before):
        return "i" not in before[-2:] and "for me" not in " ".join(before)
    return scene.hearing.clauses[scene.hearing.clause_of[i]].asks


def _title(scene: Scene, i: int) -> Pick | None:
    """`X is my favourite`, `the winner is X`."""
    left = {w.norm for w in scene.words[max(0, i - 3) : i]}
    if left & {"second", "least", "his", "her", "your", "their", "a", "another", "not", "third", "clear"}:
        return None
    if i + 1 < len(scene.words) and scene.words[i + 1].norm in BE:
        named = named_after(scene, i + 1)
        if named:
            return Pick(named[1], (), i, named[0].end, "the winner is", 0.8)
    subject = subject_of(scene, i)
    return Pick(subject[0], (), subject[1], i + 1, "called the winner", 0.75) if subject else None


def _wins(scene: Scene, i: int) -> Pick | None:
    """`X wins`, `X takes it`, `X beats Y`."""
    subject = subject_of(scene, i)
    if not subject:
        return None
    over: tuple[str, ...] = ()
    end = i + 1
    if scene.words[i].norm in ("beats", "beat"):
        named = named_after(scene, i)
        if not named or named[1] == subject[0]:
            return None
        over, end = (named[1],), named[0].end
    return Pick(subject[0], over, subject[1], end, "wins", 0.75)


def _through(scene: Scene, i: int) -> Pick | None:
    """`X goes through`, `X takes it`."""
    after = scene.words[i + 1].norm if i + 1 < len(scene.words) else ""
    before = scene.words[i - 1].norm if i else ""
    goes = scene.words[i].norm == "through" and (before in ("goes", "going", "'s"))
    takes = scene.words[i].norm == "takes" and after in ("it", "this", "the")
    named = named_before(scene, i) if goes or takes else None
    return Pick(named[1], (), named[0].start, i + 1, "goes through", 0.7) if named else None


def _take(scene: Scene, i: int) -> Pick | None:
    """`I'd take X`, `I'll go with X`, `I prefer X`."""
    words = scene.words
    left = [w.norm for w in words[max(0, i - 5) : i]]
    if words[i].norm != "prefer" and not (WILLING.intersection(left[-3:]) or words[i].norm == "want"):
        return None
    if not {"i", "we"}.intersection(left) or "you" in left[-3:]:
        return None
    named = named_after(scene, i, 6)
    if not named:
        return None
    mention, sample = named
    after = words[mention.end].norm if mention.end < len(words) else "."
    if words[i].norm not in SURE and after not in AFTER_PICK and words[mention.end].pause < 300:
        return None
    over, end = preferred_over(scene, mention.end, sample)
    return Pick(sample, over, i - 1 - left[::-1].index("i") if "i" in left else i, end, "would take", 0.7)


def _me(scene: Scene, i: int) -> Pick | None:
    """`For me it's X`, `it's X for me`."""
    words = scene.words
    if not i or words[i - 1].norm != "for":
        return None
    named = named_after(scene, i, 5)
    if named and ends_thought(scene, named[0].end):
        return Pick(named[1], (), i - 1, named[0].end, "for me", 0.7)
    before = named_before(scene, i - 1, 4)
    if before and before[0].start and words[before[0].start - 1].norm in BE | {"the"} and before[0].end == i - 1:
        return Pick(before[1], (), before[0].start - 1, i + 1, "for me", 0.7)
    return None


def _answer(scene: Scene, i: int) -> Pick | None:
    """`With milk it's X`, `overall it's still X`, `it's X, no contest`."""
    words = scene.words
    if not i or words[i - 1].norm not in ("it", "it'd") or i < EARLY * len(words):
        return None
    named = named_after(scene, i, 5)
    if not named or not ends_thought(scene, named[0].end) or words[i + 1].norm in ("for", "to", "with"):
        return None
    first = i - 1
    while first > max(0, i - 10) and words[first - 1].norm not in STOPS:
        first -= 1
    before = {w.norm for w in words[first : i - 1]}
    after = {w.norm for w in words[named[0].end : named[0].end + 5]}
    if after & SETTLES or (before & LEADING and named[0] not in [m for m, _ in scene.short]):
        return Pick(named[1], (), i - 1, named[0].end, "the answer is", 0.6)
    return None


def _first(scene: Scene, i: int) -> Pick | None:
    """`It's X first`."""
    named = named_before(scene, i, 3)
    if not named or named[0].end != i or i < EARLY * len(scene.words):
        return None
    led = [w.norm for w in scene.words[max(0, named[0].start - 2) : named[0].start]]
    return Pick(named[1], (), named[0].start, i + 1, "put first", 0.6) if BE.intersection(led) else None


def _best(scene: Scene, i: int) -> Pick | None:
    """`X is the best`, `I like X best`, `the best one is X`."""
    words = scene.words
    before = words[i - 1].norm if i else ""
    after = words[i + 1].norm if i + 1 < len(words) else "."
    if before == "the" and after in STOPS | {"one", "thing", "of", "so", "by", "and", ",", "cup", "tea", "here"} | BE:
        if after == "one" or after in BE:
            named = named_after(scene, i + 1 + (after == "one"), 4)
            if named:
                return Pick(named[1], (), i, named[0].end, "the best", 0.6)
        subject = subject_of(scene, i)
        return Pick(subject[0], (), subject[1], i + 1, "the best", 0.6) if subject else None
    return _like(scene, i)


def _like(scene: Scene, i: int) -> Pick | None:
    """`I like X better`, `I like X more than Y`, `X is better than Y`, `nicer than Y`."""
    words = scene.words
    left = [w.norm for w in words[max(0, i - 7) : i]]
    liked = next((i - k for k, n in enumerate(reversed(left), 1) if n in LIKES), -1)
    if liked >= 0 and "i" in [w.norm for w in words[max(0, liked - 4) : liked]]:
        pick = _liked(scene, liked, i)
        if pick:
            return pick
    if words[i].norm in ("better", "nicer") and i + 1 < len(words) and words[i + 1].norm == "than":
        subject = subject_of(scene, i)
        over, end = preferred_over(scene, i + 1, subject[0]) if subject else ((), i)
        if subject and over:
            return Pick(subject[0], over, subject[1], end, "better than", 0.65)
    return None


def _liked(scene: Scene, liked: int, i: int) -> Pick | None:
    named = named_after(scene, liked, i - liked)
    pointed = PRONOUNS.intersection(w.norm for w in scene.words[liked + 1 : i])
    sample = named[1] if named else topic_at(scene.hearing, i) if pointed else None
    over, end = preferred_over(scene, i + 1, sample) if sample else ((), i)
    if not sample or not (named or over):
        return None
    return Pick(sample, over, liked - 1, max(end, i + 1), "liked better", 0.7)


def _above(scene: Scene, i: int) -> Pick | None:
    """`X over Y`, `X above Y`."""
    left = within(scene.named, i - 4, i)
    right = within(scene.named, i + 1, i + 3)
    if not left or not right or left[-1][0].end != i or left[-1][1] == right[0][1]:
        return None
    return Pick(left[-1][1], (right[0][1],), left[-1][0].start, right[0][0].end, "put above", 0.65)


PATTERNS: dict[str, Callable[[Scene, int], Pick | None]] = {
    **dict.fromkeys(TITLES, _title),
    **dict.fromkeys(WINS, _wins),
    **dict.fromkeys(TAKES, _take),
    **dict.fromkeys(("through", "takes"), _through),
    **dict.fromkeys(("over", "above"), _above),
    **dict.fromkeys(("better", "more", "nicer"), _like),
    **dict.fromkeys(("'s", "is", "be", "'d"), _answer),
    "first": _first,
    "me": _me,
    "best": _best,
}
