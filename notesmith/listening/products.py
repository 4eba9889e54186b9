"""Which words name products: proper names, and the lexicon's products, places, plants and pickings."""

from collections.abc import Iterator

from notesmith.listening.hearing import Hearing, Word
from notesmith.listening.suspects import is_english
from notesmith.listening.vocabulary import FILLERS, GRADERS, LIKING, NEGATORS, NOUNS

SORTS = frozenset(["product", "origin", "cultivar", "harvest"])
STOPS = frozenset("i we he she they you but because so well which who if when where there ? plucked picked".split())
NO_NAME = (
    LIKING
    | GRADERS
    | FILLERS
    | frozenset(
        "june july january february march april may august september october november december monday tuesday "
        "wednesday thursday friday saturday sunday one ones it that this "
        "called named thing things cup cups glass winner loser paper list name price prizes prize surprise surprises "
        "final answer ha hm hmm yep yeah yes no okay ok right god man mate love please sorry lot way side year month "
        "place tea half coffee wine pound pounds euro euros dollar dollars quid rand bottle bag tin packet guess "
        "envelope "
        "idea o'clock got had been nothing nobody".split()
    )
)
JOINING = frozenset(["NN", "NNS", "NNP", "NNPS", "JJ", "VBN", "VBD", "HYPH", "FW"])
PROPER = frozenset(["NNP", "NNPS"])
LINKING = frozenset("mostly all pure it that 's is the a called , from".split())
PICKINGS = frozenset("pick picking flush harvest crop batch cask vintage edition release press roast".split())
SENTENCE_ENDS = frozenset('. ! ? : ... … " “ ” ( -'.split())
TELLING = frozenset(
    "says said told wrote writes put puts picked poured set asked thinks knows brought handed weighed hid texted "
    "brewed labelled wrapped made laughs".split()
)
KIN = frozenset(
    "brother sister wife husband partner friend mate flatmate roommate neighbour neighbor son daughter mother father "
    "mum mom dad cousin uncle aunt nephew niece colleague".split()
)


def known_words(hearing: Hearing, first: int = 0) -> bytearray:
    """Mark the words, from word `first` on, that belong to names of products and are no sample's own name."""
    known = _proper(hearing)
    for start, end, label in hearing.known:
        sort = hearing.lexicon.concepts[label.concept].sort
        for i in range(start, end) if start >= first and (sort in SORTS or sort == "descriptor") else ():
            known[i] = 2 if known[i] == 2 else sort in SORTS
    _forget_people(hearing, known)
    for mention in hearing.mentions:
        if mention.kind == "name":
            known[mention.start : mention.end] = bytes(mention.end - mention.start)
    return known


def _proper(hearing: Hearing) -> bytearray:
    """Marks proper names with 1; with 2 where a capital inside a sentence makes sure of it."""
    words, known = hearing.words, bytearray(len(hearing.words))
    for i in hearing.tagged(PROPER):
        known[i] = words[i].norm not in NO_NAME
    if hearing.talk.text.islower():
        for i in hearing.tagged(NOUNS):
            known[i] = known[i] or _is_rare(words[i].norm)
        return known
    for i in reversed(hearing.capitals):
        if not i or words[i].tag == "PRP":
            continue
        inside = words[i - 1].norm not in SENTENCE_ENDS
        if words[i].norm in NO_NAME and not (inside and words[i].norm in GRADERS and known[i + 1 : i + 2] == b"\2"):
            continue
        if inside or (i + 1 < len(words) and known[i + 1] == 2 and words[i].tag[:2] in ("NN", "JJ", "VB")):
            known[i] = 2
    return known


def _is_rare(norm: str) -> bool:
    """Whether a word is so rare that it may be a name where no capital tells."""
    return len(norm) > 4 and not is_english(norm)


