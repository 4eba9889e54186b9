"""What has been understood of one recording so far: the state that the questions fill in, one after another.

Positions are indexes of words; a stretch is a half-open pair of them. Times are integer milliseconds.
"""

import re
from collections import defaultdict
from collections.abc import Callable, Iterable
from dataclasses import dataclass, field
from functools import cached_property
from typing import Literal, NamedTuple

from notesmith.lexicon import Hit, Label, Lexicon
from notesmith.records import Facet, FactKind, Intensity, Presence, SectionKind, Sheet, Voice
from notesmith.transcript import Talk

Stage = Literal["appearance", "aroma", "tasting", "finish"]
PUNCTUATION = frozenset([".", ",", ":", "``", "''", "-LRB-", "-RRB-", "_SP", "HYPH", "NFP"])  # tags


@dataclass(slots=True)
class Word:
    """One word or punctuation mark of the talk."""

    norm: str  # lower case, as meant; empty where a repair before it took it in
    tag: str  # Penn Treebank tag
    start: int  # characters in the talk
    end: int
    ms: int
    cue: int
    speaker: str | None
    pause: int  # milliseconds of silence before it


class Grounds(NamedTuple):
    """Why something is believed: a rule's name and the stretch of words it rests on."""

    rule: str
    start: int
    end: int


@dataclass(frozen=True, slots=True)
class Mending:
    """A stretch the captions got wrong, and what was said."""

    start: int
    end: int
    meant: str
    sample: str | None
    rule: str
    score: float


class Clause(NamedTuple):
    """One thought: the reach of a negation, and the smallest stretch that is about one sample."""

    start: int
    end: int
    speaker: str | None
    asks: bool


@dataclass(frozen=True, slots=True)
class Mention:
    """A place where samples are named or pointed at."""

    start: int
    end: int
    kind: Literal["name", "ordinal", "this", "that", "other", "next", "previous", "all"]
    samples: tuple[str, ...]
    rule: str
    score: float
    crowded: bool = False  # one of a row of names with hardly a word between them


class Description(NamedTuple):
    """A stretch of words that may describe what is perceived."""

    start: int
    end: int
    label: Label | None
    rule: str
    head: int  # the container word it qualifies (finish, nose, body …), or -1


@dataclass(slots=True)
class Perception:
    """A description with everything that has been decided of it."""

    description: Description
    clause: int
    start: int  # the words that carry the description and everything that changes its reading
    end: int
    presence: Presence = "present"
    intensity: Intensity | None = None
    facet: Facet = "flavour"
    voice: Voice = "taster"
    sample: str | None = None
    preparation: str | None = None
    taster: str | None = None
    confidence: float = 0.5
    grounds: list[Grounds] = field(default_factory=list)


@dataclass(frozen=True, slots=True)
class LeftOut:
    """A description that is no perception, and why."""

    description: Description
    reason: str
    grounds: Grounds


@dataclass(slots=True)
class Topic:
    """What a run of words is about."""

    sample: str | None = None
    preparation: str | None = None
    stage: Stage | None = None
    score: float = 0.0
    rule: str = ""


@dataclass(frozen=True, slots=True)
class Compared:
    """Two samples set beside each other on one property; `equal` names them where neither has more."""

    start: int
    end: int
    attribute: str
    more: str | None
    less: str | None
    equal: tuple[str, ...]
    degree: Intensity | None
    taster: str | None
    confidence: float
    grounds: tuple[Grounds, ...]


@dataclass(frozen=True, slots=True)
class Preferred:
    """Which sample is liked better, or a ranking, best first."""

    start: int
    end: int
    preferred: str
    over: tuple[str, ...]
    scope: str
    degree: Intensity | None
    taster: str | None
    confidence: float
    grounds: tuple[Grounds, ...]


@dataclass(frozen=True, slots=True)
class Amount:
    """What may state a fact: its words, kind, value and unit, the rule that told it and the signs to weigh it by."""

    start: int
    end: int
    kind: FactKind
    value: float | int | str
    unit: str | None
    rule: str
    signs: tuple[str, ...] = ()
    told: bool = False  # whether plain rules alone would take it for the fact
    score: float = 0.0


@dataclass(frozen=True, slots=True)
class Stated:
    """A fact."""

    start: int
    end: int
    kind: FactKind
    value: float | int | str
    unit: str | None
    sample: str | None
    preparation: str | None
    confidence: float
    grounds: tuple[Grounds, ...]


