"""Which sample is named or pointed at?"""

from collections import defaultdict
from dataclasses import replace
from typing import NamedTuple

from notesmith.listening.hearing import Hearing, Mention, Word
from notesmith.listening.names import CARRIERS, FELLOWS, NUMBER_WORDS, Name, names_of
from notesmith.listening.vocabulary import BE

ORDINALS = {word: k for k, word in enumerate("first second third fourth fifth sixth seventh".split())} | {
    "last": -1, "final": -1,
}
NUMBERS = {word: k for k, word in enumerate("one two three four five six seven eight nine ten".split())}
NAMED_BY = frozenset(
    "the number cup sample glass bowl jar tin spoon mug bottle sticker and or than with to from of for in on is was "
    "now versus over about like then between whereas while".split()
)
NAMED_BEFORE = frozenset(
    "is 's was has had , . ? ! : and or again still one first now then also had does did isn't wins won tastes smells "
    "looks seems got goes comes cup".split()
)
SAID_OF = frozenset("tastes smells looks".split())  # verbs that the tagger may take for nouns
SHORT_PAUSE_MS = 300
CROWD = 3  # words between two names that still stand in a row
COUNTED = frozenset(
    "of point percent hundred thousand minute second gram grams mil ml degrees times past quarter half pound pounds "
    "euro euros dollar dollars quid pence cent cents bucks rand rupees year month week day hour".split()
)
LEADS = frozenset("and okay ok so now right then the but next alright well".split())
TURNS = frozenset(
    "oh ooh first with again whoa hm hmm mm go whole then okay now well and very really so um uh definitely".split()
)
POINTERS = frozenset("this him her here these".split())
COUNTERS = frozenset("about around out like what for nearly almost only at by point past".split())
PASSED = frozenset("actually really definitely still just also".split())  # `this is actually red`
ORDERED = frozenset("the our my and so this".split())  # what stands before an ordinal that counts samples
OTHERED = frozenset("the that this your my".split())
# `The other` of these is no sample.
NOT_OTHER = frozenset("side day hand thing people end way night week half two three ones".split())
ALL_OF = frozenset("of three four five six seven eight".split())
POINTING = POINTERS | frozenset(ORDINALS) | frozenset("that other next number both neither all".split())


def find_mentions(hearing: Hearing) -> None:
    """Find where samples are named, numbered or pointed at, in the order they stand."""
    found = [*_named(hearing), *_pointed(hearing), *_owned(hearing)]
    found.sort(key=lambda m: (m.start, -m.end, -m.score))
    mentions: list[Mention] = []
    for mention in found:
        if not mentions or mention.start >= mentions[-1].end:
            mentions.append(mention)
    hearing.mentions = _crowded(mentions)


def _crowded(mentions: list[Mention]) -> list[Mention]:
    """Mark the names that stand in a row of three or more (`E, F, G and H`): they introduce, and are about none."""
    marked = list(mentions)
    named = [k for k, m in enumerate(mentions) if len(m.samples) == 1]
    for a, b, c in zip(named, named[1:], named[2:], strict=False):
        close = all(mentions[y].start - mentions[x].end <= CROWD for x, y in ((a, b), (b, c)))
        if close and len({mentions[k].samples for k in (a, b, c)}) == 3:
            for k in (a, b, c):
                marked[k] = replace(mentions[k], crowded=True)
    return marked


def _named(hearing: Hearing) -> list[Mention]:
    """Names of the sheet, longest first, where they stand as names."""
    by_first: dict[str, list[Name]] = defaultdict(list)
    for name in names_of(hearing.sheet, hearing.lexicon):
        by_first[name.words[0]].append(name)
    found: list[Mention] = []
    for i in hearing.places(by_first):
        if not found or i >= found[-1].end:
            hit = next((h for n in by_first[hearing.meant[i]] if (h := _name_at(hearing, i, n))), None)
            found += [hit] if hit else []
    return found


