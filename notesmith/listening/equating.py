"""Where a sample is equated with a product: `heron is the Assam`, `that was the heron`, `which leaves the Assam`."""

from collections.abc import Iterator
from dataclasses import dataclass, replace
from itertools import pairwise

from notesmith.listening.calls import COPULAS, row_from
from notesmith.listening.hearing import Hearing, Mention, Word
from notesmith.listening.mishearing import meant_name
from notesmith.listening.names import CARRIERS
from notesmith.listening.products import (
    NO_NAME,
    SENTENCE_ENDS,
    STOPS,
    as_meant,
    may_join,
    phrase_end,
    phrase_start,
    phrases,
    ties,
    with_apposition,
)
from notesmith.listening.slips import beside_on_slip, soon_after
from notesmith.listening.sounding import joined, likeness
from notesmith.listening.vocabulary import NEGATORS, NOUNS

REACH = 22  # words after a sample in which its product is named
FAR = 40  # words after a sample in which `it's the Assam` still tells of it
ATTEMPT = 0.7  # how alike two attempts at one name sound
ASIDE = 8  # words from `which leaves` to the product left
SUBJECTS = frozenset("it that this they which these".split())
ARTICLES = frozenset("a an the your our my , all oh uh um called".split())
BREAKS = STOPS | frozenset(", . ! and it that this there 's called named".split())
VERBS = frozenset(["VBZ", "VBP", "MD", "PRP", "WDT"])
GUESSES = frozenset("maybe could might guess guessed probably reckon perhaps expected thought bet would should".split())
PAPERS = frozenset(
    "slip slips envelope envelopes paper papers list card cards sheet key answers labels label foil sock socks "
    "sleeve sleeves wrapping wrappers tape bottoms clipboard dockets cover covers lid lids bottles packets tins bags "
    "boxes results".split()
)
BESIDE = (
    frozenset(
        ", : . the it says said um uh so oh and actually one a your my of winner that also called named o'clock".split()
    )
    | COPULAS
    | CARRIERS
    | PAPERS
)
PLACES = frozenset("in under underneath behind beneath inside".split())
LINKS = COPULAS | PLACES | frozenset("the a my your with on really , all along be been has to that which here".split())
HEADS = SENTENCE_ENDS | {",", "'"}
LEAVING = frozenset("leaves leaving left remaining".split())
BEST = frozenset("winner champion favourite favorite".split())


@dataclass(frozen=True, slots=True)
class Naming:
    """A product named for some samples, or for the one that is left: the words from `start` to `end`."""

    start: int
    end: int
    samples: tuple[str, ...]  # none: the one that is left
    product: str
    known: bool  # has a proper name or a product of the lexicon in it
    called: bool = True  # the sample is called by its name, not only talked of


def find_namings(
    hearing: Hearing, known: bytearray, calls: list[Mention], openings: list[int], reach: int
) -> list[Naming]:
    """Names of products given to the samples called, in order; `it's the …` only soon after an opening."""
    known = bytearray(known)
    before = [n for m in calls if (n := _named_before(hearing, m, known))]
    for naming in before:
        known[naming.start : naming.end] = bytes(naming.end - naming.start)
    after = _named_after(hearing, calls, known, openings, reach)
    return sorted([*before, *after], key=lambda n: n.start)


def _named_after(
    hearing: Hearing, calls: list[Mention], known: bytearray, openings: list[int], reach: int
) -> Iterator[Naming]:
    for k in range(len(calls)):
        samples, last = row_from(hearing.words, calls, k)
        limit = next((m.start for m in calls[k:] if m.start >= last.end), len(hearing.words))
        naming = _naming(hearing, last.end, min(limit, last.end + REACH), samples, known)
        if not naming and soon_after(openings, last.end, reach):
            naming = (
                _misheard(hearing, last, samples)
                or _headed(hearing, last, limit, samples, known)
                or _read_out(hearing, last, samples)
                or _told_later(hearing, last.end, min(limit, last.end + FAR), samples, known)
            )
        if naming:
            yield naming
    for i in hearing.places(COPULAS | LEAVING | {"other"}):
        if i < len(hearing.words) - 2 and soon_after(openings, i, reach - 1):
            yield from _unnamed(hearing, i, known, calls)