@dataclass(frozen=True, slots=True)
class Revealed:
    """Where a sample's identity is made known."""

    start: int
    end: int
    sample: str
    product: str
    confidence: float
    grounds: tuple[Grounds, ...]


@dataclass(frozen=True, slots=True)
class Passage:
    """A section: from its start to the start of the next one."""

    start: int
    end: int
    kind: SectionKind
    sample: str | None
    confidence: float
    grounds: tuple[Grounds, ...]


Heard = Compared | Preferred | Stated | Revealed | Passage


@dataclass
class Hearing:
    """Everything understood of one recording."""

    talk: Talk
    sheet: Sheet
    lexicon: Lexicon
    words: list[Word] = field(default_factory=list)
    mendings: list[Mending] = field(default_factory=list)
    known: list[Hit] = field(default_factory=list)  # the lexicon's words in the talk as mended
    clauses: list[Clause] = field(default_factory=list)
    clause_of: list[int] = field(default_factory=list)
    mentions: list[Mention] = field(default_factory=list)
    descriptions: list[Description] = field(default_factory=list)
    perceptions: list[Perception] = field(default_factory=list)
    runs: list[tuple[int, int]] = field(default_factory=list)  # stretches about one sample
    run_of: list[int] = field(default_factory=list)
    left_out: list[LeftOut] = field(default_factory=list)
    topics: list[Topic] = field(default_factory=list)  # one a run

    comparisons: list[Compared] = field(default_factory=list)
    preferences: list[Preferred] = field(default_factory=list)
    reveals: list[Revealed] = field(default_factory=list)
    amounts: list[Amount] = field(default_factory=list)  # everything that may state a fact, and how likely it does
    facts: list[Stated] = field(default_factory=list)
    sections: list[Passage] = field(default_factory=list)
    shortcomings: list[str] = field(default_factory=list)  # what the reader of the notes should know of the listening

    @cached_property
    def product_words(self) -> frozenset[str]:
        """Words that say what is tasted, as the sheet has them: `tea`, `honey`, `cider` describe nothing there."""
        named = (text for s in self.sheet.samples for text in (s.id, *s.aliases, s.product or ""))
        text = " ".join((self.sheet.category, self.sheet.title, *named))
        return frozenset(re.findall(r"[a-z]{3,}", text.lower()))

    @cached_property
    def meant(self) -> list[str]:
        """The norms of all words as mended (so ask after the repairs)."""
        return [word.norm for word in self.words]

    @cached_property
    def _places(self) -> dict[str, list[int]]:
        places: dict[str, list[int]] = defaultdict(list)
        for i, norm in enumerate(self.meant):
            places[norm].append(i)
        return dict(places)

    def places(self, norms: Iterable[str]) -> list[int]:
        """Where any of these words stand, in order (ask after the repairs): cheaper than looking at every word."""
        return sorted([i for norm in norms for i in self._places.get(norm, ())])

    def places_where(self, test: Callable[[str], bool]) -> list[int]:
        """Where the words stand that pass a test, in order (ask after the repairs): each word is tested once."""
        return self.places(filter(test, self._places))

    @cached_property
    def _tagged(self) -> dict[str, list[int]]:
        tagged: dict[str, list[int]] = defaultdict(list)
        for i, word in enumerate(self.words):
            tagged[word.tag].append(i)
        return dict(tagged)

    def tagged(self, tags: Iterable[str]) -> list[int]:
        """Where words with any of these tags stand, in order."""
        return sorted([i for tag in tags for i in self._tagged.get(tag, ())])

    @cached_property
    def capitals(self) -> list[int]:
        """The words that are printed with a capital, in order."""
        letters = map(self.talk.text.__getitem__, [word.start for word in self.words])
        return [i for i, letter in enumerate(letters) if letter.isupper()]

    def clauses_with(self, norms: Iterable[str]) -> list[int]:
        """The clauses in which any of these words stand, in order."""
        return sorted({self.clause_of[i] for norm in norms for i in self._places.get(norm, ())})

    def norms(self, start: int, end: int) -> list[str]:
        """The words of a stretch as meant, punctuation left out."""
        return [w.norm for w in self.words[start:end] if w.norm and w.tag not in PUNCTUATION]

    def said(self, start: int, end: int) -> str:
        """The words of a stretch as the captions print them."""
        return self.talk.text[self.words[start].start : self.words[end - 1].end] if end > start else ""
