"""Which sample is named or pointed at?"""

from collections import defaultdict
from dataclasses import replace
from typing import NamedTuple

from notesmith.listening.hearing import Hearing, Mention, Word
from notesmith.listening.names import CARRIERS, DIGITS, FELLOWS, Name, names_of

ORDINALS = {"first": 0, "second": 1, "third": 2, "fourth": 3, "fifth": 4, "sixth": 5, "seventh": 6, "last": -1, "final": -1}
NUMBERS = {w: i for i, w in enumerate("one two three four five six seven eight nine ten".split())}
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
ALL_OF = frozenset("of three four five six seven eight".split())


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
    words, found, i = hearing.words, [], 0
    while i < len(words):
        hit = next((h for n in by_first.get(words[i].norm, ()) if (h := _name_at(hearing, i, n))), None)
        if hit:
            found.append(hit)
        i = hit.end if hit else i + 1
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
    words = hearing.words
    ends = end >= len(words) or words[end].pause > SHORT_PAUSE_MS or hearing.clause_of[end] != hearing.clause_of[end - 1]
    before = words[i - 1] if i else None
    left = before.norm if before else "."
    if left in PASSED and i > 1:
        left = words[i - 2].norm
    led = left in LEADS and (i < 2 or words[i - 2].norm in ".?!,;:" or words[i - 1].pause > SHORT_PAUSE_MS)
    begins = left in ".?!,;:" or words[i].pause > SHORT_PAUSE_MS or hearing.clause_of[i] != hearing.clause_of[i - 1] or led
    upper = hearing.talk.text[words[i].start].isupper()
    return _Place(words[i], before, left, "." if ends else words[end].norm, None if ends else words[end], begins, upper)


def _stands_as_name(at: _Place, name: Name) -> bool:
    """A common word names a sample only in a naming place: `the green is`, `cup E`, `than the left`, `Left again`."""
    carried = at.right in CARRIERS or at.right in FELLOWS
    noun_follows = at.after is not None and at.after.tag in ("NN", "NNS") and not carried and at.right not in SAID_OF
    if name.words[0] == "the":
        return not noun_follows and (at.after is None or at.after.tag != "JJ")
    if len(name.words) == 1 and len(name.words[0]) == 1 and name.words[0].isalpha():
        return _letter_stands(at)
    if at.left in ("this", "that", "which", "each", "every", "no", "any", "another"):
        return False
    if at.word.norm in DIGITS.values() or at.word.norm.isdigit():
        return _number_stands(at)
    ends = at.right in NAMED_BEFORE or carried or at.begins and at.right in TURNS
    return (at.begins or at.left in NAMED_BY or at.right == "first") and ends and not noun_follows


def _number_stands(at: _Place) -> bool:
    """A number names a sample where it counts and measures nothing (`four is …`, not `four minutes`, `twenty four`)."""
    if at.left in ("number", "sticker", "sample", "batch"):
        return True
    counts = at.after is not None and (at.after.tag in ("CD", "NNS") or at.right in COUNTED or at.right.isdigit())
    if counts or at.before is not None and at.before.tag == "CD" or at.left in COUNTERS:
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
        Mention(i, i + 1, "name", (owners[word.speaker.lower()],), "mine", 0.8)
        for i, word in enumerate(hearing.words)
        if word.norm == "mine" and word.speaker and word.speaker.lower() in owners
    ]


def _alone(words: list[Word], i: int) -> bool:
    """A pointing word that is a sentence of its own (`And this.`, `And him.`) takes up the next sample."""
    before = words[i - 1].norm if i else "."
    leads = before in ("and", "okay", "now", "so", "then") and (i < 2 or words[i - 2].norm in ".?!")
    return leads and i + 1 < len(words) and words[i + 1].norm in (".", ",", "...", ":")


def _pointed(hearing: Hearing) -> list[Mention]:
    """`this one`, `that one`, `the other`, `the first one`, `the next one`, `both`."""
    words, ids = hearing.words, tuple(s.id for s in hearing.sheet.samples)
    found: list[Mention] = []
    for i, word in enumerate(words):
        after = words[i + 1].norm if i + 1 < len(words) else ""
        before = words[i - 1].norm if i else ""
        if word.norm in ("this", "that") and (after == "one" or after in CARRIERS or after in FELLOWS):
            found.append(Mention(i, i + 2, "this" if word.norm == "this" else "that", (), f"{word.norm} one", 0.5))
        elif word.norm == "other" and before in ("the", "that", "this", "your", "my") and after not in (
            "side", "day", "hand", "thing", "people", "end", "way", "night", "week", "half", "two", "three", "ones",
        ):
            found.append(Mention(i - 1, i + 2 if after in CARRIERS else i + 1, "other", (), "the other", 0.7))
        elif word.norm == "next" and (after in CARRIERS or after == "up" or (before == "the" and after in (".", ",", "is"))):
            found.append(Mention(i, i + 2, "next", (), "the next one", 0.7))
        elif word.norm in POINTERS and _alone(words, i):
            found.append(Mention(i, i + 1, "other" if len(ids) == 2 else "this", (), f"{word.norm}, alone", 0.5))
        elif word.norm in ORDINALS and (after == "one" or after in CARRIERS) and before in ("the", "our", "my", "and", "so", "this"):
            k = ORDINALS[word.norm]
            if -len(ids) <= k < len(ids):
                found.append(Mention(i, i + 2, "ordinal", (ids[k],), "counted in the order of the sheet", 0.6))
        elif word.norm == "number" and after in NUMBERS and NUMBERS[after] < len(ids):
            found.append(Mention(i, i + 2, "ordinal", (ids[NUMBERS[after]],), "counted in the order of the sheet", 0.6))
        elif len(ids) > 1 and (word.norm in ("both", "neither") or word.norm == "all" and after in ALL_OF):
            found.append(Mention(i, i + 1, "all", ids, word.norm, 0.5))
    return found