def _forget_people(hearing: Hearing, known: bytearray) -> None:
    """Whoever tells, pours or is somebody's brother is no product."""
    before, after = (i - 1 for i in hearing.places(TELLING)), (i + 1 for i in hearing.places(KIN))
    people = [i for i in (*before, *after) if 0 < i < len(known) - 1 and known[i]]
    for i in hearing.places({hearing.meant[i] for i in people}):
        known[i] = 0


def phrases(words: list[Word], at: int, limit: int, known: bytearray) -> Iterator[tuple[int, int]]:
    """The noun phrases from word `at` on, until the talk turns to something else."""
    i = at
    while i < limit and (words[i].norm not in STOPS or known[i]):
        end = phrase_end(words, i, limit, known)
        if end > i and words[i - 1].norm not in NEGATORS:
            yield i, end
        i = max(end, i + 1)


def phrase_end(words: list[Word], start: int, limit: int, known: bytearray) -> int:
    """Where the phrase that begins at `start` ends; at `start` where none begins."""
    end = start
    while end < limit and (known[end] or may_join(words[end]) or ties(words, end, start, limit, known)):
        end += 1
    while end > start and not (known[end - 1] or words[end - 1].tag in NOUNS):
        end -= 1
    whole = start < end < limit - 1 and words[end].norm == "'s" and known[end - 1] == 2
    return end + 1 if whole and words[end + 1].norm in SENTENCE_ENDS | {","} else end


def phrase_start(words: list[Word], end: int, first: int, known: bytearray) -> int:
    """Where the phrase that ends before `end` begins; at `end` where none does."""
    start = end
    while start > first:
        i = start - 1
        if not (known[i] or may_join(words[i]) or ties(words, i, first, end, known)):
            break
        start = i
    return start


def ties(words: list[Word], i: int, first: int, limit: int, known: bytearray) -> bool:
    """Whether an apostrophe or a small word stands inside a name (`Abbot's Kiln`, `Hook and Line`)."""
    sure = 1 if words[i].norm == "'s" else 2
    inside = words[i].norm in ("'s", "and", "&", "of") and first < i < limit - 1
    return inside and known[i - 1] >= sure and known[i + 1] >= sure


def may_join(word: Word) -> bool:
    """Whether a word can stand in a product's name beside words that do name one."""
    return (
        word.norm not in NO_NAME
        and word.tag in ("NN", "NNS", "JJ", "VBN", "VBD", "HYPH", "FW", "NNP", "NNPS")
        and bool(word.norm)
    )


def with_apposition(words: list[Word], end: int, limit: int, known: bytearray) -> int:
    """Take in what stands beside the name (`Assam, second flush`; `a stout, that's Hill Top`), if it is a name too."""
    if end >= limit or words[end].norm not in (",", "."):
        return end
    told = next((k for k in range(end + 1, min(limit, end + 4)) if words[k].norm in PICKINGS), None)
    if told and words[end].norm == "," and words[end + 1].tag in ("JJ", "CD", "NN", "NNP") and told > end + 1:
        return told + 1
    start = next((k for k in range(end + 1, limit) if words[k].norm not in LINKING), limit)
    sure = start < limit and (known[start] == 2 or (known[start] and start - end < 3 and words[end].norm == ","))
    if not sure or start - end > 5 or words[start].norm == words[end - 1].norm:
        return end
    beside = phrase_end(words, start, limit, known)
    return beside if all(known[start:beside]) else end  # what goes on in other words is no name


def as_meant(hearing: Hearing, start: int, end: int) -> str:
    """The words of a stretch as meant: a repaired one by its repair, the others as printed; `that's the` left out."""
    text, last, beside = "", start, False
    for i in range(start, end):
        word = hearing.words[i]
        if word.norm in (",", "."):
            beside, text = True, text.rstrip(",") + ","
        elif word.norm and not (beside and word.norm in LINKING):
            printed = hearing.said(i, i + 1)
            apart = " " if text and (beside or word.start > hearing.words[last].end) else ""
            text += apart + (printed if printed.lower() == word.norm else word.norm)
            beside = False
        last = i
    return text
