"""Is it there?

A negation reaches forward a few words and no further than its clause; it is ended by a comma or a contrast, carried on by
`or`, undone by `only` and weakened, not turned, by `very`. What is asked, wished for or expected is no perception.
"""

from collections.abc import Sequence
from typing import NamedTuple

from notesmith.listening.hearing import Clause, Description, Hearing, Word
from notesmith.listening.vocabulary import DETERMINERS, GRADERS
from notesmith.records import Presence

REACH = 9
DENIES = frozenset(
    "no not n't nt never none neither nor without nothing zero cannot lacks lack lacking isnt dont doesnt didnt cant "
    "wasnt aint havent".split()
)
UNDONE_AFTER = frozenset(
    "only just bad doubt question sure wonder mention surprise mind problem surprisingly unlike wrong necessarily "
    "sugar rush know like shortage".split()
)
WEAKENED = frozenset(
    "very too that so overly super particularly much really especially terribly massively hugely all exactly quite "
    "entirely totally completely".split()
)
EXPECTS = frozenset("expected expecting expect hoped hoping hope wish wished wanted promised promises supposed".split())
UNSURE = frozenset("maybe perhaps possibly might could wonder whether guess".split())
UNSURE_PHRASES = (("want", "to", "say"), ("not", "sure"), ("n't", "know"), ("is", "it"), ("or", "is"), ("was", "it"), ("is", "that"))
GONE = frozenset("gone missing vanished disappeared absent lost nowhere".split())
LOSES = frozenset("lost lose loses losing".split())


class Reading(NamedTuple):
    """How a description reads: present, absent or uncertain; graded down by its negation; or no perception at all."""

    presence: Presence
    weakened: bool
    refused: str  # why it is no perception; empty where it is one
    rule: str
    at: int  # the word that decided; -1 for none


PLAIN = Reading("present", False, "", "nothing denies it", -1)


def read_presence(hearing: Hearing, description: Description, clause: Clause) -> Reading:
    """Read a description's clause for denial, doubt, wish and question."""
    words = hearing.words
    left = range(description.start - 1, max(clause.start, description.start - REACH - 6) - 1, -1)
    refused = _refused(words, left, clause, description)
    if refused:
        return refused
    return (
        _denied_before(words, left, description)
        or _denied_after(words, description, clause)
        or _doubted(words, description, clause)
        or PLAIN
    )


def _refused(words: list[Word], left: Sequence[int], clause: Clause, description: Description) -> Reading | None:
    for i in left:
        if words[i].norm in EXPECTS:
            return Reading("present", False, "expected or wished for, not perceived", "expectation", i)
    if clause.asks and _asks_somebody(words, clause, description.start):
        return Reading("present", False, "asked about, not perceived", "question", clause.start)
    return None


def _asks_somebody(words: list[Word], clause: Clause, before: int) -> bool:
    """Whether the clause begins as a question; one after the description (`isn't it?`) asks for assent only."""
    norms = [w.norm for w in words[clause.start : min(clause.start + 6, before)]]
    return any(a in ("do", "did", "does", "can", "could", "are", "would", "is", "have", "what", "how", "why") and b in (
        "you", "anyone", "anybody", "we", "they", "there", "i", "n't"
    ) for a, b in zip(norms, norms[1:], strict=False))


def _denied_before(words: list[Word], left: Sequence[int], description: Description) -> Reading | None:
    steps, through_or = 0, _or_follows(words, description)
    for i in left:
        norm = words[i].norm
        if norm in DENIES:
            return _denial(words, i, description)
        if norm in LOSES:
            return Reading("absent", False, "", "lost", i)
        if norm in ("hardly", "barely", "scarcely"):
            return Reading("present", True, "", "hardly any", i)
        if norm in ("or", "nor"):
            through_or = True
        elif norm in (",", ":", "``", "''") and not through_or or norm in ("and", "but", "just", "more", "lots", "loads", "plenty"):
            if norm != "more":
                return None
        steps += norm not in DETERMINERS and norm not in GRADERS
        if steps > REACH:
            return None
    return None


def _or_follows(words: list[Word], description: Description) -> bool:
    """Whether the description stands in a list that `or` ends (`no smoke, leather or honey`)."""
    return any(w.norm == "or" for w in words[description.end : description.end + 2])


