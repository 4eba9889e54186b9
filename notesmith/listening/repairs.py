"""What was meant?

Captions print rare words as common ones that sound alike. Three things tell what was meant: mis-hearings that the
lexicon lists, the names on the sheet, and the trade's words; the last two by their sound. A wrong repair is worse
than none: the shorter the name and the more sense the printed words make, the more alike they must be.
"""

from collections import defaultdict
from collections.abc import Collection, Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from functools import lru_cache
from itertools import takewhile
from typing import NamedTuple

from notesmith.lexicon import Hit, Label, Lexicon
from notesmith.lexicon.model import Sort
from notesmith.listening.hearing import Hearing, Mending
from notesmith.listening.knowing import known_as_meant, known_as_printed
from notesmith.listening.names import ARTICLES, CARRIERS, DIGITS, EMPTY, names_of, tokens_of
from notesmith.listening.sounding import Sound, joined, likeness
from notesmith.listening.suspects import LOOSE, Stretch, is_english, stretches
from notesmith.records import Sheet

SORTS: tuple[Sort, ...] = (
    "vessel", "product", "cultivar", "origin", "process", "harvest", "grade", "practice", "descriptor",
)  # fmt: skip
BONES = "ptkfsCmnlr"
SURE_LENGTH = 8  # sounds from which a likeness is hardly chance
TRADE_BAR = 0.84
SHEET_BAR = 0.74
WORD_BARS = {"carried": 0.7, "pointed": 0.84, "open": 0.9}
PART_BAR = 0.6
KNOWN_BAR = 0.78
PREFERRED = 0.1  # how much less alike the usual name may be than a rarer one


class Target(NamedTuple):
    """Something that may have been meant."""

    text: str
    words: tuple[str, ...]
    sound: Sound
    sample: str | None


Targets = Mapping[str, Sequence[Target]]  # by their consonants


@dataclass(frozen=True, slots=True)
class Guess:
    """A stretch read as a target; `margin` is how far its likeness is over the bar."""

    stretch: Stretch
    target: Target
    score: float
    margin: float
    rule: str


def find_repairs(hearing: Hearing) -> None:
    """Find what the captions misprint, and set the words' norms to what was meant."""
    printed = known_as_printed(hearing)
    guesses = [*_listed(hearing), *_sounding(hearing, _right(hearing, printed))]
    taken = bytearray(len(hearing.words))
    for guess in sorted(guesses, key=lambda g: (-g.margin - 0.02 * len(g.target.sound.bones), g.stretch.start)):
        start, end = guess.stretch.start, guess.stretch.end
        if not any(taken[start:end]):
            taken[start:end] = b"\1" * (end - start)
            target = guess.target
            hearing.mendings.append(Mending(start, end, target.text, target.sample, guess.rule, round(guess.score, 3)))
    hearing.mendings.sort(key=lambda m: m.start)
    for mending in hearing.mendings:
        _mend(hearing, mending)
    hearing.known = known_as_meant(hearing, printed)


def _mend(hearing: Hearing, mending: Mending) -> None:
    """Let the words read as meant; where more are meant than stand there, the last one holds the rest."""
    room = mending.end - mending.start
    meant = [*tokens_of(mending.meant)]
    norms = meant if len(meant) <= room else [*meant[: room - 1], " ".join(meant[room - 1 :])]
    for word, norm in zip(hearing.words[mending.start : mending.end], norms + [""] * room, strict=False):
        word.norm = norm


def _listed(hearing: Hearing) -> Iterator[Guess]:
    """Mis-hearings that the lexicon lists, longest first."""
    words, misheard = [w.norm for w in hearing.words], hearing.lexicon.misheard
    lengths = _lengths(hearing.lexicon)
    first = {opening[0] for opening in lengths}
    for start in [i for i, word in enumerate(words) if word in first]:
        opening = tuple(words[start : start + 2])
        for length in lengths.get(opening) or lengths.get(opening[:1]) or ():
            heard = tuple(words[start : start + length])
            label = misheard.get(heard)
            if label:
                stretch = Stretch(start, start + length, heard, joined(heard), 0, 0, 0, "none")
                target = _nearest_label(hearing.lexicon, label, stretch.sound)
                yield Guess(stretch, target, 0.95, 0.5 + length / 10, "known mis-hearing")
                break


