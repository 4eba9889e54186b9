"""What does each blind sample turn out to be?

Identities are made known in a roll call: after a paper is opened or a cup turned over, sample after sample is equated
with a product. The roll call is where most samples are so named one soon after another; each is noted once.
"""

from collections.abc import Iterator
from dataclasses import dataclass

from notesmith.listening.hearing import Grounds, Hearing, Mention, Revealed, Word
from notesmith.listening.names import CARRIERS
from notesmith.listening.vocabulary import FILLERS, GRADERS, LIKING, NEGATORS, NOUNS

EARLIEST = 0.4  # of the talk: what is told before is a guess or an introduction
REACH = 22  # words after a sample in which its product is named
ROLL = 200  # words in which the samples are called one after another
NEAR = 60  # words from opening a paper to the first name
PAPERS = frozenset(
    "slip slips envelope envelopes paper papers list card cards sheet key answers labels label foil sock socks "
    "sleeve sleeves wrapping wrappers tape bottoms clipboard dockets cover covers".split()
)
OPENINGS = frozenset(
    "bring brought open opened opening read got get give given hand handed turn turned turning over see lift "
    "lifted lifting pull pulled take taking peel off unwrap flip flipped have says written look".split()
)
TURNS = frozenset("reveal revealed reveals unveil unmask unmasked unwrapping envelope".split())
COPULAS = frozenset("is 's was are were 're be".split())
SORTS = frozenset(["product", "origin", "cultivar"])
STOPS = frozenset("i we he she they you but because so well which who if when where there ? plucked picked".split())
NO_NAME = (
    LIKING
    | GRADERS
    | FILLERS
    | frozenset(
        "june july january february march april may august september october november december one ones it that this "
        "thing things cup cups glass winner loser paper list name price prizes prize surprise surprises final answer "
        "ha hm hmm yep yeah yes no okay ok right god man mate love please sorry lot way side year month place tea "
        "half coffee wine pound pounds euro euros dollar dollars quid rand bottle bag tin packet guess envelope "
        "idea".split()
    )
)


BREAKS = STOPS | frozenset(", . ! and".split())
GUESSES = frozenset("maybe could might guess guessed probably reckon perhaps expected thought bet would should".split())
BESIDE = (
    frozenset(", : . the it says said um uh so oh and actually one in a your my of winner".split())
    | COPULAS
    | CARRIERS
    | PAPERS
)


@dataclass(frozen=True, slots=True)
class Naming:
    """A product named for some samples: the words from `start` to `end`, and how surely it is a name."""

    start: int
    end: int
    samples: tuple[str, ...]
    product: str
    known: bool  # has a proper name or a product of the lexicon in it


def find_reveals(hearing: Hearing) -> None:
    """Note where each blind sample's identity is first made known."""
    sealed = [s.id for s in hearing.sheet.samples if hearing.sheet.blind or s.product is None]
    if not hearing.sheet.blind and len(sealed) == len(hearing.sheet.samples):
        sealed = []
    hearing.reveals = []
    for naming in _roll_call(hearing, sorted(_namings(hearing), key=lambda n: n.start)) if sealed else ():
        for sample in naming.samples:
            if sample in sealed:
                sealed.remove(sample)
                hearing.reveals.append(_revealed(naming, sample))


def _revealed(naming: Naming, sample: str) -> Revealed:
    grounds = (Grounds("sample is product", naming.start, naming.end),)
    return Revealed(naming.start, naming.end, sample, naming.product, 0.8 if naming.known else 0.55, grounds)


def _roll_call(hearing: Hearing, namings: list[Naming]) -> list[Naming]:
    """The names given from where most samples are named one soon after another, best after a paper is opened."""
    openings = _openings(hearing.words)

    def opened(at: int) -> bool:
        return any(0 <= at - o <= NEAR for o in openings)

    def worth(first: Naming) -> float:
        roll = [n for n in namings if first.start <= n.start < first.start + ROLL]
        called = {s: 1.0 if n.known else 0.4 for n in reversed(roll) for s in n.samples}
        return sum(called.values()) + (2 if opened(first.start) else 0.8 * first.start / len(hearing.words))

    best = max(namings, key=worth, default=None)
    if not best or worth(best) < 1.6:
        return []
    return [
        n for n in namings if best.start <= n.start < best.start + 2 * ROLL and (n.known or n.start < best.start + ROLL)
    ]


