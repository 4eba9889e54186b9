"""Where, when, of what and how a sample was made: the lexicon's terms, and open ones after `from` or `picked in`."""

from collections.abc import Iterator
from dataclasses import replace

from notesmith.lexicon import Label
from notesmith.lexicon.check import common_words
from notesmith.listening.fact_signs import Scene
from notesmith.listening.hearing import Amount, Hearing, Word
from notesmith.listening.making import find_processes
from notesmith.listening.numbers import read_number
from notesmith.records import FactKind

KINDS: dict[str, FactKind] = {"origin": "origin", "cultivar": "cultivar", "process": "process", "harvest": "harvest"}
MAKERS = ("still", "stills", "roast", "smoked", "roasted")  # last words of other terms that tell how it was made
MONTHS = frozenset("january february march april may june july august september october november december".split())
SEASONS = frozenset("spring summer autumn fall winter".split())
PICKED = frozenset(
    "picked pick plucked plucking picking harvest harvested crop vintage flush distilled made from pressed".split()
)
YEARLY = frozenset("crop vintage harvest year spring summer autumn winter flush from bottling".split())
MADE = frozenset("is 's are was it's from grown comes came come made out off in of they're a an the , pure all".split())
TALK = frozenset(
    "people usually normally always every most some other like reminds reminded than expected thought guess maybe "
    "guessed could if general category holiday went been lived lives live born train".split()
)
ON_THE_WAY = frozenset("the over up near just down outside of in at".split())
AT_HOME = frozenset("decaf decafs first second days rolling steaming hands".split())  # roasting, baking and washing up

DOUBTS = frozenset(["talk", "in a name", "done at home"])


def provenance_of(hearing: Hearing, scene: Scene) -> Iterator[Amount]:
    """Everything that may state an origin, a cultivar, a process or a harvest, with its signs."""
    stated = (*_listed(hearing), *_open_origins(hearing), *_harvests(hearing))
    listed = sorted(stated, key=lambda a: a.start)
    made = find_processes(hearing)
    covered = {i for a in made for i in range(a.start, a.end)}
    for a in (*made, *(a for a in _joined(hearing, listed) if a.kind != "process" or a.start not in covered)):
        signs = (*scene.signs(a.start, a.end), *a.signs, *_form(hearing.words, a))
        dated = a.rule == "picked then"
        plain = "picked" in signs if dated else "guarded" not in signs or "made" in signs
        told = plain and DOUBTS.isdisjoint(signs)
        yield replace(a, signs=signs, told=told)


def _form(words: list[Word], a: Amount) -> Iterator[str]:
    """Signs of its own words."""
    yield a.rule
    yield f"{min(a.end - a.start, 4)} words"
    yield f"tag {words[a.end - 1].tag}"
    if str(a.value)[:1].isupper():
        yield "capital"
    close = {w.norm for w in words[max(0, a.start - 7) : a.end + 4]}
    if not TALK.isdisjoint(close):
        yield "talk"
    if a.kind == "process" and words[a.start].norm in AT_HOME:
        yield "done at home"
    if a.start and words[a.start - 1].norm in MADE:
        yield "made"


def _listed(hearing: Hearing) -> Iterator[Amount]:
    """The lexicon's terms that may be stated."""
    words = hearing.words
    named = {i for m in hearing.mentions if m.kind == "name" for i in range(m.start, m.end)}
    for start, end, label in hearing.known:
        sort = hearing.lexicon.concepts[label.concept].sort
        kind = KINDS.get(sort) or ("process" if words[end - 1].norm in MAKERS else None)
        if kind and not (kind == "harvest" and words[end - 1].norm in YEARLY and end - start == 1):
            marks = (("guarded", label.guarded), ("in a name", start in named))
            signs = (f"sort {sort}", *(sign for sign, there in marks if there))
            yield Amount(start, end, kind, _value(hearing, start, end, label), None, f"a known {kind}", signs)


def _joined(hearing: Hearing, stated: list[Amount]) -> list[Amount]:
    """Neighbours that tell one thing, as one: a place and its country, a flush and its month."""
    joined: list[Amount] = []
    for found in stated:
        last = joined[-1] if joined else None
        if last and found.start < last.end and found.kind == last.kind:
            continue
        if last and _beside(hearing.words, last, found):
            signs = (*last.signs, *found.signs, "joined")
            joined[-1] = replace(last, end=found.end, value=f"{last.value}, {found.value}", signs=signs)
        else:
            joined.append(found)
    return joined


def _beside(words: list[Word], last: Amount, found: Amount) -> bool:
    between = {w.norm for w in words[last.end : found.start]}
    if last.kind == found.kind == "harvest":
        return found.start - last.end <= 5 and not between & {"and", "but", "."}
    return (
        last.kind == found.kind == "origin"
        and found.start - last.end <= 3
        and between <= {",", "in", "from", "the", "'s", "that"}
    )


def _value(hearing: Hearing, start: int, end: int, label: Label) -> str:
    """The words as printed where they are the lexicon's own, else the lexicon's."""
    printed = hearing.said(start, end)
    return printed if printed.lower() == label.text.lower() else label.text