def _unnamed(hearing: Hearing, i: int, known: bytearray, calls: list[Mention]) -> Iterator[Naming]:
    """`It's the Assam` of the sample talked of; `the winner is the Assam`; `that leaves the Assam` of the one left."""
    words, limit = hearing.words, min(len(hearing.words), i + 7)
    sample = _subject(hearing, i) if any(known[i:limit]) else None
    naming = _naming(hearing, i, limit, (sample,), known) if sample else None
    if naming and naming.known and (words[i - 1].norm in BEST or _last_called(calls, i) in ((), naming.samples)):
        yield replace(naming, called=False)
    if words[i].norm in LEAVING or (words[i].norm == "other" and words[i + 1].norm in CARRIERS | COPULAS | PAPERS):
        yield from _left_over(hearing, i + 1, known)


def _last_called(calls: list[Mention], i: int) -> tuple[str, ...]:
    """The samples last called not far before word `i`."""
    return next((m.samples for m in reversed(calls) if m.end <= i < m.end + FAR), ())


def _left_over(hearing: Hearing, at: int, known: bytearray) -> Iterator[Naming]:
    """The product named right after `leaves` or `the other one is`, of whichever sample is left."""
    words, reads = hearing.words, hearing.words[at].norm in PAPERS
    limit = min(len(words), at + (FAR if reads else ASIDE))
    limit = min(limit, next((m.start for m in hearing.mentions if m.kind == "name" and m.start >= at), limit))
    start = next((i for i in range(at, limit) if known[i] == 2), limit) if reads else at
    found = next((p for p in phrases(words, start, limit, known) if any(known[p[0] : p[1]])), None)
    if found and (reads or BESIDE.issuperset(w.norm for w in words[at : found[0]])):
        end = with_apposition(words, found[1], limit, known)
        yield Naming(found[0], end, (), as_meant(hearing, found[0], end), True, False)


def _subject(hearing: Hearing, i: int) -> str | None:
    """The sample of which `is` at word `i` tells something: the winner's, or the one talked of."""
    before = hearing.words[i - 1].norm
    if hearing.words[i].norm not in COPULAS:
        return None
    if before in BEST:
        overall = [p for p in hearing.preferences if p.scope == "overall" and p.start < i]
        return overall[-1].preferred if overall else None
    return hearing.topics[hearing.run_of[i]].sample if before in ("it", "that") else None


def _named_before(hearing: Hearing, call: Mention, known: bytearray) -> Naming | None:
    """The product in `the Assam was the heron`, `the Assam is in the second`."""
    words, end = hearing.words, call.start
    while end > 1 and words[end - 1].norm in LINKS:
        end -= 1
    links = [w.norm for w in words[end : call.start]]
    start = phrase_start(words, end, max(0, end - 6), known)
    if links[:1] == [","] and links[1:2] in (["that"], ["which"]):
        links = links[1:]
    if not any(known[start:end]) or not links or links[0] not in COPULAS | {"that", "which", "in"}:
        return None
    if _guessed(words, start, call.end) or (COPULAS | PLACES).isdisjoint(links):
        return None
    return Naming(start, end, call.samples, as_meant(hearing, start, end), True)


def _headed(hearing: Hearing, call: Mention, limit: int, samples: tuple[str, ...], known: bytearray) -> Naming | None:
    """The product soon after a sample's name that stands by itself, as a heading does (`Green. Some red, from Ur`)."""
    words = hearing.words
    if words[call.start - 1].norm not in HEADS or call.end >= limit or words[call.end].norm not in (".", ":", ","):
        return None
    limit = min(limit, call.end + ASIDE)
    start = next((i for i in range(call.end, limit) if known[i]), limit)
    between = {w.norm for w in words[call.end : start]}
    if start == limit or not between.isdisjoint(NEGATORS | GUESSES | {"i", "you", "we"}):
        return None
    end = phrase_end(words, start, limit, known)
    return Naming(start, end, samples, as_meant(hearing, start, end), True)


def _misheard(hearing: Hearing, call: Mention, samples: tuple[str, ...]) -> Naming | None:
    """The product in `heron is lap sang`, where no word is known."""
    words, at = hearing.words, call.end
    if at + 5 > len(words) or words[at].norm not in COPULAS:
        return None
    start = at + 1 + (words[at + 1].norm in ARTICLES)
    for end in (start + 3, start + 2):
        if meant_name(hearing.lexicon, tuple(w.norm for w in words[start:end])):
            return Naming(start, end, samples, as_meant(hearing, start, end), True)
    return None


