"""Which words describe?

Two kinds are heard: words the lexicon knows, and open ones that stand where a description stands
(`like wet slate`, `a hint of …`, `I'm getting …`, `a … note`). Whether a description is a perception is asked later.
"""

from collections.abc import Iterator

from notesmith.lexicon import Hit, Label
from notesmith.listening.hearing import Description, Hearing, Word
from notesmith.listening.vocabulary import (
    ADJECTIVES, BE, CONTAINERS, DETERMINERS, FILLERS, GRADERS, LIKING, NOUNS,
)  # fmt: skip

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
PART_NOUNS = frozenset(
    "inside skin skins smell edge bottom end back side peel leaf stem shell bag box cup bowl jar".split()
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


def find_descriptions(hearing: Hearing) -> None:
    """Find the stretches that may describe, the lexicon's first, then open ones where nothing else stands."""
    known = _known(hearing)
    taken = bytearray(len(hearing.words))
    for mending in hearing.mendings:
        if mending.sample:
            taken[mending.start : mending.end] = b"\1" * (mending.end - mending.start)
    for mention in hearing.mentions:
        if mention.kind == "name":
            taken[mention.start : mention.end] = b"\1" * (mention.end - mention.start)
    found: list[Description] = []
    for description in (*known, *_open(hearing)):
        if not any(taken[description.start : description.end]):
            taken[description.start : description.end] = b"\1" * (description.end - description.start)
            found.append(description)
    hearing.descriptions = sorted(found, key=lambda d: d.start)


def _known(hearing: Hearing) -> Iterator[Description]:
    """The lexicon's words, each grown to the whole phrase it stands in."""
    at = [i for i, word in enumerate(hearing.words) if word.norm]
    texts = [hearing.words[i].norm for i in at]
    hits = [hit for hit in hearing.lexicon.match(texts) if _is_sensory(hearing, hit.label)]
    limit = 0
    for k, hit in enumerate(hits):
        start, end = at[hit.start], at[hit.end - 1] + 1
        if start < limit:
            continue
        label = hit.label
        start = _grow_left(hearing.words, max(limit, 0), start, end)
        end, label = _grow_right(hearing, hits[k + 1 :], at, end, label)
        limit = end
        yield Description(start, end, label, "lexicon", _container_after(hearing.words, end))


def _is_sensory(hearing: Hearing, label: Label) -> bool:
    return hearing.lexicon.concepts[label.concept].sort == "descriptor"


def _grow_left(words: list[Word], limit: int, start: int, end: int) -> int:
    """Take in the words before a noun that make a different thing of it (`baked sweet` potato), not graders."""
    if words[end - 1].tag not in NOUNS:
        return start
    grown = start
    while grown > limit:
        before = words[grown - 1]
        if before.tag not in ADJECTIVES and before.tag not in ("NN", "HYPH") or before.norm in GRADERS | FILLERS | IDLE:
            break
        if before.norm in CONTAINERS or before.norm in DETERMINERS or before.norm in GETS or before.pause > 300:
            break
        if before.tag == "VBG" and not _is_modifier(words, grown - 1):
            break
        grown -= 1
    return grown if words[grown].tag != "HYPH" else start


def _is_modifier(words: list[Word], i: int) -> bool:
    """A word in -ing that stands before a noun as an adjective does (`boiling sugar`), not as a verb (`getting sugar`)."""
    return i > 0 and words[i - 1].tag in ("DT", "JJ", "IN")


def _grow_right(hearing: Hearing, following: list[Hit], at: list[int], end: int, label: Label) -> tuple[int, Label]:
    """Take in the noun the word stands before (`vanilla` candle), unless it only carries it (`vanilla` note)."""
    words = hearing.words
    while end < len(words):
        word = words[end]
        joins = word.tag in NOUNS or (word.tag == "HYPH" and end + 1 < len(words) and words[end + 1].tag in NOUNS)
        if not joins or word.norm in CONTAINERS or word.norm in IDLE or word.pause > 300:
            break
        if word.norm in GRADERS or any(m.start == end and m.kind == "name" for m in ()):
            break
        hit = next((h for h in following if at[h.start] == end), None)
        if hit:
            end, label = at[hit.end - 1] + 1, hit.label
        else:
            end += 1
    return end, label


def _container_after(words: list[Word], end: int) -> int:
    """The container word a description stands before (`smoky` finish), or the one it is said of; else -1."""
    if end < len(words) and words[end].norm in CONTAINERS and words[end].pause < 300:
        return end
    return -1


def _open(hearing: Hearing) -> Iterator[Description]:
    """Open descriptions: a noun phrase, or an adjective, where a description stands."""
    words = hearing.words
    for i, word in enumerate(words):
        rule, at = _frame(words, i)
        if rule:
            yield from _phrases(words, at, rule)
        elif word.tag in ("NN", "JJ", "NNS") and i + 1 < len(words) and words[i + 1].norm in (
            "note", "notes", "flavour", "flavor", "aftertaste", "finish", "aroma", "taste", "smell", "thing",
        ) and _may_describe(words, i, i + 1):
            yield Description(_grow_left(words, 0, i, i + 1), i + 1, None, "before a carrying word", i + 1)


def _frame(words: list[Word], i: int) -> tuple[str, int]:
    """Whether a frame that calls for a description ends at word `i`; with its name, where the description begins."""
    now, before = words[i].norm, words[i - 1].norm if i else ""
    if now == "of" and before in MEASURES:
        return ("a measure of", i + 1)
    if now in ("like", "of") and before in SENSES:
        return ("tastes or smells of", i + 1)
    if now == "like" and (before in BE or before in ("almost", "bit", "something", "sort", "kind", ",", "it's", "just", "that")):
        return ("likened to", i + 1)
    if now in GETS and before in ("i", "you", "we", "'m", "'re", "'ve", "can", "i'm", "also", "still", "just", "definitely"):
        return ("getting", i + 1)
    if now in BE and before in ("it", "there", "that", "thats", "its", "theres"):
        return ("it is", i + 1)
    return ("", i)


def _phrases(words: list[Word], at: int, rule: str) -> Iterator[Description]:
    """The phrase at `at`, and those set beside it with commas and `and`."""
    first = True
    while at < len(words):
        at = _skip(words, at)
        start, end = at, _phrase_end(words, at)
        if end == start or not _may_describe(words, start, end):
            return
        if rule == "it is" and not _describes_alone(words, start, end):
            return
        yield Description(start, end, None, rule if first else "listed beside another", _container_after(words, end))
        first = False
        if end < len(words) and words[end].norm in (",", "and", "or", "&") and words[end].pause < 900:
            at = end + 1 + (end + 1 < len(words) and words[end + 1].norm in ("and", "or"))
        else:
            return


def _skip(words: list[Word], at: int) -> int:
    """Pass articles, graders and fillers."""
    while at < len(words) and (words[at].norm in DETERMINERS or words[at].norm in GRADERS or words[at].norm in FILLERS
                               or words[at].norm == "of"):  # fmt: skip
        at += 1
    return at


def _phrase_end(words: list[Word], start: int) -> int:
    """Where the noun phrase or the adjective that begins at `start` ends."""
    end = start
    while end < len(words) and end - start < 5:
        word = words[end]
        if word.tag not in NOUNS and word.tag not in ADJECTIVES and word.tag not in ("HYPH", "POS", "CD"):
            break
        if word.norm in CONTAINERS or word.norm in GRADERS or (end > start and word.pause > 300) or not word.norm:
            break
        end += 1
    while end > start and words[end - 1].tag in ("HYPH", "POS", "CD", "VBG"):
        end -= 1
    return end


def _may_describe(words: list[Word], start: int, end: int) -> bool:
    head = words[end - 1]
    return head.norm not in IDLE and head.norm not in GRADERS and head.norm.isalpha() and len(head.norm) > 2 and head.norm not in LIKING


def _describes_alone(words: list[Word], start: int, end: int) -> bool:
    """After a bare `it's`, only what looks like a quality or a substance: `it's slippy`, not `it's a car`."""
    head = words[end - 1]
    return head.tag == "JJ" and head.norm.endswith(("y", "ish", "like")) and len(head.norm) > 4
