"""What was told of each announced product alone, by which a riddle may mean it: its shop, its box, its price."""

from collections import Counter
from collections.abc import Iterator
from dataclasses import dataclass

from notesmith.listening.announced import Candidate
from notesmith.listening.equating import PAPERS
from notesmith.listening.hearing import Hearing, Word
from notesmith.listening.names import CARRIERS
from notesmith.listening.numbers import read_number
from notesmith.listening.products import NO_NAME
from notesmith.listening.suspects import LOOSE
from notesmith.listening.vocabulary import GRADERS, LIKING, NOUNS

FAR = 90  # words after its name in which a product is still told of
ANNOUNCED = 25  # the same where it is announced: after the last one the talk goes on to other things
RARE = 4  # times a telling word is said before the reveal
A_YEAR = 1900
SHORTEST = 3  # letters of a telling word
ROOT = 4  # letters that two forms of a word share
MONEY = frozenset("pound pounds euro euros dollar dollars bucks quid £ $ €".split())
TELLING = NOUNS | {"VBN", "VBD", "JJ", "VBG", "CD"}
CHEAP = frozenset("cheap cheaper cheapest budget bargain".split())
DEAR = frozenset("dear dearer expensive dearest pricey pricier priciest posh fancy fancier".split())
OLD = frozenset("old older oldest elder aged".split())
YOUNG = frozenset("young younger youngest baby kid".split())
IDLE = frozenset(
    "time times today people week weeks poured pour written writes foot bottom gram grams hundred minute minutes "
    "second seconds millilitres".split()
)
PLAIN = CARRIERS | LOOSE | NO_NAME | LIKING | GRADERS | PAPERS | IDLE


@dataclass(frozen=True, slots=True)
class Profile:
    """How one product may be spoken of."""

    names: frozenset[str]
    signs: frozenset[str]  # roots of words told of it alone
    price: float | None
    standing: frozenset[str]  # what it is called beside the others: cheap, older


def profiles(hearing: Hearing, candidates: list[Candidate], till: int) -> list[Profile]:
    """What each candidate alone was told before word `till`."""
    told = [list(_told(hearing, candidates, k, till)) for k in range(len(candidates))]
    often = Counter(map(sign_of, hearing.words[:till]))
    signs = [{sign for i in at if (sign := sign_of(hearing.words[i])) and often[sign] <= RARE} for at in told]
    prices = [next((paid for k in at if (paid := sum_of_money(hearing.words, k))), None) for at in told]
    ages = [_age(candidate) for candidate in candidates]
    return [
        Profile(
            candidate.words,
            frozenset(signs[k].difference(*(s for j, s in enumerate(signs) if j != k))),
            prices[k] if prices.count(prices[k]) == 1 else None,
            frozenset(_standing(k, prices, CHEAP, DEAR) | _standing(k, ages, YOUNG, OLD)),
        )
        for k, candidate in enumerate(candidates)
    ]


def _standing(k: int, figures: list[float | None], least: frozenset[str], most: frozenset[str]) -> frozenset[str]:
    """The words for the one with the least and the most of something, where that is told of all."""
    told = [f for f in figures if f is not None]
    if len(told) < len(figures) or len(set(told)) < 2:
        return frozenset()
    return least if figures[k] == min(told) else most if figures[k] == max(told) else frozenset()


def sign_of(word: Word) -> str:
    """The root of a word that can tell one product from another; empty where it cannot.

    A root of four letters takes `farm`, `farmer` and `farmhouse` for one.
    """
    telling = word.tag in TELLING and word.norm not in PLAIN and len(word.norm) >= SHORTEST
    return word.norm[:ROOT] if telling else ""


def _told(hearing: Hearing, candidates: list[Candidate], k: int, till: int) -> Iterator[int]:
    """The words after each naming of the product, up to another's naming or a sample's."""
    words = hearing.words
    samples = {m.start for m in hearing.mentions if m.kind == "name"}
    own, announced = candidates[k].words, candidates[-1].start
    others = {word for c in candidates for word in c.words} - own
    left = 0
    yield from range(candidates[k].start, candidates[k].end)
    for i in range(till):
        if words[i].norm in own:
            left = FAR if i > announced + FAR else ANNOUNCED
        elif words[i].norm in others or i in samples or (left and words[i].norm == "other"):
            left = 0
        if left:
            left -= 1
            yield i


def sum_of_money(words: list[Word], i: int) -> float | None:
    """The sum of money told at word `i`, if one is."""
    if words[i].tag != "CD":
        return None
    number = read_number([w.norm for w in words[i : i + 8]], 0)
    after = words[i + number.end].norm if number and i + number.end < len(words) else ""
    return number.decimal if number and after in MONEY else None


def _age(candidate: Candidate) -> float | None:
    """How old its name says that a product is; a year counts from the other end."""
    words = candidate.product.lower().split()
    number = next((n for k in range(len(words)) if (n := read_number(words, k))), None)
    return None if number is None else -number.plain if number.plain > A_YEAR else number.plain
