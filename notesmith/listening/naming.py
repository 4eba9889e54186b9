"""Where a talk names things: the places at which somebody who has no sheet would learn what the samples are called."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from typing import Literal, NamedTuple

from notesmith.listening.names import CARRIERS, DIGITS
from notesmith.transcript import Talk

Series = Literal["letter", "number", "colour", "place", "day", "thing", "bare", "called"]
Sign = Literal["carried", "alone", "introduced", "subject", "set against", "row", "called", "with article", "said"]
Key = tuple[str, ...]
Coded = tuple[Series, Key]

COLOURS = "red blue green yellow orange purple pink white black brown grey gray silver gold teal turquoise violet clear"
DAYS = "monday tuesday wednesday thursday friday saturday sunday"
PLACES = frozenset("left right middle centre center".split())
ROWS = frozenset("back front top bottom far near".split())
CODES: dict[str, Coded] = {
    **{word: ("number", (str(k),)) for k, word in DIGITS.items() if k},
    **{str(k): ("number", (str(k),)) for k in DIGITS if k},
    **{word: ("colour", (word,)) for word in COLOURS.split()},
    **{word: ("day", (word.capitalize(),)) for word in DAYS.split()},
    **{word: ("place", (word,)) for word in PLACES},
}
MARKS = frozenset("peg dot sticker sock coaster label handle lid ribbon cap tag band stripe string card marble".split())
NUMBERED = frozenset("number cup glass jar bowl spoon sample sticker mug bottle batch dish pot plate cube tin".split())
ARTICLES = frozenset("the a an my our".split())
LEADS = frozenset("okay ok right so and now then next well alright first but on to with".split())
VERBS = frozenset("is 's was has had isn't wasn't hasn't smells tastes looks wins won does".split())
INTRODUCING = frozenset(
    tuple(words.split())
    for words in "this is,this 's,here 's,next is,next 's,up is,up next,on to,back to,one is,one 's".split(",")
)
TURNS = frozenset("first next again last".split())
CONTENTS = frozenset("one tea coffee wine beer cider whisky rum oil honey cheese chocolate bar".split())
VESSELS = CARRIERS | MARKS
AGAINST = frozenset("than versus vs against between".split())
FEW = frozenset("one two 1 2".split())  # `the one`, `the two` point
PARTS = frozenset("of point".split())  # before a number that measures
JOINTS = frozenset("and or the a an then".split())
SHORT_PAUSE_MS = 300


class Said(NamedTuple):
    """A word as a name is sought in it."""

    norm: str
    printed: str
    begins: bool  # a thought begins with it
    ends: bool
    inside: bool  # a sentence goes on with it: a capital there is a name's


@dataclass(frozen=True, slots=True)
class Naming:
    """A place where something is named."""

    at: int
    series: Series
    key: Key
    sign: Sign


def said_words(talk: Talk) -> list[Said]:
    """The words of the talk without their punctuation, each `'s` a word of its own."""
    said: list[Said] = []
    begins, full_stop = True, True
    for index, word in enumerate(talk.words):
        printed = talk.text[word.start : word.end].replace("’", "'")
        core = printed.strip('.,;:?!"“”()[]…-–—')
        if index and _silence(talk, index):
            begins = full_stop = True
            said[-1:] = [last._replace(ends=True) for last in said[-1:]]
        if core:
            ends = printed[-1] in '.,;:?!"”)…-–—'
            owner = core[:-2] if core.endswith("'s") and len(core) > 2 else core
            whole = owner == core
            said.append(Said(owner.lower(), owner, begins, ends and whole, not full_stop))
            if not whole:
                said.append(Said("'s", "'s", False, ends, True))
            begins, full_stop = ends, printed[-1] in '.?!"”…'
    return said


def _silence(talk: Talk, index: int) -> bool:
    """Whether there is a pause, or another speaker, before a spoken word."""
    before, now = talk.cues[talk.words[index - 1].cue], talk.cues[talk.words[index].cue]
    return before is not now and (now.start_ms - before.end_ms > SHORT_PAUSE_MS or before.speaker != now.speaker)


def find_namings(said: Sequence[Said]) -> list[Naming]:
    """Every place where a letter, a number, a colour, a place, a day or a thing stands as a name."""
    coded = [(i, code) for i in range(len(said)) if (code := code_at(said, i))]
    found = [
        Naming(i, series, key, sign)
        for i, (series, key) in coded
        if (sign := sign_at(said, i, i + _length((series, key)), series))
    ]
    found += [Naming(i, series, key, "row") for row in _rows(said, coded) for i, (series, key) in row]
    return sorted(found, key=lambda naming: naming.at)


def _length(coded: Coded) -> int:
    return len(coded[1])


def code_at(said: Sequence[Said], i: int) -> Coded | None:
    """What kind of name the word could be, and in which form its namings are counted."""
    word, before = said[i].norm, said[i - 1] if i else None
    if len(word) == 1 and word.isalpha():
        unsure = word == "i" or (word == "a" and not said[i].printed.isupper())
        return None if unsure else ("letter", (word.upper(),))
    if word in ROWS and i + 1 < len(said) and said[i + 1].norm in PLACES:
        return "place", (word, said[i + 1].norm)
    if word in CODES:
        return None if word in PLACES and before and before.norm in ROWS else CODES[word]
    is_thing = before is not None and before.norm == "the" and not before.ends and len(word) > 2
    return ("thing", (word,)) if is_thing else None


class _Place(NamedTuple):
    """Where a word stands that may be a name."""

    before: str  # the word before it and its article; a full stop where a thought begins
    after: str  # the word after it; a full stop where a thought ends
    begins: bool  # a thought begins with it, but for words like `okay`
    article: bool
    first: int  # its article, or itself


def _place(said: Sequence[Said], i: int, end: int) -> _Place:
    article = i > 0 and said[i - 1].norm in ARTICLES and not said[i].begins
    first = i - article
    before = "." if first == 0 or said[first].begins else said[first - 1].norm
    after = "." if end >= len(said) or said[end - 1].ends else said[end].norm
    led = before in LEADS and (first < 2 or said[first - 1].begins or said[first - 2].norm in LEADS)
    return _Place(before, after, before == "." or led, article, first)


def sign_at(said: Sequence[Said], i: int, end: int, series: Series) -> Sign | None:
    """By what sign the words from `i` to `end` stand as a name, if they do."""
    at, counted = _place(said, i, end), series in ("letter", "number")
    if at.article and counted:
        return "with article" if said[i].norm not in FEW and (at.after == "." or at.after in VERBS) else None
    if at.before in NUMBERED if counted else at.article and at.after in (CONTENTS if series == "thing" else VESSELS):
        return "carried"
    return _sign_at_end(said, at, series) if at.after == "." else _sign_inside(at, series)


def _sign_inside(at: _Place, series: Series) -> Sign | None:
    """The sign of a name after which a thought goes on."""
    if at.after in TURNS and at.begins and series != "thing":
        return "alone"
    if at.after in VERBS and (at.begins or _is_subject(at, series)):
        return "subject"
    return "set against" if at.before in AGAINST and series != "number" else None


def _is_subject(at: _Place, series: Series) -> bool:
    """Whether a verb makes the word a name though no thought begins with it: many captions have no punctuation."""
    counts = series == "number" and (at.before in CODES or at.before in PARTS)
    return series != "bare" and not counts


def _sign_at_end(said: Sequence[Said], at: _Place, series: Series) -> Sign | None:
    """The sign of a name with which a thought ends."""
    if tuple(word.norm for word in said[max(0, at.first - 2) : at.first]) in INTRODUCING:
        return "introduced"
    if at.begins:
        return "alone"
    if at.article and series in ("colour", "place"):
        return "with article"
    return "set against" if at.before in AGAINST else None


def _rows(said: Sequence[Said], coded: Sequence[tuple[int, Coded]]) -> Iterator[list[tuple[int, Coded]]]:
    """Two and more different names of one series with nothing but `and`, `or` and articles between them."""
    row: list[tuple[int, Coded]] = []
    for at in coded:
        if row and not _joined(said, row[-1], at):
            yield from [row] if len({key for _, (_, key) in row}) > 1 else []
            row = []
        row.append(at)
    yield from [row] if len({key for _, (_, key) in row}) > 1 else []


def _joined(said: Sequence[Said], one: tuple[int, Coded], other: tuple[int, Coded]) -> bool:
    between = said[one[0] + _length(one[1]) : other[0]]
    return one[1][0] == other[1][0] and len(between) < 3 and all(word.norm in JOINTS for word in between)
