"""Where is a property graded against something: smokier, less dry, not as sweet, the same colour, the thickest?"""

from collections.abc import Callable, Iterator
from functools import lru_cache
from typing import NamedTuple

from notesmith.lexicon import Lexicon
from notesmith.lexicon.check import common_words
from notesmith.lexicon.inflect import adjective_forms
from notesmith.listening.hearing import Hearing, Word
from notesmith.listening.names import CARRIERS
from notesmith.listening.vocabulary import BE, CONTAINERS, DETERMINERS, GRADERS, NOUNS

# Comparatives that grade liking, money or time, or compare nothing.
NO_PROPERTY = frozenset(
    "better worse nicer more less later earlier older younger cheaper dearer sooner faster quicker slower "
    "warmer colder cooler hotter easier happier prettier further farther closer nearer former latter best "
    "worst most least nicest cheapest other rather over never ever under water paper butter pepper ginger "
    "rest test chest forest honest interest earliest latest biggest easiest higher lower kinder number either "
    "neither friendlier posher dumber weirder funnier oldest newest".split()
)
PROPERTY_TAGS = NOUNS | {"JJ", "VBN", "VBG", "RB"}
NO_HEAD = frozenset(
    "than like so or and of that this it time times something thing things one ones bit lot way much often "
    "interesting minute minutes water people cup cups pour tea coffee grams question please importantly sip "
    "point second go then now".split()
)
NOT_MORE = frozenset("any no once one two some at".split())  # `any more`, `once more`, `at most`
GRADED_DOWN = frozenset("not n't nt nowhere no never half isnt aint quite near isn't nearly hardly".split())
EVEN = frozenset("level equal even same tied equally tie identical".split())
WHOLLY = frozenset("same identical".split())  # with no property after them: alike in all
OVERALL = "overall"
ABOUT = frozenset("for on in".split())
HOLDING = BE | GRADERS | {"got", "has"}  # what stands between a noun and its comparative


class Grading(NamedTuple):
    """A property graded: more (1), less (-1) or the same (0); `most` where it is graded against all the others."""

    start: int
    end: int
    attribute: str
    says: tuple[int, int]  # the words that name the property
    way: int
    most: bool


def find_gradings(hearing: Hearing) -> Iterator[Grading]:
    """Every grading, in the order they are said."""
    words, past = hearing.words, 0
    for i in hearing.places_where(_may_grade):
        grading = _grading_at(hearing, i) if i >= past else None
        if grading:
            past = grading.end + (grading.end < len(words) and words[grading.end].norm == "as")
            yield grading


def _may_grade(norm: str) -> bool:
    return norm in MAKERS or (norm.endswith(("er", "est")) and norm not in NO_PROPERTY)


def _grading_at(hearing: Hearing, i: int) -> Grading | None:
    words = hearing.words
    maker = MAKERS.get(words[i].norm)
    if not maker:
        return _inflected(hearing, i)
    made = maker(words, i)
    told = made and (made.attribute == OVERALL or _names_property(hearing, *made.says))
    weak = made and (made.most or made.way == 0) and not told
    return None if weak else made


def _inflected(hearing: Hearing, i: int) -> Grading | None:
    """`smokier`, `the smokiest`."""
    words, norm = hearing.words, hearing.words[i].norm
    base = plain_form(norm, hearing.lexicon, graded=words[i].tag in ("JJR", "RBR", "JJS", "RBS"))
    if not base:
        return None
    most = norm.endswith("est")
    before = words[i - 1].norm if i else ""
    if most and before != "the":
        return None
    if before in ("no", "any") or (before == "the" and i and words[i - 2].norm in ("the", ",") and not most):
        return None
    after, named = _noun_after(hearing, i), _noun_before(hearing, i)
    if after and after not in NO_HEAD | CARRIERS and not most:
        return Grading(i, i + 2, f"{base} {after}", (i, i + 2), 1, False) if _is_sensory(hearing, after) else None
    return Grading(i, i + 1, f"{base} {named}" if named else base, (i, i + 1), 1, most)


def _noun_after(hearing: Hearing, i: int) -> str:
    """The noun right after the word at `i`, or nothing."""
    word = hearing.words[i + 1] if i + 1 < len(hearing.words) else None
    joined = word and word.tag in NOUNS and word.pause < 300 and hearing.clause_of[i + 1] == hearing.clause_of[i]
    return word.norm if word and joined else ""


def _noun_before(hearing: Hearing, i: int) -> str:
    """The noun whose strength is graded: the finish in `the finish is longer`, or nothing."""
    words, k = hearing.words, i - 1
    while k > max(0, i - 4) and words[k].norm in HOLDING:
        k -= 1
    noun = words[k].norm if 0 <= k < i - 1 and words[k].tag in NOUNS else ""
    names = noun and any(m.start <= k < m.end for m in hearing.mentions)
    return noun if noun and not names and _is_sensory(hearing, noun) else ""