def _open_origins(hearing: Hearing) -> Iterator[Amount]:
    """`it's from X`, `grown in X`, `comes from over near X`, where X is a proper name the lexicon lacks."""
    words, last = hearing.words, 0
    for i in hearing.places(["from", "in"]):
        if i < max(last, 1) or i >= len(words) - 1 or not _leads(words, i):
            continue
        start = i + 1
        while start < len(words) - 1 and words[start].norm in ON_THE_WAY:
            start += 1
        end = start
        while end < len(words) and _is_proper(words[end]):
            end += 1
        if end > start and hearing.lexicon.look_up(" ".join(w.norm for w in words[start:end])) is None:
            signs = (f"placed {words[i].norm}", f"led by {words[i - 1].norm}")
            yield Amount(start, end, "origin", hearing.said(start, end), None, "from somewhere", signs)
            last = end


def _is_proper(word: Word) -> bool:
    """A proper name; in a talk without capitals, a word nobody uses otherwise."""
    if word.norm in MONTHS or word.norm in SEASONS:
        return False
    rare = len(word.norm) > 4 and word.norm.isalpha() and word.norm not in common_words()
    return rare or word.tag in ("NNP", "NNPS", "POS")


def _leads(words: list[Word], i: int) -> bool:
    before = [w.norm for w in words[max(0, i - 2) : i]]
    if before[0] in ("he", "she", "i", "they", "who", "you", "we"):
        return False
    if words[i].norm == "in":
        return before[-1] in ("grown", "made", "produced", "born")
    return before[-1] in ("'s", "is", "are", "comes", "come", "came", "was", ",", "one", "its", "leaves", "tea")


def _harvests(hearing: Hearing) -> Iterator[Amount]:
    """`picked in March`, `the spring of 2023`, `the 2024 crop`."""
    norms, past = hearing.meant, 0
    for i in hearing.places_where(_may_date):
        end = _season_end(norms, i) if i >= past else i
        if end > i:
            past = end
            signs = (*(["picked"] if _is_picked(norms, i, end) else []), *_dated(norms, i, end))
            yield Amount(i, end, "harvest", _season_value(hearing, norms, i, end), None, "picked then", signs)


def _may_date(norm: str) -> bool:
    """Whether a date may begin with the word."""
    return norm in MONTHS or norm in SEASONS or norm[:1].isdigit() or norm in ("twenty", "nineteen", "two")


def _season_end(norms: list[str], i: int) -> int:
    """Where a season, a month or a year that begins at `i` ends; `i` where none does."""
    end = i
    while end < len(norms) and end - i < 8:
        year = _year_end(norms, end)
        if (
            norms[end] in MONTHS
            or norms[end] in SEASONS
            or (end > i and norms[end : end + 2] in (["last", "year"], ["this", "year"]))
        ):
            end += 1 + (norms[end] in ("last", "this"))
        elif year:
            end = year
        elif (
            end > i
            and norms[end] in (",", "of", "so", "picking", "first", "flush", "in")
            and end + 1 < len(norms)
            and (norms[end + 1] in MONTHS or norms[end + 1] in SEASONS or _year_end(norms, end + 1))
        ):
            end += 1
        else:
            break
    if norms[i] == "may" and end == i + 1 and (i == 0 or norms[i - 1] not in ("in", "of", "from", ",")):
        return i
    return end


def _year_end(norms: list[str], i: int) -> int:
    """Where a year from 1950 to 2039 that begins at `i` ends, or 0."""
    if not norms[i] or not ((norms[i].isdigit() and len(norms[i]) == 4) or norms[i] in ("twenty", "nineteen", "two")):
        return 0
    number = read_number(norms, i)
    spoken = number and (len(number.parts) == 2 or number.plain >= 1950)
    return number.end if number and spoken and number.high is None and 1950 <= number.plain < 2040 else 0


def _season_value(hearing: Hearing, norms: list[str], i: int, end: int) -> str | int:
    """The words, with spoken years as digits; a year alone as a number."""
    parts: list[str] = []
    at = i
    while at < end:
        year = _year_end(norms, at)
        number = read_number(norms, at) if year else None
        parts.append(str(number.plain) if number else hearing.said(at, at + 1))
        at = year or at + 1
    return int(parts[0]) if len(parts) == 1 and parts[0].isdigit() else " ".join(parts).replace(" ,", ",")


def _dated(norms: list[str], i: int, end: int) -> Iterator[str]:
    """What the date has: a year, a month, a season."""
    if any(_year_end(norms, k) for k in range(i, end)):
        yield "a year"
    if not MONTHS.isdisjoint(norms[i:end]):
        yield "a month"
    if not SEASONS.isdisjoint(norms[i:end]):
        yield "a season"


def _is_picked(norms: list[str], i: int, end: int) -> bool:
    """Whether picking or a crop is talked about; a bare year needs its crop or vintage."""
    before, after = norms[max(0, i - 6) : i], norms[end : end + 3]
    if _year_end(norms, i) == end:
        return not YEARLY.isdisjoint(after[:1]) or not YEARLY.isdisjoint(before[-2:])
    return not PICKED.isdisjoint(before) or not PICKED.isdisjoint(after)