def _read_out(hearing: Hearing, call: Mention, samples: tuple[str, ...]) -> Naming | None:
    """What a slip has beside the sample it names (`it says, heron, old barn reserve, …`), known as a name or not."""
    found = beside_on_slip(hearing.words, call)
    return Naming(*found, samples, as_meant(hearing, *found), True) if found else None


def _told_later(hearing: Hearing, at: int, limit: int, samples: tuple[str, ...], known: bytearray) -> Naming | None:
    """The product in `it's the Assam` some way after the sample was called."""
    words = hearing.words
    for i in range(at + 1, limit - 1):
        if words[i].norm not in COPULAS or words[i - 1].norm not in SUBJECTS:
            continue
        start = next((k for k in range(i + 1, limit) if words[k].norm not in ARTICLES | {"from"}), limit)
        end = phrase_end(words, start, limit, known)
        if end > start and any(known[start : min(limit, end + 4)]) and not _guessed(words, i, start + 1):
            end = with_apposition(words, end, limit, known)
            return Naming(start, end, samples, as_meant(hearing, start, end), True)
    return None


def _naming(hearing: Hearing, at: int, limit: int, samples: tuple[str, ...], known: bytearray) -> Naming | None:
    """The product named after a sample that ends at `at`: the first phrase that has a name in it, else the first."""
    said = _said_at_once(hearing.words, at, limit, known)
    chosen = said or _first_phrase(hearing.words, at, limit, known)
    if not chosen:
        return None
    is_known = bool(said) or any(known[chosen[0] : chosen[1]])
    between = [w.norm for w in hearing.words[at : chosen[0]]]
    if not _equates(between, is_known) or _guessed(hearing.words, at, chosen[1]):
        return None
    if not is_known and hearing.words[chosen[1] - 1].norm in CARRIERS:  # `that is the dish`
        return None
    start, end = _last_attempt(hearing, *chosen)
    end = with_apposition(hearing.words, end, limit, known)
    product = as_meant(hearing, start, end)
    return Naming(start, end, samples, product, is_known) if product else None


def _first_phrase(words: list[Word], at: int, limit: int, known: bytearray) -> tuple[int, int] | None:
    """The first phrase that has a name in it, else the first."""
    found = list(phrases(words, at, limit, known))
    return next((p for p in found if any(known[p[0] : p[1]])), found[0] if found else None)


def _last_attempt(hearing: Hearing, start: int, end: int) -> tuple[int, int]:
    """The name at its second attempt, where a sample's own name stands between the two (`gen mai, mug, genmaicha`)."""
    names = {s.id.lower() for s in hearing.sheet.samples}
    inside = next((i for i in range(start + 1, end - 1) if hearing.words[i].norm in names), None)
    if inside is None:
        return start, end
    first, second = (joined(hearing.norms(*part)) for part in ((start, inside), (inside + 1, end)))
    return (inside + 1, end) if likeness(first, second) >= ATTEMPT else (start, end)


def _said_at_once(words: list[Word], at: int, limit: int, known: bytearray) -> tuple[int, int] | None:
    """The words right after `is`, up to a break, where a name is among them or follows (`it's fig, from Ur`)."""
    for i in range(at, limit):
        if words[i].norm not in COPULAS or ties(words, i, at, limit, known):
            continue
        start = next((k for k in range(i, limit) if words[k].norm not in BESIDE or known[k]), limit)
        if start == limit or not _is_direct([w.norm for w in words[at:start]]):
            continue
        end = _run_end(words, start, limit, known)
        named = any(known[start : min(limit, end + 4)])
        if end > start and named and (known[start] or may_join(words[start])):
            return start, end
    return None


def _run_end(words: list[Word], start: int, limit: int, known: bytearray) -> int:
    """Where what is said in one go ends, without what cannot end a name."""
    end = start
    while end < limit and words[end].tag != "CD" and end - start < 7:
        noun = words[end].tag == "VBZ" and end > start and words[end - 1].tag in ("JJ", "VBN", "VBD")  # mistaken
        breaks = words[end].norm in BREAKS or (words[end].tag in VERBS and not noun)
        if breaks and not known[end] and not ties(words, end, start, limit, known):
            break
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
    spoken = [n for n in between if n not in ARTICLES]
    return bool(spoken) and spoken[-1] in COPULAS and len(between) < 10 and not {"i", "they", "he", "she"} & set(spoken)


def _guessed(words: list[Word], at: int, end: int) -> bool:
    around = [w.norm for w in words[max(0, at - 6) : end + 4]]
    return not GUESSES.isdisjoint(around) or ("i", "think") in pairwise(around[:6])
