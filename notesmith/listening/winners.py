"""Which sample won, where the captions may misprint its name: the reveal tells of the winner first."""

from collections.abc import Iterable, Iterator

from notesmith.listening.hearing import Hearing, Word
from notesmith.listening.names import tokens_of
from notesmith.listening.sounding import Sound, joined, likeness

LATE = 0.4  # of the talk; what is picked before is no verdict
TELLS = 40  # words from `overall` or `the winner` to its name
CALLS = frozenset("overall winner champion favourite favorite cup".split())
CALLED = 10  # the same where the name is printed rightly
WINNING = CALLS - {"cup"}
COPULAS = frozenset("is 's".split())
GOES = frozenset("goes go went going".split())
NAMING = frozenset(["NN", "JJ", "DT"])
ALIKE, APART = 0.62, 0.07
Verdict = tuple[int, str]  # the word at which it stands, and the sample it picks


def find_winner(hearing: Hearing, openings: Iterable[int] = ()) -> Verdict | None:
    """The last verdict before something that tells is opened; where nothing is, the last of all."""
    first = max(1, int(len(hearing.words) * LATE))
    told = [(p.start, p.preferred) for p in hearing.preferences if p.scope == "overall" and p.start >= first]
    verdicts = sorted([*told, *_called(hearing, first), *_misprinted(hearing, first)])
    last = max(openings, default=0)
    return max((v for v in verdicts if v[0] < last), default=max(verdicts, default=None))


def _called(hearing: Hearing, first: int) -> Iterator[Verdict]:
    """Where a sample is said to be the winner (`the winner, by a nose, is heron`)."""
    for mention in hearing.mentions:
        if mention.start > first and mention.kind == "name" and len(mention.samples) == 1:
            at = _leads(hearing.words, mention.start)
            if at and not WINNING.isdisjoint(w.norm for w in hearing.words[max(first, at - CALLED) : at]):
                yield mention.start, mention.samples[0]


def _misprinted(hearing: Hearing, first: int) -> Iterator[Verdict]:
    """Where the winner is called by what sounds like a sample's name."""
    words, names, called = hearing.words, spoken_names(hearing), -TELLS
    taken = {i for m in hearing.mentions if m.kind == "name" for i in range(m.start, m.end)}
    for i in range(first, len(words) - 2):
        called = i if words[i].norm in CALLS else called
        named = i - called < TELLS and i not in taken and words[i].tag[:2] in NAMING and _leads(words, i)
        found = sounding_sample(words, i, names, ALIKE) if named else None
        if found:
            yield i, found[0]


def _leads(words: list[Word], i: int) -> int:
    """Where `is` or `goes to` stands right before a name; 0 where neither does."""
    at = i - 1 - (words[i - 1].norm == "the")
    goes = words[at].norm == "to" and words[at - 1].norm in GOES
    return at if goes or words[at].norm in COPULAS else 0


def spoken_names(hearing: Hearing) -> list[tuple[str, Sound]]:
    """The samples' names of four letters and more."""
    texts = ((s.id, text) for s in hearing.sheet.samples for text in (s.id, *s.aliases))
    spoken = ((sample, [w for w in tokens_of(text) if w != "the"]) for sample, text in texts)
    return [(sample, joined(words)) for sample, words in spoken if len("".join(words)) > 3]


def sounding_sample(words: list[Word], i: int, names: list[tuple[str, Sound]], bar: float) -> tuple[str, int] | None:
    """The sample that one or two words sound like, clearly more than any other, and where they end."""
    heard = {n: joined(w.norm for w in words[i : i + n]) for n in (1, 2)}
    best: dict[str, tuple[float, int]] = {}
    for sample, sound in names:
        best[sample] = max(best.get(sample, (0.0, 0)), *((likeness(h, sound), -n) for n, h in heard.items()))
    ranked = sorted(best, key=lambda s: best[s], reverse=True)
    if len(ranked) < 2 or best[ranked[0]][0] < bar or best[ranked[0]][0] - best[ranked[1]][0] < APART:
        return None
    return ranked[0], i - best[ranked[0]][1]
