"""What does each blind sample turn out to be?

Identities are made known in a roll call: after a paper is opened or a cup turned over, sample after sample is equated
with a product. The roll call is where most samples are so named one soon after another; each is noted once.
"""

from notesmith.listening.candidates import name_by_verdict
from notesmith.listening.equating import BEST, COPULAS, PAPERS, Naming, find_namings
from notesmith.listening.hearing import Grounds, Hearing, Revealed, Word
from notesmith.listening.products import known_words

EARLIEST = 0.4  # of the talk: what is told before is a guess or an introduction
ROLL = 200  # words in which the samples are called one after another
SURE = 2.5  # a name known after an opening, or names of two samples
SURE_ALONE = 1.6  # the one sample of a sheet
NEAR = 60  # words from opening a paper to the first name
OPENINGS = frozenset(
    "bring brought open opened opening read got get give given hand handed turn turned turning over see lift "
    "lifted lifting pull pulled take taking peel off unwrap flip flipped have says written look".split()
)
TURNS = frozenset("reveal revealed reveals unveil unmask unmasked unwrapping envelope".split())
MAY_OPEN = PAPERS | BEST | TURNS


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
    known = known_words(hearing, first)
    openings = [i for i in _openings(hearing.words) if i >= first]
    roll = _best_roll(hearing, find_namings(hearing, known, first, openings, ROLL), openings)
    if not roll or _is_near(openings, roll[0].start):
        return roll
    openings.append(max(first, roll[0].start - NEAR))  # nothing was opened: the names themselves open it
    return _best_roll(hearing, find_namings(hearing, known, first, openings, ROLL), openings)


def _best_roll(hearing: Hearing, namings: list[Naming], openings: list[int]) -> list[Naming]:
    def worth(first: Naming) -> float:
        roll = [n for n in namings if first.start <= n.start < first.start + 1.5 * ROLL]
        called = {s: 1.0 if n.known and n.called else 0.4 for n in reversed(roll) for s in n.samples}
        opened = _is_near(openings, first.start)
        return sum(called.values()) + (2 if opened else 0.8 * first.start / len(hearing.words))

    best = max(namings, key=worth, default=None)
    if not best or worth(best) < (SURE if len(hearing.sheet.samples) > 1 else SURE_ALONE):
        return []
    till = best.start + ROLL
    return [n for n in namings if best.start <= n.start < (till + ROLL if n.known else till)]


def _is_near(openings: list[int], i: int) -> bool:
    return any(0 <= i - opening <= NEAR for opening in openings)


def _openings(words: list[Word]) -> list[int]:
    """Where a paper is read, a cup turned over, the word reveal said, or the winner told."""
    return [i for i, w in enumerate(words) if w.norm in MAY_OPEN and _opens(words, i)]


def _opens(words: list[Word], i: int) -> bool:
    if words[i].norm in BEST:
        return i + 1 < len(words) and words[i + 1].norm in COPULAS
    around = (w.norm for w in words[max(0, i - 6) : i + 5])
    return words[i].norm in TURNS or not OPENINGS.isdisjoint(around)
