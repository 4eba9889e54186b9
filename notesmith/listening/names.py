"""What the samples of a sheet may be called on a recording."""

import re
from collections import Counter, defaultdict
from collections.abc import Iterator
from dataclasses import dataclass

from notesmith.lexicon import Lexicon
from notesmith.lexicon.check import common_words
from notesmith.records import Sheet, SheetSample

DIGITS = dict(
    enumerate("zero one two three four five six seven eight nine ten eleven twelve thirteen fourteen".split())
)
NUMBER_WORDS = frozenset(DIGITS.values())
ARTICLES = ("the", "a", "an", "my", "our", "your", "this", "that")
CARRIERS = frozenset(
    "one cup mug glass bowl jar tin bottle bag can sample number cube spoon dish pot tea coffee wine beer cider "
    "whisky rum oil honey cheese chocolate bar box pack packet".split()
)
FELLOWS = frozenset("guy fella fellow lad chap boy lady girl baby beast".split())  # what a sample is called in jest
# Words of a product's full name that name nothing by themselves.
EMPTY = frozenset(
    "and of the in with from no non for to a an ml g l kg year years old new home made style single extra cup".split()
)


@dataclass(frozen=True, slots=True)
class Name:
    """One way of naming a sample: its words, and whether they mean nothing else."""

    words: tuple[str, ...]
    sample: str
    distinct: bool  # names the sample wherever it stands; else only in a naming position


def tokens_of(text: str) -> tuple[str, ...]:
    """Words as the tokenizer cuts them, lower-cased.

    >>> tokens_of("Wendell's pale-ale"), tokens_of("Jar K7")
    (('wendell', "'s", 'pale', '-', 'ale'), ('jar', 'k7'))
    """
    plain = text.lower().replace("’", "'")
    return tuple(re.findall(r"[^\W_]*\d[^\W_]*|[^\W\d_]+(?=n't)|n't|'s|[^\W\d_]+|[^\w\s]", plain))


def names_of(sheet: Sheet, lexicon: Lexicon) -> list[Name]:
    """Every way of naming the sheet's samples, the one with most words first; none names two samples."""
    claims: dict[tuple[str, ...], set[str]] = defaultdict(set)
    for sample in sheet.samples:
        for words in _ways(sample):
            claims[words].add(sample.id)
    for words, owner in _product_words(sheet):
        claims.setdefault(words, {owner})
    names = [
        Name(words, next(iter(owners)), _is_distinct(words, lexicon))
        for words, owners in claims.items()
        if len(owners) == 1 and words
    ]
    return sorted(names, key=lambda n: (-len(n.words), n.words))


def _ways(sample: SheetSample) -> Iterator[tuple[str, ...]]:
    """The id and the aliases, with and without their article and the vessel they stand in."""
    for text in (sample.id, *sample.aliases, *([sample.product] if sample.product else [])):
        words = tokens_of(text)
        yield words
        core = words[1:] if words and words[0] in ARTICLES and len(words) > 1 else words
        if len(core) > 1:
            yield core
        if len(core) > 1 and core[-1] in CARRIERS and core[-2] not in CARRIERS:
            core = core[:-1]
        if core and core[0] in CARRIERS and len(core) > 1 and core[1] not in CARRIERS:
            core = core[1:]
        if core not in (("one",), ("other",), ("same",)) or core == words:
            yield core
        yield from _spoken_number(core)
        yield from _spoken_code(core)


def _spoken_code(words: tuple[str, ...]) -> Iterator[tuple[str, ...]]:
    """A letter and its number apart, as they are heard: K7 and k 7 and k seven, 2B and two b."""
    code = re.fullmatch(r"([a-z]+)(\d+)|(\d+)([a-z]+)", words[0]) if len(words) == 1 else None
    if code:
        parts = [part for part in code.groups() if part]
        yield tuple(parts)
        yield tuple(DIGITS.get(int(part), part) if part.isdigit() else part for part in parts)


def _spoken_number(words: tuple[str, ...]) -> Iterator[tuple[str, ...]]:
    """A number in words where it is in digits: 9 and nine, 2007 and two thousand and seven."""
    if len(words) != 1 or not words[0].isdigit():
        return
    number = int(words[0])
    if number in DIGITS:
        yield (DIGITS[number],)
    elif 2000 < number < 2010:
        yield ("two", "thousand", "and", DIGITS[number - 2000])
    elif 2009 < number < 2015:
        yield ("twenty", DIGITS[number - 2000])
    elif 99 < number < 1000:
        yield tuple(DIGITS[int(d)] for d in words[0])


def _product_words(sheet: Sheet) -> Iterator[tuple[tuple[str, ...], str]]:
    """Words of the products' names that only one sample has."""
    owned = Counter(word for sample in sheet.samples for word in set(_telling(sample)))
    for sample in sheet.samples:
        for word in dict.fromkeys(_telling(sample)):
            if owned[word] == 1:
                yield (word,), sample.id


def _telling(sample: SheetSample) -> list[str]:
    """Capitalised words of a product's name."""
    found = re.findall(r"\b[A-Z][^\W\d_]{2,}", sample.product or "")
    return [w.lower() for w in found if w.lower() not in EMPTY | CARRIERS | NUMBER_WORDS]


def _is_distinct(words: tuple[str, ...], lexicon: Lexicon) -> bool:
    """Whether the words mean nothing else: no common word, no sensory word, no number, no letter."""
    text = " ".join(words)
    if all(w in NUMBER_WORDS or w.isdigit() for w in words) or lexicon.look_up(text) is not None:
        return False
    if len(words) == 1:
        return len(text) > 2 and text not in common_words()
    return any(len(w) > 1 for w in words)
