"""In which preparation was it perceived? That of the last perception, unless something speaks for another or for none.

The preparations are told before anything is tasted, dry leaf is looked at in none, and the first of the sheet is seldom
named at all: so what was named last is a poor guide. Every sign of a turn is weighed instead.
"""

from bisect import bisect_left, bisect_right
from collections.abc import Iterator
from dataclasses import replace

import numpy as np
from numpy.typing import NDArray

from notesmith.listening.hearing import Hearing, Perception
from notesmith.listening.names import tokens_of
from notesmith.listening.preparing_weights import WEIGHTS
from notesmith.listening.ways import Sign, Ways

DRY = ("dry", "leaf", "leaves", "bag", "tin", "beans", "nose", "look", "looks", "colour")
CUES = ("now", "next", "okay", "right", "so", "then", "back")
JUST, FAR, LATELY, GAPS = 12, 60, 25, (8, 32, 100)  # words


def find_preparations(hearing: Hearing) -> None:
    """Decide for every perception; which preparation the last one was in is carried along as a belief."""
    ids = [None, *(preparation.id for preparation in hearing.sheet.preparations)]
    if len(ids) == 1:
        return
    preparing, belief, since, decided = Preparing(hearing), np.eye(1, len(ids))[0], 0, {}
    for p in sorted(hearing.perceptions, key=lambda p: p.description.start):
        table = np.exp(preparing.table(p, since))
        belief = belief @ (table / table.sum(axis=1, keepdims=True))
        since = p.description.start + 1
        decided[id(p)] = ids[int(belief.argmax())]
    hearing.perceptions = [replace(p, preparation=decided[id(p)]) for p in hearing.perceptions]


class Preparing:
    """Weighs the preparations that a perception may have been made in against that of the last one.

    Slot 0 is none; the others are the preparations of the sheet in its order.
    """

    def __init__(self, hearing: Hearing) -> None:
        self.hearing, self.size = hearing, len(hearing.sheet.preparations)
        self.named = list(named_preparations(hearing))
        self.places = [place for place, _ in self.named]
        self.first_named = {slot: place for place, slot in reversed(self.named)}
        self.ways = Ways(turns, self.size, WEIGHTS)
        self.begins, self.kinds = [s.start for s in hearing.sections], [s.kind for s in hearing.sections]

    def table(self, p: Perception, since: int) -> NDArray[np.float64]:
        """What each slot is worth for a perception; a row for every slot of the last one, before the word `since`."""
        sums = np.zeros(self.size + 1)
        for name, slot in self.standing(p, since):
            sums[slot] += WEIGHTS.get(name, 0.0)
        return sums + self.ways.worth(tuple(self.marks(p, since)))

    def standing(self, p: Perception, since: int) -> Iterator[Sign]:
        """What speaks for a slot whichever the last one was."""
        at = p.description.start
        yield from self._none(p, since)
        yield from self._by_names(at, since)
        for slot in range(1, self.size + 1):
            if self.first_named.get(slot, at + 1) > at:
                yield "never named", slot
            if slot > 1:
                yield f"later, {at * 5 // len(self.hearing.words)} fifths", slot
        yield ("first" if self.size > 1 else "only"), 1
        if self.size > 1:
            yield "last of the sheet", self.size

    def _none(self, p: Perception, since: int) -> Iterator[Sign]:
        at = p.description.start
        yield "none" if self.size > 1 else "none beside the only", 0
        yield f"none, {p.facet}", 0
        yield f"none, {p.voice}", 0
        yield f"none, in {self._section(at)}", 0
        yield f"none, {min(4, at * 10 // len(self.hearing.words))} tenths", 0
        lately = self.hearing.meant[max(since, at - LATELY) : at]
        yield from ((f"none, “{word}”", 0) for word in DRY if word in lately)

    def _by_names(self, at: int, since: int) -> Iterator[Sign]:
        here = self.named[bisect_left(self.places, since) : bisect_right(self.places, at + 3)]
        past = bisect_right(self.places, at)
        yield from (("named next", slot) for _, slot in self.named[past : past + 1])
        if not here:
            yield from (("named last", slot) for _, slot in self.named[max(0, past - 1) : past])
            return
        place, slot = here[-1]
        if len({slot for _, slot in here}) > 1:
            yield from (("last of several", slot), ("first of several", here[0][1]))
        else:
            yield from (("named since", slot), (f"named since, in {self._section(place)}", slot))
        if at - place <= JUST:
            yield "just named", slot
        if at - place > FAR:
            yield "named far away", slot

    def marks(self, p: Perception, since: int) -> Iterator[str]:
        """What makes it likelier or less likely that another preparation was turned to."""
        at = p.description.start
        yield f"gap {bisect_right(GAPS, at - since)}"
        yield f"in {self._section(at)}"
        if self._section(at) != self._section(max(0, since - 1)):
            yield "new section"
        yield from (f"“{cue}”" for cue in CUES if cue in self.hearing.meant[since:at])

    def _section(self, at: int) -> str:
        k = bisect_right(self.begins, at)
        return self.kinds[k - 1] if k else "no section"


def turns(last: int, size: int) -> Iterator[Sign]:
    """The ways to go on from a slot.

    >>> list(turns(0, 2)), list(turns(2, 2))
    ([('stay with none', 0), ('begin', 1)], [('stay', 2), ('turn to none', 0), ('turn to the one before', 1)])
    """
    if not last:
        yield from (("stay with none", 0), ("begin", 1))
        return
    yield from (("stay", last), ("turn to none", 0))
    if last < size:
        yield "turn to the next", last + 1
    if last > 1:
        yield "turn to the one before", last - 1


def named_preparations(hearing: Hearing) -> Iterator[tuple[int, int]]:
    """Where preparations are named: the word, and the slot; of two names the longer."""
    names = {
        tokens_of(text): slot
        for slot, preparation in enumerate(hearing.sheet.preparations, 1)
        for text in (preparation.id, *preparation.aliases)
    }
    end = 0
    for i in hearing.places({name[0] for name in names if name}):
        fitting = [name for name in names if name and name == tuple(hearing.meant[i : i + len(name)])]
        if fitting and i >= end:
            longest = max(fitting, key=len)
            end = i + len(longest)
            yield i, names[longest]