def _openings(words: list[Word]) -> list[int]:
    """Where a paper is read, a cup turned over, or the word reveal said."""
    return [
        i for i, w in enumerate(words)
        if w.norm in TURNS
        or (w.norm in PAPERS and not OPENINGS.isdisjoint(x.norm for x in words[max(0, i - 6) : i + 5]))
    ]  # fmt: skip


def _namings(hearing: Hearing) -> Iterator[Naming]:
    """Names of products given to samples late in the talk, in order."""
    known, first = _known_words(hearing), int(len(hearing.words) * EARLIEST)
    mentions = [m for m in hearing.mentions if m.start >= first and m.kind in ("name", "ordinal")]
    for k in range(len(mentions)):
        samples, last = _row(hearing.words, mentions, k)
        following = next((m.start for m in mentions[k:] if m.start >= last.end), len(hearing.words))
        naming = _naming(hearing, last.end, min(following, last.end + REACH), samples, known)
        if naming:
            yield naming
    yield from _unnamed(hearing, known)


def _unnamed(hearing: Hearing, known: bytearray) -> Iterator[Naming]:
    """After a paper is opened, `it's the Assam` of the sample talked of; `the winner is the Assam` of the winner."""
    words = hearing.words
    for opening in _openings(words):
        for i in range(max(opening, int(len(words) * EARLIEST)), min(opening + ROLL, len(words) - 2)):
            sample = _subject(hearing, i)
            naming = _naming(hearing, i, min(len(words), i + 7), (sample,), known) if sample else None
            if naming and naming.known:
                yield naming


def _subject(hearing: Hearing, i: int) -> str | None:
    """The sample of which `is` at word `i` tells something: the winner's, or the one talked of."""
    before = hearing.words[i - 1].norm
    if hearing.words[i].norm not in COPULAS:
        return None
    if before == "winner":
        overall = [p for p in hearing.preferences if p.scope == "overall" and p.start < i]
        return overall[-1].preferred if overall else None
    return hearing.topics[hearing.run_of[i]].sample if before in ("it", "that") else None


def _known_words(hearing: Hearing) -> bytearray:
    """Marks the words that belong to names of products: proper names, and the lexicon's products, places and plants."""
    words = hearing.words
    known = bytearray(w.tag in ("NNP", "NNPS") and w.norm not in NO_NAME for w in words)
    at = [i for i, w in enumerate(words) if w.norm]
    for hit in hearing.lexicon.match([words[i].norm for i in at]):
        sort = hearing.lexicon.concepts[hit.label.concept].sort
        if sort in SORTS or sort == "descriptor":
            for i in range(at[hit.start], at[hit.end - 1] + 1):
                known[i] = sort in SORTS
    for mention in hearing.mentions:
        if mention.kind == "name":
            known[mention.start : mention.end] = bytes(mention.end - mention.start)
    return known


def _row(words: list[Word], mentions: list[Mention], k: int) -> tuple[tuple[str, ...], Mention]:
    """The samples named together (`the first and the third`), and the last of their mentions."""
    samples, last = mentions[k].samples, mentions[k]
    for following in mentions[k + 1 :]:
        between = {w.norm for w in words[last.end : following.start]}
        if "and" not in between or not between <= {"and", "the", ","}:
            break
        samples, last = samples + following.samples, following
    return samples, last


def _naming(hearing: Hearing, at: int, limit: int, samples: tuple[str, ...], known: bytearray) -> Naming | None:
    """The product named after a sample that ends at `at`: the first phrase that has a name in it, else the first."""
    phrases = list(_phrases(hearing.words, at, limit, known))
    said = _said_at_once(hearing.words, at, limit, known)
    chosen = said or next((p for p in phrases if any(known[p[0] : p[1]])), phrases[0] if phrases else None)
    if not chosen:
        return None
    is_known = bool(said) or any(known[chosen[0] : chosen[1]])
    between = [w.norm for w in hearing.words[at : chosen[0]]]
    if not _equates(between, is_known) or _guessed(hearing.words, at, chosen[1]):
        return None
    start, end = chosen[0], _with_apposition(hearing.words, chosen[1], limit, known)
    product = _meant(hearing, start, end)
    return Naming(start, end, samples, product, is_known) if product else None


