"""Which words describe?

Two kinds are heard: words the lexicon knows, and open ones that stand where a description stands
(`like wet slate`, `a hint of …`, `I'm getting …`, `a … note`). Whether a description is a perception is asked later.
"""

from collections.abc import Iterator

from notesmith.lexicon import Label
from notesmith.listening.hearing import Description, Hearing, Word
from notesmith.listening.vocabulary import ADJECTIVES, BE, CONTAINERS, DETERMINERS, FILLERS, GRADERS, NOUNS

MEASURES = frozenset(
    "hint hints touch note notes whiff trace traces whisper suggestion bit lot lots loads edge splash ton tons bags "
    "hit dash sense layer burst backbone core plenty tinge".split()
)
GETS = frozenset(
    "get gets getting got find finding taste tasting smell smelling detect pick picking have having".split()
)
SENSES = frozenset(
    "taste tastes tasted smell smells smelled smelt smelling tasting reminds feels feel looks look".split()
)
# Nouns that name no perception wherever a description could stand.
IDLE = frozenset(
    "thing things way lot time times one ones stuff people person day days week weeks month year years minute minutes "
    "second seconds hour hours reason idea point question problem answer fact word words name names number numbers "
    "person guy guys man woman lady friend friends mum dad kid kids somebody anybody nobody everybody someone anyone "
    "everyone something anything nothing everything tea teas coffee coffees wine wines beer beers cider whisky rum "
    "oil honey cheese chocolate water cup cups glass glasses bowl mug bottle bottles bag bags tin tins pot pots spoon "
    "jar sample samples episode video channel show job work money price pound pounds euro dollar dollars gram grams "
    "ml degrees half rest top middle start beginning part parts place look sip try go chance moment while sense "
    "difference comparison rating score winner favourite favorite choice pick bet kettle today tomorrow tonight "
    "yesterday morning round brew steep infusion pour bit pair couple few most least side mouth tongue throat nose "
    "hand hands head eyes teeth lips cheeks everything mind gosh god goodness hell".split()
)
UNJOINED = GRADERS | FILLERS | IDLE | DETERMINERS | GETS | frozenset(CONTAINERS)  # they make no other thing of a noun
CARRYING = frozenset("note notes flavour flavor aftertaste finish aroma taste smell thing".split())
LIKENING = BE | frozenset("almost bit something sort kind , it's just that".split())
GETTERS = frozenset("i you we 'm 're 've can i'm also still just definitely".split())
SKIPPED = DETERMINERS | GRADERS | FILLERS | {"of"}
NAMELESS = frozenset("it there that thats its theres".split())
PART_TAGS = NOUNS | ADJECTIVES | {"HYPH", "POS", "CD"}
FRAMING = GETS | BE | {"of", "like"}
SHORT_PAUSE_MS = 300  # within a phrase nobody is silent for longer
LIST_PAUSE_MS = 900
LONGEST = 5  # words of an open phrase


def find_descriptions(hearing: Hearing) -> None:
    """Find the stretches that may describe, the lexicon's first, then open ones where nothing else stands."""
    taken = _naming_words(hearing)
    found: list[Description] = []
    for description in (*_known(hearing), *_open(hearing)):
        stretch = range(description.start, description.end)
        if taken.isdisjoint(stretch):
            taken.update(stretch)
            found.append(description)
    hearing.descriptions = sorted(found, key=lambda d: d.start)


def _naming_words(hearing: Hearing) -> set[int]:
    """The words that name a sample and so describe nothing."""
    names = [
        *((mending.start, mending.end) for mending in hearing.mendings if mending.sample),
        *((mention.start, mention.end) for mention in hearing.mentions if mention.kind == "name"),
    ]
    return {i for start, end in names for i in range(start, end)}


def _known(hearing: Hearing) -> Iterator[Description]:
    """The lexicon's words, each grown to the whole phrase it stands in."""
    words = hearing.words
    sensory = {start: (end, label) for start, end, label in hearing.known if _is_sensory(hearing, label)}
    limit = 0
    for begun, (ended, first) in sensory.items():
        if begun >= limit:
            start = _grow_left(words, limit, begun, ended)
            limit, label = _grow_right(words, sensory, ended, first)
            yield Description(start, limit, label, "lexicon", _container_after(words, limit))


def _is_sensory(hearing: Hearing, label: Label) -> bool:
    return hearing.lexicon.concepts[label.concept].sort == "descriptor"


def _grow_left(words: list[Word], limit: int, start: int, end: int) -> int:
    """Take in the words before a noun that make a different thing of it (`baked sweet` potato), not graders."""
    if words[end - 1].tag not in NOUNS:
        return start
    grown = start
    while grown > limit and _specifies(words, grown - 1):
        grown -= 1
    return grown if words[grown].tag != "HYPH" else start


