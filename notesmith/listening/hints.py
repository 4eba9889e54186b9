"""Sentences that hint which product a sample is: by its name, by what was told of it alone before, or by its price.

A guess is no hint, but `I was right` and `the other way round` make it one.
"""

from collections.abc import Iterator
from dataclasses import dataclass
from itertools import pairwise
from typing import NamedTuple

from notesmith.listening.announced import Candidate
from notesmith.listening.calls import COPULAS, with_misprinted
from notesmith.listening.equating import BEST, GUESSES, PAPERS
from notesmith.listening.hearing import Hearing, Mention
from notesmith.listening.profiles import Profile, profiles, sign_of, sum_of_money
from notesmith.listening.sounding import joined, likeness

REACH = 300  # words from the reveal's start in which a product is told
PICKED = BEST | frozenset("won wins picked chose chosen preferred crowned".split())
LOST = frozenset("loser lost loses".split())
SECOND = frozenset([("is", "second"), ("'s", "second"), ("was", "second"), ("comes", "second"), ("came", "second")])
BEATS = frozenset("beat beats beaten".split())
GUESSING = GUESSES | frozenset("think if whether bet hope money".split())
OWNERS = frozenset("the my your".split())
DENIED = frozenset("not n't never".split())
READING = frozenset("read reads reading".split())  # a label read out is any product's
RIGHT = frozenset(
    [("was", "right"), ("were", "right"), ("got", "it"), ("knew", "it"), ("called", "it"), ("one", "right")]
)
WRONG = frozenset([("was", "wrong"), ("were", "wrong"), ("wrong", "way"), ("other", "way"), ("wrong", "round")])
LOOKS = PAPERS | frozenset(
    "hold holds holding under underneath sticker stickers says wrote written writes puts foot bottom look lift turn "
    "turns peel reveal riddle clue".split()
)
ENDS = frozenset(". ? ! : ;".split())
LONG = 9  # words after which a sentence without a full stop ends with its thought
NEAR = 5  # words from a sample to its product
NAMED, SIGNED, PRICED = 2.0, 1.0, 1.5
SOON, LATER = 120, 0.5  # words from the reveal's start after which a vote weighs less: labels are read out then
TOLD_HERE, CARRIED, GUESSED = 1.0, 0.6, 0.5  # where a vote's sentence names the sample, an earlier one did, or a guess
SOUNDS_LIKE = 0.78
Hit = tuple[int, int, float]  # a word, the product it speaks of, and how surely


class Vote(NamedTuple):
    """At word `at` the sample is told to be the product, by so much."""

    at: int
    sample: str
    candidate: int
    weight: float


def find_votes(hearing: Hearing, candidates: list[Candidate], start: int, winner: str | None) -> list[Vote]:
    """What is hinted after word `start`, where the reveal begins."""
    calls = [m for m in hearing.mentions if m.kind == "name" and len(m.samples) == 1]
    calls = with_misprinted(hearing, calls, [start], REACH)
    reader = _Reader(hearing, profiles(hearing, candidates, start), calls, winner)
    votes = list(reader.votes(start, min(len(hearing.words), start + REACH)))
    return votes or list(reader.confirmed(start, min(len(hearing.words), start + REACH)))


