"""Where is a sample called by its name, to be told what it is? Common words name one only in a calling place."""

from notesmith.listening.hearing import Hearing, Mention, Word
from notesmith.listening.siding import short_names
from notesmith.listening.slips import misprinted_calls

COPULAS = frozenset("is 's was are were 're be equals".split())
LEADS = frozenset(
    ". , ! : \" “ ” ' and so then okay right now next leaves makes means under is was that the in or".split()
)
FOLLOWS = COPULAS | frozenset(". , : has says turns had goes o'clock".split())
IN_A_ROW = frozenset("and the ,".split())
LEFT = frozenset("makes leaves leaving".split())


def find_calls(hearing: Hearing, first: int, openings: list[int], reach: int) -> list[Mention]:
    """Where samples are called by their names, in order."""
    words = hearing.words
    named = [m for m in hearing.mentions if m.start >= first and m.kind in ("name", "ordinal")]
    short = [
        m for m, _ in short_names(hearing)
        if max(first, 1) <= m.start < len(words) - 1
        and _calls_out([w.norm for w in words[max(0, m.start - 2) : m.end + 1]])
    ]  # fmt: skip
    return with_misprinted(hearing, [*named, *short], openings, reach)


def with_misprinted(hearing: Hearing, calls: list[Mention], openings: list[int], reach: int) -> list[Mention]:
    """The calls, and those by a misprinted name soon after one of the openings, in order."""
    misread = (m for m in misprinted_calls(hearing, openings, reach) if m not in calls)
    return sorted([*calls, *misread], key=lambda m: m.start)


def _calls_out(around: list[str]) -> bool:
    """Whether a common word stands as a sample's name does where it is called (`so glass is`, `that leaves blank,`)."""
    *_, before, name, after = around
    if len(name) == 1:
        return before in LEADS and after in COPULAS
    return after in COPULAS or (before in LEADS and after in FOLLOWS) or not LEFT.isdisjoint(around[:-2])


def row_from(words: list[Word], calls: list[Mention], k: int) -> tuple[tuple[str, ...], Mention]:
    """The samples named together (`the first and the third`), and the last of their mentions."""
    samples, last = calls[k].samples, calls[k]
    for following in calls[k + 1 :]:
        if last.end >= following.start or words[last.end].norm not in IN_A_ROW:
            break
        between = {w.norm for w in words[last.end : following.start]}
        if "and" not in between or not between <= IN_A_ROW:
            break
        samples, last = samples + following.samples, following
    return samples, last