@lru_cache(maxsize=4)
def _lengths(lexicon: Lexicon) -> dict[tuple[str, ...], list[int]]:
    """How long the mis-hearings are that begin with two words, or are one word, longest first."""
    lengths: dict[tuple[str, ...], set[int]] = defaultdict(set)
    for key in lexicon.misheard:
        lengths[key[:2]].add(len(key))
    return {
        opening: sorted(found | lengths.get(opening[:1], set()), reverse=True) for opening, found in lengths.items()
    }


@lru_cache(maxsize=1024)
def _nearest_label(lexicon: Lexicon, misheard: Label, heard: Sound) -> Target:
    """Of the names of the concept the one that sounds most like what was heard."""
    labels = lexicon.labels(misheard.concept)
    preferred, *others = (_target(label.text) for label in labels if label.kind != "misheard")
    return max(
        (preferred, *others),
        key=lambda target: likeness(target.sound, heard) + PREFERRED * (target is preferred),
    )


@lru_cache(maxsize=1024)
def _target(text: str) -> Target:
    words = tokens_of(text)
    return Target(text, words, joined(words), None)


def _sounding(hearing: Hearing, right: bytes) -> Iterator[Guess]:
    """Stretches that sound like a name of the sheet or a word of the trade."""
    names = _by_bones(_sheet_targets(hearing.sheet, hearing.lexicon))
    trade = _trade_targets(hearing.lexicon)
    named = {word for found in names.values() for target in found for word in target.words}
    for stretch in stretches(hearing, names, trade, right):
        known = right[stretch.start : stretch.end]
        for guess in _guesses(stretch, names, trade if stretch.is_strange(known) else {}):
            if _may_be(stretch, guess.target, known, named):
                yield guess


def _guesses(stretch: Stretch, names: Targets, trade: Targets) -> Iterator[Guess]:
    """What a stretch sounds like, as far as its sound goes."""
    for target in names.get(stretch.sound.bones, ()):
        yield from _guess(stretch, target, _sheet_bar(stretch, target), "sounds like a name of the sheet")
    for target in trade.get(stretch.sound.bones, ()):
        yield from _guess(stretch, target, _trade_bar(stretch, target), "sounds like a word of the trade")


def _guess(stretch: Stretch, target: Target, bar: float, rule: str) -> Iterator[Guess]:
    score = likeness(stretch.sound, target.sound) if bar <= 1 else 0.0
    if score >= bar:
        yield Guess(stretch, target, score, score - bar, rule)


def _sheet_bar(stretch: Stretch, target: Target) -> float:
    """How alike a name of the sheet must be."""
    short = max(0, SURE_LENGTH - len(target.sound.phones))
    if len(stretch.words) == 1:
        return _word_bar(stretch, target) - 0.05 * stretch.odd
    bar = SHEET_BAR + 0.03 * short + 0.04 * stretch.loose_edges + 0.02 * stretch.loose
    return bar - 0.05 * min(stretch.odd, 2) - 0.04 * (stretch.place != "none")


def _word_bar(stretch: Stretch, target: Target) -> float:
    """One word is soon like another: it must stand where a name stands, or be strange itself."""
    if stretch.place in WORD_BARS:
        return WORD_BARS[stretch.place]
    return 0.9 if stretch.odd and not is_english(target.words[0]) else 2.0


def _trade_bar(stretch: Stretch, target: Target) -> float:
    short = max(0, SURE_LENGTH - len(target.sound.phones))
    bar = TRADE_BAR + 0.02 * short + 0.06 * stretch.loose_edges + 0.03 * stretch.loose
    return bar - 0.04 * min(stretch.odd, 2) + 0.1 * (len(stretch.words) == 1)