def _said_at_once(words: list[Word], at: int, limit: int, known: bytearray) -> tuple[int, int] | None:
    """The words right after `is`, up to a break, where a name is among them or follows (`it's fig, from Ur`)."""
    for i in range(at, limit):
        start = next((k for k in range(i, limit) if words[k].norm not in BESIDE or known[k]), limit)
        if words[i].norm not in COPULAS or start == limit or not _is_direct([w.norm for w in words[at:start]]):
            continue
        end = _run_end(words, start, limit, known)
        named = any(known[start : min(limit, end + 4)])
        if end > start and named and (known[start] or _may_join(words[start])):
            return start, end
    return None


def _run_end(words: list[Word], start: int, limit: int, known: bytearray) -> int:
    """Where what is said in one go ends, without what cannot end a name."""
    end = start
    while end < limit and words[end].norm not in BREAKS and words[end].tag != "CD" and end - start < 7:
        end += 1
    while (
        end > start
        and not known[end - 1]
        and (words[end - 1].norm in NO_NAME or words[end - 1].tag not in NOUNS | {"JJ", "VBN"})
    ):
        end -= 1
    return end


def _equates(between: list[str], is_known: bool) -> bool:
    """Whether the words between a sample and a phrase say that the one is the other."""
    if not between:
        return is_known
    if not NEGATORS.isdisjoint(between[-3:]):
        return False
    if not is_known:
        return _is_direct(between)
    return not COPULAS.isdisjoint(between) or BESIDE.issuperset(between)


def _is_direct(between: list[str]) -> bool:
    """Whether the last words before a phrase are `is` or `it's`, with nothing but an article after."""
    spoken = [n for n in between if n not in ("a", "an", "the", "your", "our", "my", ",", "all", "oh", "uh", "um")]
    return bool(spoken) and spoken[-1] in COPULAS and len(between) < 10 and not {"i", "they", "he", "she"} & set(spoken)


def _guessed(words: list[Word], at: int, end: int) -> bool:
    return not GUESSES.isdisjoint(w.norm for w in words[max(0, at - 6) : end + 4])


def _with_apposition(words: list[Word], end: int, limit: int, known: bytearray) -> int:
    """Take in what stands beside the name (`Assam, second flush`), where that is of the trade."""
    start = next((k for k in range(end, min(end + 3, limit)) if words[k].norm == ","), limit) + 1
    if start < limit and words[start].norm in ("mostly", "all", "pure"):
        start += 1
    if start < limit and known[start]:
        return _phrase_end(words, start, limit, known)
    return end


def _phrases(words: list[Word], at: int, limit: int, known: bytearray) -> Iterator[tuple[int, int]]:
    """The noun phrases after a sample, until the talk turns to something else."""
    i = at
    while i < limit and (words[i].norm not in STOPS or known[i]):
        end = _phrase_end(words, i, limit, known)
        if end > i and words[i - 1].norm not in NEGATORS:
            yield i, end
        i = max(end, i + 1)


def _phrase_end(words: list[Word], start: int, limit: int, known: bytearray) -> int:
    end = start
    while end < limit and (known[end] or _may_join(words[end])):
        end += 1
    while end > start and not (known[end - 1] or words[end - 1].tag in NOUNS):
        end -= 1
    return end


def _may_join(word: Word) -> bool:
    return word.norm not in NO_NAME and word.tag in ("NN", "NNS", "JJ", "VBN", "VBD", "HYPH", "FW") and bool(word.norm)


def _meant(hearing: Hearing, start: int, end: int) -> str:
    """The words as meant: a repaired stretch by its repair, the others as printed."""
    words = hearing.words[start:end]
    printed = [hearing.said(i, i + 1) for i in range(start, end)]
    return " ".join(p if p.lower() == w.norm else w.norm for w, p in zip(words, printed, strict=True) if w.norm)