def _names_property(hearing: Hearing, start: int, end: int) -> bool:
    """Whether the words name something perceived: the same colour, not the same roaster."""
    return any(_is_sensory(hearing, w.norm) for w in hearing.words[start:end])


def _is_sensory(hearing: Hearing, noun: str) -> bool:
    label = hearing.lexicon.look_up(noun)
    sensory = label is not None and hearing.lexicon.concepts[label.concept].sort == "descriptor"
    return noun in CONTAINERS or sensory


def plain_form(word: str, lexicon: Lexicon, *, graded: bool) -> str | None:
    """The adjective of a comparative or superlative: `smokier` is smoky, `the biggest` is big; None where it is none.

    `graded` says that the tagger takes the word for one; words the lexicon has need no tagger.
    """
    if word in NO_PROPERTY:
        return None
    known = lexicon.look_up(word)
    if not (graded or (known and known.derived and known.form == "adjective")):
        return None
    candidates = [base for base in _bases(word) if word in adjective_forms(base)]
    listed = [b for b in candidates if (label := lexicon.look_up(b)) and label.form == "adjective"]
    everyday = [b for b in candidates if b in _everyday_words()]
    return next(iter((*listed, *everyday)), None)


@lru_cache(maxsize=1)
def _everyday_words() -> frozenset[str]:
    return common_words()


def _bases(word: str) -> Iterator[str]:
    stem = word[:-3] if word.endswith("est") else word[:-2]
    if stem.endswith("i"):
        yield stem[:-1] + "y"
    yield stem
    yield stem + "e"
    if len(stem) > 2 and stem[-1] == stem[-2]:
        yield stem[:-1]


def _head(words: list[Word], i: int, limit: int = 3) -> int:
    """Where the property that begins at `i` ends: up to three adjectives and nouns; `i` itself where there is none."""
    end = i
    while end < len(words) and end - i < limit and words[end].norm.isalpha():
        word = words[end]
        goes_on = end == i or (word.pause <= 400 and word.tag != "RB")
        if word.norm in NO_HEAD or word.tag not in PROPERTY_TAGS or not goes_on:
            break
        end += 1
    while end > i and words[end - 1].tag in ("RB", "VBG") and not words[end - 1].norm.endswith("ing"):
        end -= 1
    return end


def _more(words: list[Word], i: int) -> Grading | None:
    """`more X`, `less X`, `the most X`."""
    norm, before = words[i].norm, words[i - 1].norm if i else ""
    most = norm in ("most", "least")
    if before in NOT_MORE or (before == "the") != most:
        return None
    start = i + 1
    if start < len(words) and words[start].norm in ("of", "a", "an", "the"):
        return None  # `more of a brown` says what it is, not how it stands beside another
    end = _head(words, start)
    if end == start:
        return None
    way = 1 if norm in ("more", "most") else -1
    attribute = " ".join(w.norm for w in words[start:end])
    return Grading(i, end, attribute, (start, end), way, most)


def _as(words: list[Word], i: int) -> Grading | None:
    """`not as X (as)`, `as X as`."""
    end = _head(words, i + 1)
    if end == i + 1:
        return None
    before = [w.norm for w in words[max(0, i - 5) : i]]
    attribute = " ".join(w.norm for w in words[i + 1 : end])
    if words[i + 1].norm in ("much", "many", "well", "soon") or (words[i + 1].norm == "long" and "n't" not in before):
        return None
    if GRADED_DOWN.intersection(before[-3:]) or before[-2:-1] == ["n't"]:
        return Grading(i, end, attribute, (i + 1, end), -1, False)
    if {"twice", "times"} & set(before[-2:]):
        return Grading(i, end, attribute, (i + 1, end), 1, False)
    after = [w.norm for w in words[end : end + 2]]
    if after[:1] == ["as"] and not {"i", "possible", "you", "if"}.intersection(after):
        return Grading(i, end, attribute, (i + 1, end), 0, False)
    return None


def _same(words: list[Word], i: int) -> Grading | None:
    """`the same X`, `about even on X`, `equally X`; `the same` and no more."""
    if words[i].norm in WHOLLY and (i + 1 == len(words) or words[i + 1].norm in (",", ".", "!", ";", "to")):
        return Grading(i, i + 1, OVERALL, (i, i + 1), 0, False)
    if words[i].norm == "equally":
        start = i + 1
    elif words[i].norm == "same" and (i == 0 or words[i - 1].norm not in ("the", "about")):
        return None
    else:
        start = i + 1 + (i + 1 < len(words) and words[i + 1].norm in ABOUT)
        if words[i].norm != "same" and start == i + 1:
            return None
    while start < len(words) and words[start].norm in DETERMINERS:
        start += 1
    end = _head(words, start, 2)
    attribute = " ".join(w.norm for w in words[start:end])
    return Grading(i, end, attribute, (start, end), 0, False) if attribute else None


MAKERS: dict[str, Callable[[list[Word], int], Grading | None]] = {
    **dict.fromkeys(("more", "less", "most", "least"), _more),
    **dict.fromkeys(EVEN, _same),
    "as": _as,
}
