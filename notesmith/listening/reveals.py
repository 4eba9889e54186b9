"""What does each blind sample turn out to be?

Identities are made known in a roll call: after a paper is opened or a cup turned over, sample after sample is equated
with a product. The roll call is where most samples are so named one soon after another; each is noted once.
"""

from notesmith.listening.candidates import name_by_verdict
from notesmith.listening.equating import BEST, COPULAS, PAPERS, Naming, find_namings
from notesmith.listening.hearing import Grounds, Hearing, Revealed, Word

EARLIEST = 0.4  # of the talk: what is told before is a guess or an introduction
ROLL = 200  # words in which the samples are called one after another
SURE = 2.5  # a name known after an opening, or names of two samples
NEAR = 60  # words from opening a paper to the first name
OPENINGS = frozenset(
    "bring brought open opened opening read got get give given hand handed turn turned turning over see lift "
    "lifted lifting pull pulled take taking peel off unwrap flip flipped have says written look".split()
)
TURNS = frozenset("reveal revealed reveals unveil unmask unmasked unwrapping envelope".split())


def find_reveals(hearing: Hearing) -> None:
    """Note where each blind sample's identity is first made known."""
    sealed = [s.id for s in hearing.sheet.samples if hearing.sheet.blind or s.product is None]
    if not hearing.sheet.blind and len(sealed) == len(hearing.sheet.samples):
        sealed = []
    hearing.reveals = []
    for naming in _made_known(hearing) if sealed else ():
        left = tuple(sealed) if len(sealed) == 1 else ()
        for sample in naming.samples or left:
            if sample in sealed:
                sealed.remove(sample)
                hearing.reveals.append(_revealed(naming, sample))


def _made_known(hearing: Hearing) -> list[Naming]:
    """The roll call; where it calls no sample by its name, what the verdict's answer tells."""
    roll = _roll_call(hearing)
    return roll if any(n.called and n.known for n in roll) else name_by_verdict(hearing) or roll


def _revealed(naming: Naming, sample: str) -> Revealed:
    grounds = (Grounds("sample is product", naming.start, naming.end),)
    return Revealed(naming.start, naming.end, sample, naming.product, 0.8 if naming.known else 0.55, grounds)


def _roll_call(hearing: Hearing) -> list[Naming]:
    """The names given from where most samples are named one soon after another, best after a paper is opened."""
    first = int(len(hearing.words) * EARLIEST)
    openings = [i for i in _openings(hearing.words) if i >= first]
    namings = find_namings(hearing, first, openings, ROLL)

    def opened(at: int) -> bool:
        return any(0 <= at - o <= NEAR for o in openings)

    def worth(first: Naming) -> float:
        roll = [n for n in namings if first.start <= n.start < first.start + 1.5 * ROLL]
        called = {s: 1.0 if n.known and n.called else 0.4 for n in reversed(roll) for s in n.samples}
        return sum(called.values()) + (2 if opened(first.start) else 0.8 * first.start / len(hearing.words))

    best = max(namings, key=worth, default=None)
    if not best or worth(best) < (SURE if len(hearing.sheet.samples) > 1 else 1.6):
        return []
    return [
        n for n in namings if best.start <= n.start < best.start + 2 * ROLL and (n.known or n.start < best.start + ROLL)
    ]


def _openings(words: list[Word]) -> list[int]:
    """Where a paper is read, a cup turned over, or the word reveal said."""
    return [
        i for i, w in enumerate(words)
        if w.norm in TURNS
        or (w.norm in BEST and words[min(i + 1, len(words) - 1)].norm in COPULAS)
        or (w.norm in PAPERS and not OPENINGS.isdisjoint(x.norm for x in words[max(0, i - 6) : i + 5]))
    ]  # fmt: skip