def _name_at(hearing: Hearing, i: int, name: Name) -> Mention | None:
    """The name at word `i`, if it stands there and stands as a name."""
    words, end, k = hearing.words, i, 0
    while k < len(name.words) and end < len(words):
        if words[end].norm == name.words[k]:
            k += 1
        elif words[end].norm not in ("", "-"):
            return None
        end += 1
    if k < len(name.words):
        return None
    while end < len(words) and words[end].norm == "":
        end += 1
    if name.distinct:
        return Mention(i, end, "name", (name.sample,), "name", 1.0)
    if _stands_as_name(_place(hearing, i, end), name):
        return Mention(i, end, "name", (name.sample,), "name in a naming place", 0.8)
    return None


class _Place(NamedTuple):
    """Where a common word stands that may be a name."""

    word: Word
    before: Word | None  # the word before it
    left: str  # its norm; a full stop where there is none
    right: str  # the norm of the word after it; a full stop where the thought ends
    after: Word | None  # the word after it, where the thought goes on
    begins: bool  # a thought begins with it
    upper: bool  # printed with a capital


def _place(hearing: Hearing, i: int, end: int) -> _Place:
    words, clause_of = hearing.words, hearing.clause_of
    ends = end >= len(words) or words[end].pause > SHORT_PAUSE_MS or clause_of[end] != clause_of[end - 1]
    before = words[i - 1] if i else None
    left = before.norm if before else "."
    if left in PASSED and i > 1:
        left = words[i - 2].norm
    led = left in LEADS and (i < 2 or words[i - 2].norm in ".?!,;:" or words[i - 1].pause > SHORT_PAUSE_MS)
    begins = led or left in ".?!,;:" or words[i].pause > SHORT_PAUSE_MS or clause_of[i] != clause_of[i - 1]
    upper = hearing.talk.text[words[i].start].isupper()
    return _Place(words[i], before, left, "." if ends else words[end].norm, None if ends else words[end], begins, upper)


def _stands_as_name(at: _Place, name: Name) -> bool:
    """A common word names a sample only in a naming place: `the green is`, `cup E`, `than the left`, `Left again`."""
    carried = at.right in CARRIERS or at.right in FELLOWS
    goes_on = carried or at.right in SAID_OF or at.right in NAMED_BEFORE  # `red wins`: the tagger takes it for a noun
    noun_follows = at.after is not None and at.after.tag in ("NN", "NNS") and not goes_on
    if name.words[0] == "the":
        return not noun_follows and (at.after is None or at.after.tag != "JJ")
    if len(name.words) == 1 and len(name.words[0]) == 1 and name.words[0].isalpha():
        return _letter_stands(at)
    if at.left in ("this", "that", "which", "each", "every", "no", "any", "another"):
        return False
    if at.word.norm in NUMBER_WORDS or at.word.norm.isdigit():
        return _number_stands(at)
    ends = at.right in NAMED_BEFORE or carried or (at.begins and at.right in TURNS)
    called = at.left == "called" and at.right in BE  # `what I called red is blue`
    return (at.begins or at.left in NAMED_BY or at.right == "first" or called) and ends and not noun_follows


def _number_stands(at: _Place) -> bool:
    """A number names a sample where it counts and measures nothing (`four is …`, not `four minutes`, `twenty four`)."""
    if at.left in ("number", "sticker", "sample", "batch"):
        return True
    counts = at.after is not None and (at.after.tag in ("CD", "NNS") or at.right in COUNTED or at.right.isdigit())
    if counts or (at.before is not None and at.before.tag == "CD") or at.left in COUNTERS:
        return False
    if at.word.norm == "one":
        return (at.begins or at.left in ("than", "do", "to")) and at.right in NAMED_BEFORE
    return at.begins or at.right in NAMED_BEFORE or at.left in ("than", "is", "cup", "the") or (
        at.after is not None and at.after.tag not in ("IN", "TO")
    )


