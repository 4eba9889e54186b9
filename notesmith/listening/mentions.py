"""Which sample is named or pointed at?"""

from collections import defaultdict
from dataclasses import replace

from notesmith.listening.hearing import Hearing, Mention, Word
from notesmith.listening.names import CARRIERS, FELLOWS, Name, names_of

ORDINALS = {"first": 0, "second": 1, "third": 2, "fourth": 3, "fifth": 4, "sixth": 5, "seventh": 6, "last": -1, "final": -1}
NUMBERS = {w: i for i, w in enumerate("one two three four five six seven eight nine ten".split())}
NAMED_BY = frozenset("the number cup sample glass bowl jar tin spoon mug bottle sticker and or than with to from of "
                     "for in on is was now versus over about like then between".split())  # fmt: skip
NAMED_BEFORE = frozenset("is 's was has had , . ? ! : and or again still one first now then also had does did "
                         "isn't wins won tastes smells looks seems got goes comes cup".split())  # fmt: skip
CROWD = 3  # words between two names that still stand in a row
COUNTED = frozenset("of point percent hundred thousand minute second gram grams mil ml degrees times past quarter half pound pounds euro "
                    "euros dollar dollars quid pence cent cents bucks rand rupees year month week day hour".split())
LEADS = frozenset("and okay ok so now right then the but next alright well".split())
TURNS = frozenset("oh ooh first with again whoa hm hmm mm go whole then okay now well and very really so um uh definitely".split())
POINTERS = frozenset("this him her here these".split())
COUNTERS = frozenset("about around out like what for nearly almost only at by point past".split())
ALL_OF = frozenset("of three four five six seven eight".split())


def find_mentions(hearing: Hearing) -> None:
    """Find where samples are named, numbered or pointed at, in the order they stand."""
    found = [*_named(hearing), *_pointed(hearing)]
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
        upper = hearing.talk.text[words[i].start].isupper()
        hit = next((h for n in by_first.get(words[i].norm, ()) if (h := _name_at(words, i, n, upper))), None)
        if hit:
            found.append(hit)
        i = hit.end if hit else i + 1
    return found


def _name_at(words: list[Word], i: int, name: Name, upper: bool) -> Mention | None:
    """The name at word `i`, if it stands there and stands as a name."""
    end, k = i, 0
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
    if _stands_as_name(words, i, end, name, upper):
        return Mention(i, end, "name", (name.sample,), "name in a naming place", 0.8)
    return None


def _stands_as_name(words: list[Word], i: int, end: int, name: Name, upper: bool) -> bool:
    """A common word names a sample only in a naming place: `the green is`, `cup E`, `than the left`, `Left again`."""
    before = words[i - 1].norm if i else "."
    after = words[end].norm if end < len(words) else "."
    if name.words[0] == "the":
        return words[end].tag not in ("NN", "NNS", "JJ") or after in CARRIERS if end < len(words) else True
    if len(name.words) == 1 and len(name.words[0]) == 1 and name.words[0].isalpha():
        return _letter_stands(words, i, before, after, upper)
    if before in ("this", "that", "which", "each", "every", "no", "any", "another"):
        return False
    carried = after in CARRIERS or after in FELLOWS
    pauses = end >= len(words) or words[end].pause > 300
    begins = before in ".?!,;:" or words[i].pause > 300
    led = before in LEADS and (i < 2 or words[i - 2].norm in ".?!,;:" or words[i - 1].pause > 300)
    ends = after in NAMED_BEFORE or carried or pauses or (begins or led) and after in TURNS
    begins = begins or before in NAMED_BY
    noun_follows = not pauses and words[end].tag in ("NN", "NNS") and not carried
    if words[i].norm in NUMBERS or words[i].norm.isdigit():
        return _number_stands(words, i, end, before, after)
    return begins and ends and not noun_follows


def _number_stands(words: list[Word], i: int, end: int, before: str, after: str) -> bool:
    """A number names a sample where it counts and measures nothing (`four is …`, not `four minutes`, `twenty four`)."""
    follower = words[end] if end < len(words) and words[end].pause <= 300 else None
    counts = follower is not None and (follower.tag in ("CD", "NNS") or after in COUNTED or after.isdigit())
    if before in ("number", "sticker", "sample", "batch"):
        return True
    if counts or i > 0 and (words[i - 1].tag == "CD" or before in COUNTERS):
        return False
    starts = before in ".?!,;:" or words[i].pause > 300 or before in LEADS or before in ("than", "is", "to", "in", "on", "whereas", "cup", "the")
    if words[i].norm != "one":
        return starts or follower is None or after in NAMED_BEFORE or follower.tag not in ("IN", "TO")
    heads_on = before in ".?!;:" or words[i].pause > 300 or before in ("okay", "so", "now", "than", "do", "to", "whereas")
    return heads_on and (follower is None or after in NAMED_BEFORE)


def _letter_stands(words: list[Word], i: int, before: str, after: str, upper: bool) -> bool:
    """A single letter: after a vessel, or where no article or pronoun can stand."""
    if before in CARRIERS:
        return True
    if words[i].norm in ("a", "i"):
        begins = before in ".?!" or words[i].pause > 300
        if upper and not begins and words[i].norm == "a":
            return True
        return after in ("is", "'s", "was", "has", ".", "again") and (upper or begins) and words[i].norm == "a"
    return before != "'" and after not in ("'", "-")


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
