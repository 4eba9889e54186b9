"""In what order are the samples put?

A ranking is a row of names, each tied to the one before by `then` or given a place (`gold wins, red second, and blue
at the bottom`). A row that tells what will be poured or tasted next is none.
"""

import itertools

from notesmith.listening.hearing import Hearing, Mention, Word
from notesmith.listening.siding import short_names, singled_out

Named = tuple[Mention, str]

PLACES = {
    "first": 1, "winner": 1, "wins": 1, "top": 1, "second": 2, "third": 3, "fourth": 4, "fifth": 5, "sixth": 6,
    "last": 99, "bottom": 99, "bin": 99,
}  # fmt: skip
TO_PLACE = frozenset(
    "is 's was in at the a comes came goes going on to , way dead number for sure just still".split()
)
BETWEEN = frozenset(
    "and then the , . - -- um uh actually probably maybe it 's for me i 'd would put say with or um, after by "
    "in my".split()
)
ANNOUNCES = frozenset("order ranking rank ranked goes answer final overall podium list".split())
OPINES = frozenset(
    "me 'd i my it its it's overall wins first winner say order ranking goes favourite favorite best go".split()
)
PROCESS = frozenset(
    "try taste tasting pour pouring start starting brew brewing smell sniff move moving begin boil look open "
    "slurp sip".split()
)
THEN = frozenset(["then", "followed"])
SURELY = frozenset("easily easy definitely definitively obviously clearly contest".split())
LATE = 0.6  # of a recording; names told off after this are a verdict
ROW_GAPS = frozenset(", and then the . or".split())
SHORT = 0.5  # the score of a name that only stands for one where one is called for
GAP = 18  # words between two names of a ranking
BEFORE = 8  # words before a ranking that tell what it is


def find_rankings(hearing: Hearing) -> list[list[Named]]:
    """Every row of two or more names that is a ranking, best first."""
    known = [(m, s) for m, s in singled_out(hearing) if m.kind in ("name", "ordinal", "other")]
    named = sorted([*known, *_called_for(hearing, known)], key=lambda n: n[0].start)
    found, i = [], 0
    while i < len(named):
        row, size = _row(hearing, named, i)
        if len(row) > 1 and _ranks(hearing, row):
            found.append(_best_first(hearing, row))
            i += size
        else:
            i += 1
    return found


def _called_for(hearing: Hearing, known: list[Named]) -> list[Named]:
    """Short names where a ranking calls for a name: in a row of three (`four, two, one`), or tied by `then`."""
    both = sorted([*known, *short_names(hearing)], key=lambda n: n[0].start)
    found, row = [], both[:1]
    for now in both[1:]:
        gap = {w.norm for w in hearing.words[row[-1][0].end : now[0].start]}
        if not ROW_GAPS.issuperset(gap):
            found += _told_off(hearing.words, row)
            row = []
        row.append(now)
    return [named for named in found + _told_off(hearing.words, row) if named[0].score == SHORT]


def _told_off(words: list[Word], row: list[Named]) -> list[Named]:
    samples = {sample for _, sample in row}
    tied = "then" in (w.norm for w in words[row[0][0].start : row[-1][0].end]) if row else False
    return row if len(samples) == len(row) and (len(row) > 2 or (tied and len(row) > 1)) else []


def _row(hearing: Hearing, named: list[Named], i: int) -> tuple[list[Named], int]:
    """The row of names that begins with the one at `i`, and how many mentions it takes up."""
    row, last, j = [named[i]], named[i][0], i + 1
    while j < len(named):
        mention, sample = named[j]
        if mention.start - last.end > GAP or hearing.words[mention.start].speaker != hearing.words[last.start].speaker:
            break
        if all(sample != s for _, s in row):
            if not _linked(hearing.words, last, mention) or _starts_anew(hearing.words, row, mention):
                break
            row.append(named[j])
        last = mention
        j += 1
    return row, j - i


def _linked(words: list[Word], last: Mention, mention: Mention) -> bool:
    gap = [w.norm for w in words[last.end : mention.start]]
    if "than" in gap or "over" in gap or "but" in gap[:1]:
        return False
    close = gap[-6:]
    after_then = next((close[k + 1 :] for k in range(len(close) - 1, -1, -1) if close[k] in THEN), None)
    if after_then is not None and BETWEEN.issuperset(after_then):
        return True
    return place_of(words, mention) > 0 or (len(gap) < 3 and BETWEEN.issuperset(gap))


def _starts_anew(words: list[Word], row: list[Named], mention: Mention) -> bool:
    """A first place begins another row, unless the row is told from the bottom up."""
    return place_of(words, mention) == 1 and place_of(words, row[0][0]) < 2


def place_of(words: list[Word], mention: Mention) -> int:
    """The place a name is given, right after it or right before it; 0 for none."""
    before = [w.norm for w in words[max(0, mention.start - 4) : mention.start]]
    if "place" in before and "." not in before:
        return next((PLACES[n] for n in before if n in PLACES), 0)
    for word in words[mention.end : mention.end + 5]:
        if word.norm in PLACES:
            return PLACES[word.norm]
        if word.norm not in TO_PLACE:
            break
    for norm in reversed(before):
        if norm in PLACES:
            return PLACES[norm]
        if norm not in TO_PLACE:
            break
    return 0


def _ranks(hearing: Hearing, row: list[Named]) -> bool:
    """Whether a row of names ranks them, rather than telling what is poured next."""
    words, start, end = hearing.words, row[0][0].start, row[-1][0].end
    before = {w.norm for w in words[max(0, start - BEFORE) : start]}
    inside = [w.norm for w in words[start:end]]
    if PROCESS & before or PROCESS.intersection(inside) or hearing.clauses[hearing.clause_of[start]].asks:
        return False
    placed = sum(place_of(words, m) > 0 for m, _ in row)
    linked = sum(n in THEN for n in inside)
    whole = len(row) == len(hearing.sheet.samples)
    if not placed and not linked:
        late = start > LATE * len(words)
        told_off = whole and late and BETWEEN.issuperset(_gaps(words, row))
        return len(row) > 2 and (bool(before & ANNOUNCES) or told_off)
    return placed + linked > 1 or bool(before & OPINES or SURELY.intersection(inside)) or whole


def _gaps(words: list[Word], row: list[Named]) -> set[str]:
    """The words between the names of a row."""
    pairs = itertools.pairwise(m for m, _ in row)
    return {w.norm for a, b in pairs for w in words[a.end : b.start]}


def _best_first(hearing: Hearing, row: list[Named]) -> list[Named]:
    """A row that begins with the last place is told from the bottom up."""
    places = [place_of(hearing.words, m) for m, _ in row]
    if all(places):
        return [named for _, named in sorted(zip(places, row, strict=True), key=lambda p: p[0])]
    return row[::-1] if places[0] > 2 and places[-1] in (0, 1) else row
