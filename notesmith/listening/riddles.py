"""Which announced product is which sample, where nobody equates the two: told by riddles, prices and what is left.

After the verdict every sentence that speaks of one sample and of one product is a vote that they are the same. A
product is spoken of by its name, by what was told of it alone before (its shop, its dented tin), or by its price.
"""

from collections.abc import Iterator
from itertools import permutations
from typing import NamedTuple

from notesmith.listening.announced import Candidate
from notesmith.listening.equating import BEST, GUESSES, PAPERS, Naming
from notesmith.listening.hearing import Hearing, Word
from notesmith.listening.profiles import Profile, profiles, sign_of, sum_of_money
from notesmith.listening.sounding import joined, likeness

REACH = 300  # words from the reveal's start in which a product is told
PICKED = BEST | frozenset("won wins picked chose chosen".split())
LOST = frozenset("loser lost loses second".split())
CHEAP = frozenset("cheap cheaper cheapest budget bargain".split())
DEAR = frozenset("dear dearer expensive expensiver dearest pricey pricier priciest posh fancy fancier".split())
BEATS = frozenset("beat beats beaten".split())
GUESSING = GUESSES | frozenset("think if whether bet hope".split())
ARTICLES = frozenset("the my your".split())
DENIED = frozenset("not n't never".split())
READING = frozenset("read reads reading".split())  # a label read out is any product's
ENDS = frozenset(". ? ! : ;".split())
LONGEST = 28  # words of a sentence that has no full stop
NAMED, SIGNED, PRICED = 2.0, 1.0, 1.5
SOON, LATER = 120, 0.5  # words from the reveal's start after which a vote weighs less: labels are read out then
TOLD_HERE, CARRIED = 1.0, 0.6  # what a vote weighs where its own sentence names the sample, or an earlier one
ENOUGH, MARGIN = 0.6, 0.5
SOUNDS_LIKE = 0.78


class Vote(NamedTuple):
    """At word `at` the sample is told to be the product, by so much."""

    at: int
    sample: str
    candidate: int
    weight: float


def name_by_votes(
    hearing: Hearing, candidates: list[Candidate], start: int, winner: str | None, first: list[Naming]
) -> list[Naming]:
    """The samples' products as the votes after word `start` have it, beside what has been named `first`."""
    if not candidates:
        return []
    known = profiles(hearing, candidates, start)
    votes = [*_told(first, candidates), *_votes(hearing, known, start, winner)]
    chosen = _assigned([s.id for s in hearing.sheet.samples], len(candidates), votes)
    return sorted(_namings(candidates, votes, chosen), key=lambda n: n.start)


def _told(first: list[Naming], candidates: list[Candidate]) -> Iterator[Vote]:
    """What was equated counts as a vote that cannot be outdone."""
    for naming in {sample: n for n in reversed(first) for sample in n.samples}.values():
        spoken = set(naming.product.lower().replace(",", "").split())
        for k, candidate in enumerate(candidates):
            for sample in naming.samples if candidate.words & spoken else ():
                yield Vote(naming.start, sample, k, 9.0)


def _namings(candidates: list[Candidate], votes: list[Vote], chosen: dict[str, int]) -> Iterator[Naming]:
    last = max((v.at for v in votes), default=0)
    for sample, k in chosen.items():
        at = min((v.at for v in votes if (v.sample, v.candidate) == (sample, k) and v.weight > 0), default=None)
        start = last if at is None else at
        yield Naming(start, start + 1, (sample,), candidates[k].product, True, called=at is not None)


def _assigned(samples: list[str], count: int, votes: list[Vote]) -> dict[str, int]:
    """The one way of dealing the products to the samples for which clearly most speaks."""
    ways = [dict(zip(samples, way, strict=True)) for way in permutations(range(count))] if count < 6 else []

    def worth(way: dict[str, int]) -> float:
        return sum(v.weight for v in votes if way[v.sample] == v.candidate)

    best, *others = sorted(ways, key=worth, reverse=True) if ways else [{}]
    next_best = worth(others[0]) if others else 0.0
    enough = max(abs(v.weight) for v in votes) >= ENOUGH if votes else False
    return best if enough and worth(best) - next_best >= MARGIN else {}