def _letter_stands(at: _Place) -> bool:
    """A single letter: after a vessel, or where no article or pronoun can stand."""
    if at.left in CARRIERS:
        return True
    if at.word.norm in ("a", "i"):
        if at.upper and not at.begins and at.word.norm == "a":
            return True
        return at.word.norm == "a" and at.right in ("is", "'s", "was", "has", ".", "again") and (at.upper or at.begins)
    return at.left != "'" and at.right not in ("'", "-")


def _owned(hearing: Hearing) -> list[Mention]:
    """`mine`, said by somebody whose name a sample goes by (`Gail's`)."""
    owners = {
        name[:-2].lower(): s.id for s in hearing.sheet.samples for name in (s.id, *s.aliases) if name.endswith("'s")
    }
    return [
        Mention(i, i + 1, "name", (owners[speaker.lower()],), "mine", 0.8)
        for i in hearing.places(["mine"])
        if (speaker := hearing.words[i].speaker) and speaker.lower() in owners
    ]


class _Spot(NamedTuple):
    """A word that may point at a sample, and its neighbours."""

    at: int
    before: str
    word: str
    after: str


def _pointed(hearing: Hearing) -> list[Mention]:
    """`this one`, `that one`, `the other`, `the first one`, `the next one`, `both`."""
    norms, ids = ["", *hearing.meant, ""], tuple(s.id for s in hearing.sheet.samples)
    spots = (_Spot(i, *norms[i : i + 3]) for i in hearing.places(POINTING))
    pointed = (
        _this_one(spot) or _the_other(spot) or _the_next(spot) or _alone(hearing.words, spot, ids)
        or _counted(spot, ids) or _all_of_them(spot, ids)
        for spot in spots
    )
    return [mention for mention in pointed if mention]


def _this_one(spot: _Spot) -> Mention | None:
    if spot.word not in ("this", "that") or (spot.after not in CARRIERS and spot.after not in FELLOWS):
        return None
    return Mention(spot.at, spot.at + 2, "this" if spot.word == "this" else "that", (), f"{spot.word} one", 0.5)


def _the_other(spot: _Spot) -> Mention | None:
    if spot.word != "other" or spot.before not in OTHERED or spot.after in NOT_OTHER:
        return None
    return Mention(spot.at - 1, spot.at + (2 if spot.after in CARRIERS else 1), "other", (), "the other", 0.7)


def _the_next(spot: _Spot) -> Mention | None:
    follows = spot.after in CARRIERS or spot.after == "up" or (spot.before == "the" and spot.after in (".", ",", "is"))
    return Mention(spot.at, spot.at + 2, "next", (), "the next one", 0.7) if spot.word == "next" and follows else None


def _alone(words: list[Word], spot: _Spot, ids: tuple[str, ...]) -> Mention | None:
    """A pointing word that is a sentence of its own (`And this.`, `And him.`) takes up the next sample."""
    begins = spot.at < 2 or words[spot.at - 2].norm in ".?!"
    leads = spot.before in ("and", "okay", "now", "so", "then") and begins
    if spot.word not in POINTERS or not leads or spot.after not in (".", ",", "...", ":"):
        return None
    return Mention(spot.at, spot.at + 1, "other" if len(ids) == 2 else "this", (), f"{spot.word}, alone", 0.5)


def _counted(spot: _Spot, ids: tuple[str, ...]) -> Mention | None:
    """`The second one`, `number two`: counted in the order of the sheet."""
    place = NUMBERS.get(spot.after) if spot.word == "number" else None
    if spot.after in CARRIERS and spot.before in ORDERED:
        place = ORDINALS.get(spot.word, place)
    if place is None or not -len(ids) <= place < len(ids):
        return None
    return Mention(spot.at, spot.at + 2, "ordinal", (ids[place],), "counted in the order of the sheet", 0.6)


def _all_of_them(spot: _Spot, ids: tuple[str, ...]) -> Mention | None:
    whole = spot.word in ("both", "neither") or (spot.word == "all" and spot.after in ALL_OF)
    return Mention(spot.at, spot.at + 1, "all", ids, spot.word, 0.5) if whole and len(ids) > 1 else None