def _may_be(stretch: Stretch, target: Target, known: Sequence[int], named: Collection[str]) -> bool:
    """Whether what the two do not share can be one misprinted as the other."""
    heard = [(w, k) for w, k in zip(stretch.words, known, strict=True) if w not in target.words]
    meant = [w for w in target.words if w not in stretch.words]
    telling = [(w, k) for w, k in heard if w not in LOOSE]
    if not meant or (not telling and len(heard) < 3) or all(w in named for w, _ in telling):
        return False
    if len(telling) == len(meant) == 1 and _same_stem(telling[0][0], meant[0]):
        return False
    whole = len(meant) == len(target.words)
    part = 1.0 if whole else likeness(joined(w for w, _ in heard), joined(meant))
    makes_sense = all(k for _, k in telling) and stretch.place in ("open", "none")
    return part >= (KNOWN_BAR if makes_sense else PART_BAR) and not (whole and makes_sense)


def _same_stem(printed: str, meant: str) -> bool:
    """Whether the printed word is only another form of what would be meant (`rasp`, raspy)."""
    shared = sum(1 for _ in takewhile(lambda pair: pair[0] == pair[1], zip(printed, meant, strict=False)))
    return shared >= 4 and shared >= 0.6 * min(len(printed), len(meant))


def _right(hearing: Hearing, printed: Iterable[Hit]) -> bytes:
    """Marks the words that the lexicon knows as they stand."""
    right = bytearray(len(hearing.words))
    for hit in printed:
        right[hit.start : hit.end] = b"\1" * (hit.end - hit.start)
    return bytes(right)


def _sheet_targets(sheet: Sheet, lexicon: Lexicon) -> list[Target]:
    """The names of the samples, without article and apostrophe."""
    targets: dict[tuple[str, ...], Target] = {}
    for name in names_of(sheet, lexicon):
        words = name.words[1:] if name.words[0] in ARTICLES else name.words
        words = words[:-1] if words and words[-1] == "'s" else words
        idle = CARRIERS | EMPTY | LOOSE | set(DIGITS.values())
        if words and words[0] not in idle and words[-1] not in idle and not any(w.isdigit() for w in words):
            targets.setdefault(words, Target(_as_written(sheet, words), words, joined(words), name.sample))
    return list(targets.values())


def _as_written(sheet: Sheet, words: Sequence[str]) -> str:
    """The name as the sheet writes it."""
    plain = " ".join(words)
    for sample in sheet.samples:
        for text in (sample.id, *sample.aliases, sample.product or ""):
            place = text.lower().find(plain)
            if place >= 0:
                return text[place : place + len(plain)]
    return plain


def _by_bones(targets: Iterable[Target]) -> dict[str, list[Target]]:
    """Targets under their consonants, and under all that differ by one."""
    found: dict[str, list[Target]] = defaultdict(list)
    for target in targets:
        for bones in _neighbours(target.sound.bones):
            found[bones].append(target)
    return found


def _neighbours(bones: str) -> set[str]:
    cuts = [(bones[:i], bones[i:]) for i in range(len(bones) + 1)]
    near = {a + b[1:] for a, b in cuts if b}
    near |= {a + c + b[1:] for a, b in cuts if b for c in BONES}
    near |= {a + c + b for a, b in cuts for c in BONES}
    return near | {bones} if len(bones) > 2 else {bones}


@lru_cache(maxsize=4)
def _trade_targets(lexicon: Lexicon) -> dict[str, list[Target]]:
    """The trade's words and single descriptors that are no everyday words, under their consonants."""
    found: dict[str, list[Target]] = defaultdict(list)
    for sort in SORTS:
        for label in lexicon.terms(sort):
            words = tuple(label.text.split())
            if _is_rare(label, words, sort):
                target = Target(label.text, words, joined(words), None)
                if len(target.sound.bones) > 1:
                    found[target.sound.bones].append(target)
    return found


def _is_rare(label: Label, words: Sequence[str], sort: Sort) -> bool:
    if label.guarded or len(words) > (1 if sort == "descriptor" else 3) or not label.text.replace(" ", "").isalpha():
        return False
    return not all(is_english(w.lower()) for w in words)