@dataclass(frozen=True, slots=True)
class _Reader:
    """Reads sentences for the sample and the product they speak of."""

    hearing: Hearing
    profiles: list[Profile]
    calls: list[Mention]
    winner: str | None

    def votes(self, start: int, stop: int) -> Iterator[Vote]:
        """The votes in the words from `start` to `stop`; who is spoken of first is the winner."""
        spoken_of = self.winner
        norms = self.norms(start, stop)
        bare = ENDS.isdisjoint(norms)
        least = NAMED if LOOKS.isdisjoint(norms) else 0.0  # where nothing is looked at, only a name is carried on
        for first, end in self.sentences(start, stop):
            here = self.sample(first, end, spoken_of)
            worth = (TOLD_HERE if here else CARRIED) * (1 if first - start < SOON else LATER)
            votes = self.sentence(first, end, here, spoken_of)
            for vote in votes:
                if self.equates(vote) if bare else here or abs(vote.weight) >= least:
                    yield vote._replace(weight=vote.weight * worth)
            norms = self.norms(first, end)
            if here and ("other" not in norms or not PAPERS.isdisjoint(norms)):
                spoken_of = here  # `the other one` is told of in passing, unless its paper is read

    def equates(self, vote: Vote) -> bool:
        """Whether the sample's name and `is` stand right before: all that can be trusted where no full stop is."""
        ends = (m.end for m in self.calls if vote.sample in m.samples and 0 < vote.at - m.end <= NEAR)
        return any(not COPULAS.isdisjoint(self.norms(end, vote.at)) for end in ends)

    def sentence(self, first: int, end: int, here: str | None, before: str | None) -> Iterator[Vote]:
        """The votes of one sentence."""
        norms, hits = self.norms(first, end), self.products(first, end)
        named = list(dict.fromkeys(m.samples[0] for m in self.calls if first <= m.start < end))
        beats = next((i for i in range(first, end) if self.hearing.words[i].norm in BEATS), None)
        if beats and self.winner:
            yield from self.beaten(hits, beats, self.winner)
        elif "?" in norms or not GUESSING.isdisjoint(norms) or not (here or READING.isdisjoint(norms)):
            return
        elif len(named) > 1 and len(named) == len({k for _, k, _ in hits}):
            yield from self.in_order(hits, named)
        elif here or before:
            yield from (self.vote(hit, here or before or "") for hit in hits)

    def vote(self, hit: Hit, sample: str) -> Vote:
        """A vote for the product, or against it where it is denied."""
        at, k, weight = hit
        denied = not DENIED.isdisjoint(self.norms(at - 3, at))
        return Vote(at, sample, k, -weight if denied else weight)

    def beaten(self, hits: list[Hit], beats: int, winner: str) -> Iterator[Vote]:
        """`The Assam has beaten the Nilgiri`: what beats is the winner's, and of two what is beaten is the other's."""
        for at, k, weight in hits:
            sample = winner if at < beats else self.other(winner)
            if sample:
                yield Vote(at, sample, k, weight)

    def in_order(self, hits: list[Hit], named: list[str]) -> Iterator[Vote]:
        """As many products as samples in one sentence: the first is the first's, and so on."""
        order = list(dict.fromkeys(k for _, k, _ in sorted(hits)))
        return (Vote(at, named[order.index(k)], k, weight) for at, k, weight in hits)

    def confirmed(self, start: int, stop: int) -> Iterator[Vote]:
        """The guesses made before the reveal, if somebody is told to have been right, or, of two, wrong."""
        said = set(pairwise(w.norm for w in self.hearing.words[start:stop]))
        right, wrong = bool(said & RIGHT), bool(said & WRONG)
        if right == wrong:
            return
        at = next(i for i in range(start, stop) if self.pair(i) in (RIGHT if right else WRONG))
        for first, end in self.sentences(start // 2, start):
            sample, hits = self.sample(first, end, None), self.products(first, end)
            if sample and len({k for _, k, _ in hits}) == 1 and not GUESSING.isdisjoint(self.norms(first, end)):
                yield Vote(at, sample, hits[0][1], GUESSED * hits[0][2] * (1 if right else -1))

    def pair(self, i: int) -> tuple[str, str]:
        """A word and the next one."""
        return self.hearing.words[i].norm, self.hearing.words[min(i + 1, len(self.hearing.words) - 1)].norm

    def norms(self, first: int, end: int) -> set[str]:
        """The words of a stretch."""
        return {w.norm for w in self.hearing.words[max(0, first) : end]}

    def other(self, sample: str | None) -> str | None:
        """The other of two samples."""
        ids = [s.id for s in self.hearing.sheet.samples]
        return ids[1 - ids.index(sample)] if len(ids) == 2 and sample in ids else None

    def sentences(self, start: int, end: int) -> Iterator[tuple[int, int]]:
        """The sentences of a stretch; where no full stop comes, pieces of it."""
        first = start
        bare = ENDS.isdisjoint(self.norms(start, end))
        for i in range(start, end):
            if self.hearing.words[i].norm in ENDS or i == end - 1 or (bare and i - first >= LONG and self.breaks(i)):
                yield first, i + 1
                first = i + 1

    def breaks(self, i: int) -> bool:
        """Whether a new thought begins after a word."""
        return self.hearing.clause_of[i] != self.hearing.clause_of[i + 1]

    def sample(self, first: int, end: int, before: str | None) -> str | None:
        """The sample a sentence speaks of: named, the winner, or the other of two."""
        named = next((m.samples[0] for m in self.calls if first <= m.start < end), None)
        norms = self.norms(first, end)
        if named:
            return named
        if not LOST.isdisjoint(norms) or not SECOND.isdisjoint(map(self.pair, range(first, end))):
            return self.other(self.winner)
        if not PICKED.isdisjoint(norms):
            return self.winner
        return self.other(before) if "other" in norms and self.points_at_other(first, end) else None

    def points_at_other(self, first: int, end: int) -> bool:
        """Whether `the other` of a sentence is a sample."""
        return any(m.kind == "other" and first <= m.start < end for m in self.hearing.mentions)

    def products(self, first: int, end: int) -> list[Hit]:
        """The products a sentence speaks of: by name, else by what only they are told, or by price."""
        found: list[Hit] = []
        for k, profile in enumerate(self.profiles):
            named = next((i for i in range(first, end) if self.names(i, profile)), None)
            found += [(named, k, NAMED)] if named is not None else self.signs(first, end, k)
        return found

    def signs(self, first: int, end: int, k: int) -> Iterator[Hit]:
        """Where a sentence says what was told of one product alone, or its price."""
        words, profile = self.hearing.words, self.profiles[k]
        for i in range(first, end):
            if sign_of(words[i]) in profile.signs:
                yield i, k, SIGNED
            elif (words[i].norm in profile.standing and words[i - 1].norm in OWNERS) or self.costs(i, profile):
                yield i, k, PRICED

    def costs(self, i: int, profile: Profile) -> bool:
        """Whether a word begins the sum that the product costs."""
        return profile.price is not None and sum_of_money(self.hearing.words, i) == profile.price

    def names(self, i: int, profile: Profile) -> bool:
        """Whether a word is one of the product's, or, with the word before it, one misprinted."""
        word = self.hearing.words[i]
        if word.norm in profile.names or not i or word.tag not in ("NNP", "NNPS"):
            return word.norm in profile.names
        heard = joined([self.hearing.words[i - 1].norm, word.norm])
        return any(likeness(heard, joined([name])) >= SOUNDS_LIKE for name in profile.names if len(name) > 4)
