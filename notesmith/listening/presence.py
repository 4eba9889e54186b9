"""Is it there?

A negation reaches forward a few words and no further than its clause; it is ended by a comma or a contrast, carried on
by `or`, undone by `only` and weakened, not turned, by `very`. What is asked, wished for or expected is no perception.
"""

from itertools import pairwise
from typing import NamedTuple

from notesmith.listening.hearing import Clause, Description, Hearing
from notesmith.listening.vocabulary import DETERMINERS, GRADERS
from notesmith.records import Presence

REACH = 9
AFTER = 7  # words after a description that may deny it
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
WEAKENABLE = frozenset("not n't nt isnt no".split())
EXPECTS = frozenset("expected expecting expect hoped hoping hope wish wished wanted promised promises supposed".split())
UNSURE = frozenset("maybe perhaps possibly might could wonder whether guess".split())
GONE = frozenset("gone missing vanished disappeared absent lost nowhere".split())
LOSES = frozenset("lost lose loses losing".split())
HARDLY = frozenset("hardly barely scarcely".split())
ALMOST = frozenset("almost nearly virtually practically".split())
NOT = frozenset("not n't nt never".split())
# After `no`, what shows that it answers and determines nothing.
ANSWERED = frozenset(", . it i that this but no the".split())
MUCH = frozenset("lot huge massive great ton".split())
ENDS = frozenset("and but just lots loads plenty".split())
PAUSES = frozenset([",", ":", "``", "''"])
LIGHT = DETERMINERS | GRADERS  # words that take nothing from a negation's reach
AUXILIARIES = frozenset("'s is has had 'd have 've all was are".split())
FINDS = frozenset("get getting there find finding here taste see have got".split())
ANSWERS = frozenset("no none nope zero".split())
NEGATES = DENIES | LOSES | HARDLY
DENIES_AFTER = GONE | NOT | ANSWERS
THERE = frozenset(["there", "theres"])
AFTER_ANSWER = frozenset(", . not none no whatsoever at i".split())
ASKING = frozenset("do did does can could are would is have what how why".split())
ASKED = frozenset("you anyone anybody we they there i n't".split())
SELF_ASKED = (("is", "it"), ("is", "that"), ("maybe", "."), ("maybe", "?"), ("perhaps", "."))
TURNS_BEFORE = NEGATES | EXPECTS | UNSURE | {"want"}
TURNS_AFTER = DENIES_AFTER | {"want"} | {first for first, _ in SELF_ASKED}


class Reading(NamedTuple):
    """How a description reads: present, absent or uncertain; graded down by its negation; or no perception at all."""

    presence: Presence
    weakened: bool
    refused: str  # why it is no perception; empty where it is one
    rule: str
    at: int  # the word that decided; -1 for none


PLAIN = Reading("present", False, "", "nothing denies it", -1)


def _absent(rule: str, at: int) -> Reading:
    return Reading("absent", False, "", rule, at)


def _weakened(rule: str, at: int) -> Reading:
    return Reading("present", True, "", rule, at)


def _uncertain(rule: str, at: int) -> Reading:
    return Reading("uncertain", False, "", rule, at)


def _no_perception(why: str, rule: str, at: int) -> Reading:
    return Reading("present", False, why, rule, at)


def read_presence(hearing: Hearing, description: Description, clause: Clause) -> Reading:
    """Read a description's clause for denial, doubt, wish and question."""
    norms = hearing.meant
    left = range(description.start - 1, max(clause.start, description.start - REACH - 6) - 1, -1)
    if not clause.asks and _is_plain(norms, left.stop + 1, description):
        return PLAIN
    return (
        _refused(norms, left, clause, description)
        or _denied_before(norms, left, description)
        or _denied_after(norms, description, clause)
        or _doubted(norms, description, clause)
        or PLAIN
    )


def _is_plain(norms: list[str], first: int, description: Description) -> bool:
    """Whether no word before or after a description can change its reading: most are plain, and this is told fast."""
    after = norms[description.start : description.end + AFTER]
    return TURNS_BEFORE.isdisjoint(norms[first : description.start]) and TURNS_AFTER.isdisjoint(after)


def _refused(norms: list[str], left: range, clause: Clause, description: Description) -> Reading | None:
    """What is wished for or asked of somebody was not perceived."""
    if not EXPECTS.isdisjoint(norms[left.stop + 1 : description.start]):
        wish = next(i for i in left if norms[i] in EXPECTS)
        return _no_perception("expected or wished for, not perceived", "expectation", wish)
    if clause.asks and _asks_somebody(norms, clause, description.start):
        return _no_perception("asked about, not perceived", "question", clause.start)
    return None


def _asks_somebody(norms: list[str], clause: Clause, before: int) -> bool:
    """Whether the clause begins as a question; one after the description (`isn't it?`) asks for assent only."""
    begun = norms[clause.start : min(clause.start + 6, before)]
    return any(a in ASKING and b in ASKED for a, b in pairwise(begun))


def _denied_before(norms: list[str], left: range, description: Description) -> Reading | None:
    """What the nearest negation before the description makes of it."""
    i = _negation_before(norms, left, description)
    if i is None or norms[i] in DENIES:
        return None if i is None else _denial(norms, i, description)
    return _absent("lost", i) if norms[i] in LOSES else _weakened("hardly any", i)