def _votes(hearing: Hearing, known: list[Profile], start: int, winner: str | None) -> Iterator[Vote]:
    spoken_of = winner
    for first, end in _sentences(hearing.words, start, min(len(hearing.words), start + REACH)):
        named = _sample(hearing, first, end, spoken_of, winner)
        sentence = {w.norm for w in hearing.words[first:end]}
        here = named or spoken_of
        if "other" not in sentence or not PAPERS.isdisjoint(sentence):
            spoken_of = here  # `the other one` is told of in passing, unless its paper is read
        beats = next((i for i in range(first, end) if hearing.words[i].norm in BEATS), None)
        if beats and winner:
            yield from _beaten(hearing, known, first, beats, end, winner)
        elif here and GUESSING.isdisjoint(sentence) and (named or READING.isdisjoint(sentence)):
            worth = (TOLD_HERE if named else CARRIED) * (1 if first - start < SOON else LATER)
            for at, k, weight in _products(hearing.words, first, end, known):
                denied = not DENIED.isdisjoint(w.norm for w in hearing.words[at - 3 : at])
                yield Vote(at, here, k, -weight * worth if denied else weight * worth)


def _beaten(hearing: Hearing, known: list[Profile], first: int, beats: int, end: int, winner: str) -> Iterator[Vote]:
    """`The Assam has beaten the Nilgiri`: what beats is the winner's, and of two what is beaten is the other's."""
    for at, k, weight in _products(hearing.words, first, beats, known):
        yield Vote(at, winner, k, weight)
    other = _others(hearing).get(winner)
    for at, k, weight in _products(hearing.words, beats, end, known) if other else ():
        yield Vote(at, other or "", k, weight)


def _others(hearing: Hearing) -> dict[str, str]:
    """The other of two samples."""
    ids = [s.id for s in hearing.sheet.samples]
    return {ids[0]: ids[1], ids[1]: ids[0]} if len(ids) == 2 else {}


def _sentences(words: list[Word], start: int, end: int) -> Iterator[tuple[int, int]]:
    first = start
    for i in range(start, end):
        if words[i].norm in ENDS or i - first >= LONGEST or i == end - 1:
            yield first, i + 1
            first = i + 1


def _sample(hearing: Hearing, first: int, end: int, before: str | None, winner: str | None) -> str | None:
    """The sample a sentence speaks of: named, the winner, or the other of two."""
    mentions = [m for m in hearing.mentions if first <= m.start < end]
    named = next((m.samples[0] for m in mentions if m.kind == "name" and len(m.samples) == 1), None)
    if named:
        return named
    norms = {w.norm for w in hearing.words[first:end]}
    others = _others(hearing)
    if not LOST.isdisjoint(norms):
        return others.get(winner or "")
    if not PICKED.isdisjoint(norms):
        return winner
    return others.get(before or "") if "other" in norms and any(m.kind == "other" for m in mentions) else None


def _products(words: list[Word], first: int, end: int, known: list[Profile]) -> Iterator[tuple[int, int, float]]:
    """The products a sentence speaks of, each once: by name, by what only it is told, by its price."""
    for k, profile in enumerate(known):
        for i in range(first, end):
            norm = words[i].norm
            if norm in profile.names or _sounds_like(words, i, profile):
                yield i, k, NAMED
                break
        else:
            yield from _signs(words, first, end, k, profile)


def _signs(words: list[Word], first: int, end: int, k: int, profile: Profile) -> Iterator[tuple[int, int, float]]:
    for i in range(first, end):
        if profile.price is not None and sum_of_money(words, i) == profile.price:
            yield i, k, PRICED
        if words[i - 1].norm in ARTICLES and words[i].norm in (
            CHEAP if profile.is_cheapest else DEAR if profile.is_dearest else ()
        ):
            yield i, k, PRICED
        elif sign_of(words[i]) in profile.signs:
            yield i, k, SIGNED


def _sounds_like(words: list[Word], i: int, profile: Profile) -> bool:
    """Whether a capital, and the word before it, is a name misprinted."""
    if words[i].tag not in ("NNP", "NNPS") or not i:
        return False
    heard = joined([words[i - 1].norm, words[i].norm])
    return any(likeness(heard, joined([name])) >= SOUNDS_LIKE for name in profile.names if len(name) > 4)
