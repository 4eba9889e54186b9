"""Which announced product is which sample, where nobody equates the two: told by riddles, prices and what is left.

After the verdict every sentence that speaks of one sample and of one product is a vote that they are the same; the
products are dealt to the samples in the one way for which clearly most speaks.
"""

from collections.abc import Iterator
from itertools import permutations

from notesmith.listening.announced import Candidate
from notesmith.listening.equating import Naming
from notesmith.listening.hearing import Hearing
from notesmith.listening.hints import Vote, find_votes

EQUATED = 9.0  # the weight of what was said outright: nothing outdoes it
ENOUGH, MARGIN = (
    0.85,
    0.8,
)  # the least weight of all votes (one hint carried on is no proof), and of the best way's lead
MOST = 5  # products; more cannot be dealt in all ways in short time


def name_by_votes(
    hearing: Hearing, candidates: list[Candidate], start: int, winner: str | None, first: list[Naming]
) -> list[Naming]:
    """The samples' products as the votes after word `start` have it, beside what has been named `first`."""
    if not candidates or len(candidates) > MOST:
        return []
    votes = [*_told(first, candidates), *find_votes(hearing, candidates, start, winner)]
    chosen = _dealt([s.id for s in hearing.sheet.samples], len(candidates), votes)
    return sorted(_namings(candidates, votes, chosen), key=lambda n: n.start)


def _told(first: list[Naming], candidates: list[Candidate]) -> Iterator[Vote]:
    """What was equated first of each sample."""
    for naming in {sample: n for n in reversed(first) for sample in n.samples}.values():
        spoken = set(naming.product.lower().replace(",", "").split())
        for k, candidate in enumerate(candidates):
            for sample in naming.samples if candidate.words & spoken else ():
                yield Vote(naming.start, sample, k, EQUATED)


def _namings(candidates: list[Candidate], votes: list[Vote], chosen: dict[str, int]) -> Iterator[Naming]:
    """Each sample's product, where the first vote for it stands; what is left is known with the last of the others."""
    firsts: dict[tuple[str, int], int] = {}
    for vote in sorted(votes, key=lambda v: v.at):
        if vote.weight > 0:
            firsts.setdefault((vote.sample, vote.candidate), vote.at)
    told = {sample: firsts[sample, k] for sample, k in chosen.items() if (sample, k) in firsts}
    last = max(told.values(), default=max((v.at for v in votes), default=0))
    for sample, k in chosen.items():
        start = told.get(sample, last)
        yield Naming(start, start + 1, (sample,), candidates[k].product, True, called=sample in told)


def _dealt(samples: list[str], count: int, votes: list[Vote]) -> dict[str, int]:
    """The best way of dealing the products to the samples, as far as no other way is nearly as good."""
    if sum(abs(v.weight) for v in votes) < ENOUGH:
        return {}
    ways = [dict(zip(samples, way, strict=True)) for way in permutations(range(count))]
    worth = [sum(v.weight for v in votes if way[v.sample] == v.candidate) for way in ways]
    most = max(worth)
    best = ways[worth.index(most)]
    rivals = {
        s: max((w for way, w in zip(ways, worth, strict=True) if way[s] != best[s]), default=0.0) for s in samples
    }
    return {sample: best[sample] for sample in samples if most - rivals[sample] >= MARGIN}