def _negation_before(norms: list[str], left: range, description: Description) -> int | None:
    """The nearest negation that reaches the description."""
    if NEGATES.isdisjoint(norms[left.stop + 1 : description.start]):
        return None
    steps, through_or = 0, _or_follows(norms, description)
    for i in left:
        norm = norms[i]
        if norm in NEGATES:
            return i
        through_or = through_or or norm == "or"
        steps += norm not in LIGHT
        if norm in ENDS or (norm in PAUSES and not through_or) or steps > REACH:
            return None
    return None


def _or_follows(norms: list[str], description: Description) -> bool:
    """Whether the description stands in a list that `or` ends (`no smoke, leather or honey`)."""
    return "or" in norms[description.end : description.end + 2]


def _denial(norms: list[str], i: int, description: Description) -> Reading | None:
    """What a negation at `i` does to the description after it."""
    after = norms[i + 1]
    if after in UNDONE_AFTER and i + 1 < description.start:
        unsure = after == "sure" or (after == "know" and norms[i] in ("n't", "nt", "not"))
        return _uncertain("not sure", i) if unsure else None
    if _denies_nothing(norms, i) or _is_tag_question(norms, i):
        return None
    return _denied_in_part(norms, i, description.start) or _absent("denied", i)


def _denies_nothing(norms: list[str], i: int) -> bool:
    """Whether a negation is itself denied (`not without`), is none (`nothing but`) or answers (`no, it …`)."""
    before, now, after = norms[i - 1] if i else "", norms[i], norms[i + 1]
    return (
        (before in ("no", "not", "n't", "nt") and now in ("without", "lack", "lacking"))
        or (now == "nothing" and after in ("but", "like"))
        or (now == "no" and after in ANSWERED)
    )


def _denied_in_part(norms: list[str], i: int, start: int) -> Reading | None:
    """`Almost no smoke`, `not very smoky`, `not a lot of smoke`: little of it, not none."""
    between = set(norms[i + 1 : start])
    if i and norms[i - 1] in ALMOST:
        return _weakened("almost none", i)
    if norms[i] in WEAKENABLE and between & WEAKENED and not between & {"at", "any"}:
        return _weakened("not very", i)
    if norms[i + 1] == "a" and i + 2 < len(norms) and norms[i + 2] in MUCH:
        return _weakened("not a lot", i)
    return None


def _is_tag_question(norms: list[str], i: int) -> bool:
    """`isn't it`, `there's smoke, isn't there`: asks for assent, denies nothing; `the smoke isn't there` does."""
    after = norms[i + 1] if i + 1 < len(norms) else ""
    if after == "there" and THERE.isdisjoint(norms[max(0, i - 8) : i]):
        return False
    return norms[i] in ("n't", "nt") and after in ("it", "there", "they", "you")


def _tag_question_follows(norms: list[str], description: Description, clause: Clause) -> bool:
    return any(_is_tag_question(norms, i) for i in range(description.end, min(clause.end, description.end + 4)))


def _denied_after(norms: list[str], description: Description, clause: Clause) -> Reading | None:
    """What follows the description may deny it: `the smoke has gone`, `smoke, I don't get`, `smoke? No`."""
    end, stop = description.end, min(clause.end, description.end + AFTER)
    if DENIES_AFTER.isdisjoint(norms[end:stop]):
        return None
    for i in range(end, stop):
        if norms[i] in GONE and not AUXILIARIES.isdisjoint(norms[end:i]):
            return _absent("gone", i)
        if norms[i] in NOT and not _is_tag_question(norms, i):
            lost = FINDS.isdisjoint(norms[i + 1 : i + 5])
            return None if lost else _absent("not found", i)
        if i <= end + 1 and _answers_no(norms, i):
            return _absent("answered no", i)
    return None


def _answers_no(norms: list[str], i: int) -> bool:
    """Whether a word says no by itself, and is not the `no` of something else."""
    return norms[i] in ANSWERS and (i + 1 >= len(norms) or norms[i + 1] in AFTER_ANSWER)


def _doubted(norms: list[str], description: Description, clause: Clause) -> Reading | None:
    """Whether somebody wonders: `maybe smoke`, `I want to say smoke`, `smoke, is it`."""
    start = max(clause.start, description.start - 7)
    if not UNSURE.isdisjoint(norms[start : description.start]):
        return _uncertain("hedged", next(i for i in range(start, description.start) if norms[i] in UNSURE))
    if clause.asks and not _tag_question_follows(norms, description, clause):
        return _uncertain("asked of oneself", clause.start)
    stop = min(clause.end + 3, description.end + 5)
    if "want" in norms[start:stop]:
        said = next((i for i in range(start, stop - 2) if norms[i : i + 3] == ["want", "to", "say"]), None)
        if said is not None:
            return _uncertain("wants to say", said)
    tail = tuple(norm for norm in norms[description.end : description.end + 4] if norm != ",")
    return _uncertain("asked after", description.end) if tail[:2] in SELF_ASKED else None