def _denial(words: list[Word], i: int, description: Description) -> Reading | None:
    """What a negation at `i` does to the description after it."""
    after = words[i + 1].norm if i + 1 < len(words) else ""
    before = words[i - 1].norm if i else ""
    if after in UNDONE_AFTER and i + 1 < description.start:
        if after == "sure" or (after == "know" and words[i].norm in ("n't", "nt", "not")):
            return Reading("uncertain", False, "", "not sure", i)
        return None
    if before in ("no", "not", "n't", "nt") and words[i].norm in ("without", "lack", "lacking"):
        return None  # denied twice
    if words[i].norm == "nothing" and after in ("but", "like"):
        return None
    if words[i].norm == "no" and after in (",", ".", "it", "i", "that", "this", "but", "no", "the"):
        return None  # an answer, not a determiner
    if before in ("almost", "nearly", "virtually", "practically"):
        return Reading("present", True, "", "almost none", i)
    if _is_tag_question(words, i):
        return None
    if words[i].norm in ("not", "n't", "nt", "isnt", "no") and any(w.norm in WEAKENED for w in words[i + 1 : description.start]):
        if not any(w.norm in ("at", "any") for w in words[i + 1 : description.start]):
            return Reading("present", True, "", "not very", i)
    if after == "a" and i + 2 < len(words) and words[i + 2].norm in ("lot", "huge", "massive", "great", "ton"):
        return Reading("present", True, "", "not a lot", i)
    return Reading("absent", False, "", "denied", i)


def _is_tag_question(words: list[Word], i: int) -> bool:
    """`isn't it`, `there's smoke, isn't there`: asks for assent, denies nothing; `the smoke isn't there` does."""
    after = words[i + 1].norm if i + 1 < len(words) else ""
    if after == "there" and not any(w.norm in ("there", "theres") for w in words[max(0, i - 8) : i]):
        return False
    return words[i].norm in ("n't", "nt") and after in ("it", "there", "they", "you")


def _tag_question_follows(words: list[Word], description: Description, clause: Clause) -> bool:
    return any(_is_tag_question(words, i) for i in range(description.end, min(clause.end, description.end + 4)))


def _denied_after(words: list[Word], description: Description, clause: Clause) -> Reading | None:
    end = description.end
    stop = min(clause.end, end + 7)
    for i in range(end, stop):
        norm = words[i].norm
        if norm in GONE and any(w.norm in ("'s", "is", "has", "had", "'d", "have", "'ve", "all", "was", "are") for w in words[end:i]):
            return Reading("absent", False, "", "gone", i)
        if norm in ("not", "n't", "nt", "never") and not _is_tag_question(words, i):
            then = {w.norm for w in words[i + 1 : i + 5]}
            if then & {"get", "getting", "there", "find", "finding", "here", "taste", "see", "have", "got"}:
                return Reading("absent", False, "", "not found", i)
            return None
        if norm in ("no", "none", "nope", "zero") and i <= end + 1 and (i + 1 >= len(words) or words[i + 1].norm in (
            ",", ".", "not", "none", "no", "whatsoever", "at", "i"
        )):
            return Reading("absent", False, "", "answered no", i)
    return None


def _doubted(words: list[Word], description: Description, clause: Clause) -> Reading | None:
    start = max(clause.start, description.start - 7)
    for i in range(start, description.start):
        if words[i].norm in UNSURE:
            return Reading("uncertain", False, "", "hedged", i)
    if clause.asks and not _tag_question_follows(words, description, clause):
        return Reading("uncertain", False, "", "asked of oneself", clause.start)
    norms = tuple(w.norm for w in words[start : min(clause.end + 3, description.end + 5)])
    for k in range(len(norms) - 2):
        if norms[k : k + 3] == ("want", "to", "say"):
            return Reading("uncertain", False, "", "wants to say", start + k)
    tail = [w.norm for w in words[description.end : description.end + 4] if w.norm != ","]
    if tail[:2] in (["is", "it"], ["is", "that"], ["maybe", "."], ["maybe", "?"], ["perhaps", "."]):
        return Reading("uncertain", False, "", "asked after", description.end)
    return None