def _specifies(words: list[Word], i: int) -> bool:
    """Whether a word before a noun belongs to what the noun names; in -ing only as an adjective (`boiling sugar`)."""
    word = words[i]
    if word.tag not in ADJECTIVES and word.tag not in ("NN", "HYPH"):
        return False
    if word.norm in UNJOINED or word.pause > SHORT_PAUSE_MS:
        return False
    return word.tag != "VBG" or (i > 0 and words[i - 1].tag in ("DT", "JJ", "IN"))


def _grow_right(words: list[Word], sensory: dict[int, tuple[int, Label]], end: int, label: Label) -> tuple[int, Label]:
    """Take in the noun the word stands before (`vanilla` candle), unless it only carries it (`vanilla` note)."""
    while end < len(words) and _goes_on(words, end):
        end, label = sensory.get(end, (end + 1, label))
    return end, label


def _goes_on(words: list[Word], i: int) -> bool:
    """Whether the word is a noun, or a hyphen before one, that the word before it belongs to."""
    word = words[i]
    if word.norm in CONTAINERS or word.norm in IDLE or word.norm in GRADERS or word.pause > SHORT_PAUSE_MS:
        return False
    return word.tag in NOUNS or (word.tag == "HYPH" and i + 1 < len(words) and words[i + 1].tag in NOUNS)


def _container_after(words: list[Word], end: int) -> int:
    """The container word that a description stands before (`smoky` finish); else -1."""
    if end < len(words) and words[end].norm in CONTAINERS and words[end].pause < SHORT_PAUSE_MS:
        return end
    return -1


def _open(hearing: Hearing) -> Iterator[Description]:
    """Open descriptions: a noun phrase, or an adjective, where a description stands."""
    words, carried = hearing.words, [i - 1 for i in hearing.places(CARRYING) if i]
    for i in sorted({*hearing.places(FRAMING), *carried}):
        rule = _frame(words, i)
        if rule:
            yield from _phrases(words, i + 1, rule)
        elif _is_carried(words, i) and _may_describe(words[i]):
            yield Description(_grow_left(words, 0, i, i + 1), i + 1, None, "before a carrying word", i + 1)


def _is_carried(words: list[Word], i: int) -> bool:
    """Whether a noun or adjective stands before a word that only carries it."""
    return words[i].tag in ("NN", "JJ", "NNS") and i + 1 < len(words) and words[i + 1].norm in CARRYING


def _frame(words: list[Word], i: int) -> str:
    """The name of the frame that ends at word `i` and calls for a description after it; empty for none."""
    now, before = words[i].norm, words[i - 1].norm if i else ""
    if now not in FRAMING:
        return ""
    frames = (
        ("a measure of", now == "of" and before in MEASURES),
        ("tastes or smells of", now in ("like", "of") and before in SENSES),
        ("likened to", now == "like" and before in LIKENING),
        ("getting", now in GETS and before in GETTERS),
        ("it is", now in BE and before in NAMELESS),
    )
    return next((rule for rule, stands in frames if stands), "")


def _phrases(words: list[Word], at: int, rule: str) -> Iterator[Description]:
    """The phrase at `at`, and those set beside it with commas and `and`."""
    alone, found_by = rule == "it is", rule
    while at < len(words):
        start = _skip(words, at)
        end = _phrase_end(words, start)
        if end == start or not _may_describe(words[end - 1]) or (alone and not _is_quality(words[end - 1])):
            return
        yield Description(start, end, None, found_by, _container_after(words, end))
        found_by = "listed beside another"
        at = _next_listed(words, end)


def _next_listed(words: list[Word], end: int) -> int:
    """Where the next phrase of a list begins; past the last word where the list ends."""
    if end == len(words) or words[end].norm not in (",", "and", "or", "&") or words[end].pause >= LIST_PAUSE_MS:
        return len(words)
    return end + 1 + (end + 1 < len(words) and words[end + 1].norm in ("and", "or"))


def _skip(words: list[Word], at: int) -> int:
    """Pass articles, graders and fillers."""
    while at < len(words) and words[at].norm in SKIPPED:
        at += 1
    return at


def _phrase_end(words: list[Word], start: int) -> int:
    """Where the noun phrase or the adjective that begins at `start` ends."""
    end = start
    while end < min(start + LONGEST, len(words)) and _is_part(words[end], first=end == start):
        end += 1
    while end > start and words[end - 1].tag in ("HYPH", "POS", "CD", "VBG"):
        end -= 1
    return end


def _is_part(word: Word, *, first: bool) -> bool:
    """Whether a word can stand in an open phrase; after its first word no silence may."""
    if word.tag not in PART_TAGS or not word.norm or word.norm in CONTAINERS or word.norm in GRADERS:
        return False
    return first or word.pause <= SHORT_PAUSE_MS


def _may_describe(head: Word) -> bool:
    """Whether the last word of a phrase may name something perceived."""
    return head.norm not in IDLE and head.norm not in GRADERS and head.norm.isalpha() and len(head.norm) > 2


def _is_quality(head: Word) -> bool:
    """After a bare `it's`, only what looks like a quality or a substance: `it's slippy`, not `it's a car`."""
    return head.tag == "JJ" and head.norm.endswith(("y", "ish", "like")) and len(head.norm) > 4
