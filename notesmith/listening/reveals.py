"""What does each blind sample turn out to be?

Identities are made known in a roll call: after a paper is opened or a cup turned over, sample after sample is equated
with a product. The roll call is where most samples are so named one soon after another; each is noted once.
"""

from dataclasses import replace
from itertools import pairwise

from notesmith.listening.announced import Candidate, find_announced, find_named_later
from notesmith.listening.calls import COPULAS, find_calls, with_misprinted
from notesmith.listening.candidates import name_by_verdict
from notesmith.listening.equating import BEST, PAPERS, Naming, find_namings
from notesmith.listening.hearing import Grounds, Hearing, Revealed, Word
from notesmith.listening.mishearing import meant_product
from notesmith.listening.products import SENTENCE_ENDS, known_words
from notesmith.listening.riddles import name_by_votes
from notesmith.listening.slips import soon_after
from notesmith.listening.winners import find_winner

EARLIEST = 0.4  # of the talk: what is told before is a guess or an introduction
ROLL = 200  # words in which the samples are called one after another
SURE = 2.5  # a name known after an opening, or names of two samples
SURE_ALONE = 1.6  # the one sample of a sheet
NEAR = 60  # words from opening a paper to the first name
OPENINGS = frozenset(
    "bring brought open opened opening read got get give given hand handed turn turned turning over see lift "
    "lifted lifting pull pulled take taking peel off unwrap flip flipped have says written look".split()
)
TURNS = frozenset("riddle clue reveal revealed reveals unveil unmask unmasked unwrapping envelope".split())
READ = 25  # words from a paper to `it says`
LEADING = frozenset(". , the ! so right now then and".split())
OPENERS = PAPERS | TURNS
MAY_OPEN = PAPERS | BEST | TURNS


def find_reveals(hearing: Hearing) -> None:
    """Note where each blind sample's identity is first made known."""
    sealed = [s.id for s in hearing.sheet.samples if hearing.sheet.blind or s.product is None]
    if not hearing.sheet.blind and len(sealed) == len(hearing.sheet.samples):
        sealed = []
    hearing.reveals = []
    for naming in _surest(_made_known(hearing)) if sealed else ():
        left = tuple(sealed) if len(sealed) == 1 else ()
        for sample in naming.samples or left:
            if sample in sealed:
                sealed.remove(sample)
                hearing.reveals.append(_revealed(hearing, naming, sample))


def _surest(namings: list[Naming]) -> list[Naming]:
    """The namings without words that are no sure name, where that sample has a sure one too, or no sample has."""
    sure = {s for n in namings if n.known for s in n.samples}
    return [n for n in namings if n.known or (sure and not sure.issuperset(n.samples))]


def _made_known(hearing: Hearing) -> list[Naming]:
    """The roll call, and for the samples it does not call what riddles and the verdict's answer tell."""
    roll = _roll_call(hearing)
    called = [n for n in roll if n.called and n.known]
    uncalled = {s.id for s in hearing.sheet.samples}.difference(*(n.samples for n in called))
    if not uncalled or (len(uncalled) == 1 and any(n.known and not n.samples for n in roll)):
        return roll
    known = known_words(hearing)
    announced = find_announced(hearing, known)
    told = _by_riddles(hearing, announced, known, called)
    if told:
        return sorted(_in_full(called, told), key=lambda n: n.start)
    return roll if called or announced else name_by_verdict(hearing) or roll


def _in_full(called: list[Naming], told: list[Naming]) -> list[Naming]:
    """What was called, by the announced product's name where only something told of it was called (`the Peruvian`)."""
    names = {n.samples: n.product for n in told}
    kept = [replace(n, product=_fuller(n.product, names.get(n.samples, n.product))) for n in called]
    return [*kept, *(n for n in told if n.samples not in {k.samples for k in kept})]


def _fuller(called: str, told: str) -> str:
    """The announced name, unless more of it or beside it was called."""
    words, full = set(called.lower().split()), set(told.lower().split())
    return called if words & full and words - full else told


def _by_riddles(hearing: Hearing, announced: list[Candidate], known: bytearray, called: list[Naming]) -> list[Naming]:
    """What the products on the table turn out to be, from where a paper is opened after the verdict."""
    earliest = int(len(hearing.words) * EARLIEST)
    openings = [i for i in hearing.places(OPENERS) if i >= earliest]
    start, winner = find_winner(hearing, openings) or (earliest, None)
    opened = next((i for i in openings if i >= start), start)
    if announced:
        return name_by_votes(hearing, announced, opened, winner, called)
    later = find_named_later(hearing, known, opened)
    told = name_by_votes(hearing, later, opened, winner, called)
    return told if all(n.called for n in told) else []


def _revealed(hearing: Hearing, naming: Naming, sample: str) -> Revealed:
    grounds = (Grounds("sample is product", naming.start, naming.end),)
    product = meant_product(hearing, naming.product)
    return Revealed(naming.start, naming.end, sample, product, 0.8 if naming.known else 0.55, grounds)


def _roll_call(hearing: Hearing) -> list[Naming]:
    """The names given from where most samples are named one soon after another, best after a paper is opened."""
    first = int(len(hearing.words) * EARLIEST)
    known = known_words(hearing, first)
    openings = [i for i in hearing.places(MAY_OPEN) if i >= first and _opens(hearing.words, i)]
    calls = find_calls(hearing, first, openings, ROLL)
    roll = _best_roll(hearing, find_namings(hearing, known, calls, openings, ROLL), openings)
    if not roll or soon_after(openings, roll[0].start, NEAR):
        return roll
    opening = max(first, roll[0].start - NEAR)  # nothing was opened: the names themselves open it
    calls = with_misprinted(hearing, calls, [opening], ROLL)
    openings = sorted([*openings, opening])
    return _best_roll(hearing, find_namings(hearing, known, calls, openings, ROLL), openings)


def _best_roll(hearing: Hearing, namings: list[Naming], openings: list[int]) -> list[Naming]:
    def worth(first: Naming) -> float:
        roll = [n for n in namings if first.start <= n.start < first.start + 1.5 * ROLL]
        called = {s: 1.0 if n.known and n.called else 0.4 for n in reversed(roll) for s in n.samples}
        opened = soon_after(openings, first.start, NEAR)
        return sum(called.values()) + (2 if opened else 0.8 * first.start / len(hearing.words))

    best = max(namings, key=worth, default=None)
    if not best or worth(best) < (SURE if len(hearing.sheet.samples) > 1 else SURE_ALONE):
        return []
    till = best.start + ROLL
    return [n for n in namings if best.start <= n.start < (till + ROLL if n.known else till)]


def _opens(words: list[Word], i: int) -> bool:
    """Whether a paper is read, a cup turned over, the word reveal said, or the winner told."""
    if words[i].norm in BEST:
        return i + 1 < len(words) and words[i + 1].norm in COPULAS
    around = (w.norm for w in words[max(0, i - 6) : i + 5])
    alone = words[i + 1 : i + 2] and words[i + 1].norm in SENTENCE_ENDS and words[i - 1].norm in LEADING
    reads = any(a.norm == "it" and b.norm == "says" for a, b in pairwise(words[i : i + READ]))
    return words[i].norm in TURNS or bool(alone) or reads or not OPENINGS.isdisjoint(around)
