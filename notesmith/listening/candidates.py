"""Products that everybody knows are on the table, only not in which cup: told in the opening, named again at the end.

Where no cup is called by its name at the end, the product that is named first after the verdict is the winner's
(`you have just put the Assam through`), and of two the other product is the other's.
"""

from notesmith.listening.equating import Naming
from notesmith.listening.hearing import Hearing, Preferred
from notesmith.listening.products import as_meant, known_words, phrase_end

OPENING = 0.25  # of the talk
SOON = 120  # words from the verdict to the first product
ANSWERS = frozenset("says said winner champion congratulations".split())
Stretch = tuple[int, int]


def name_by_verdict(hearing: Hearing) -> list[Naming]:
    """The winner's product, and where there are two samples the other's."""
    verdicts = [p for p in hearing.preferences if p.scope == "overall"]
    if not verdicts:
        return []
    known = known_words(hearing)
    told = _phrases(hearing, 0, int(len(hearing.words) * OPENING), known)
    candidates = {key: place for place in reversed(told) if (key := _key(hearing, place, known))}
    for verdict in reversed(verdicts):
        found = _first_named(hearing, verdict, candidates, known)
        if found:
            return [_naming(hearing, found, verdict.preferred), *_other(hearing, verdict, found, candidates, known)]
    return []


def _first_named(
    hearing: Hearing, verdict: Preferred, candidates: dict[frozenset[str], Stretch], known: bytearray
) -> Stretch | None:
    """The candidate named first in the answer to a verdict."""
    end = min(len(hearing.words), verdict.end + SOON)
    answer = next((i for i in range(verdict.end, end) if hearing.words[i].norm in ANSWERS), end)
    return next((p for p in _phrases(hearing, answer, end, known) if _key(hearing, p, known) in candidates), None)


def _other(
    hearing: Hearing, verdict: Preferred, found: Stretch, candidates: dict[frozenset[str], Stretch], known: bytearray
) -> list[Naming]:
    """Of two samples, the one not preferred is the product told beside the winner's that is named again after it."""
    others = [s.id for s in hearing.sheet.samples if s.id != verdict.preferred]
    if len(others) != 1:
        return []
    winner = _key(hearing, found, known)
    again = [
        p for p in _phrases(hearing, found[1], len(hearing.words), known)
        if (key := _key(hearing, p, known)) in candidates and key.isdisjoint(winner)
    ]  # fmt: skip
    near = min(again, key=lambda p: abs(candidates[_key(hearing, p, known)][0] - candidates[winner][0]), default=None)
    return [_naming(hearing, near, others[0])] if near else []


def _naming(hearing: Hearing, place: Stretch, sample: str) -> Naming:
    return Naming(*place, (sample,), as_meant(hearing, *place), True)


def _phrases(hearing: Hearing, start: int, end: int, known: bytearray) -> list[Stretch]:
    """The phrases with a sure name, or a product of the lexicon, in them."""
    found, i = [], start
    while i < end:
        stop = phrase_end(hearing.words, i, end, known)
        if any(known[i:stop]):
            found.append((i, stop))
        i = max(stop, i + 1)
    return found


def _key(hearing: Hearing, place: Stretch, known: bytearray) -> frozenset[str]:
    return frozenset(hearing.words[i].norm for i in range(*place) if known[i] and len(hearing.words[i].norm) > 2)
