"""Which sample won, where the captions may misprint its name: the reveal tells of the winner first."""

from notesmith.listening.hearing import Hearing, Word
from notesmith.listening.names import tokens_of
from notesmith.listening.sounding import Sound, joined, likeness

LATE = 0.4  # of the talk; what is picked before is no verdict
TELLS = 40  # words from `overall` or `the winner` to its name
CALLS = frozenset("overall winner champion favourite favorite cup".split())
CALLED = 10  # the same where the name is printed rightly
WINNING = CALLS - {"cup"}
COPULAS = frozenset("is 's goes to".split())
BEFORE = frozenset("is 's the to".split())
ALIKE, APART = 0.62, 0.07


def find_winner(hearing: Hearing) -> tuple[int, str | None]:
    """The word at which the last verdict stands, and the sample it picks; 0 and None where there is none."""
    first = int(len(hearing.words) * LATE)
    overall = [p for p in hearing.preferences if p.scope == "overall" and p.start >= first]
    verdict = (overall[-1].start, overall[-1].preferred) if overall else (0, None)
    called = _called(hearing, max(first, verdict[0])) or verdict
    return _misprinted(hearing, max(first, called[0])) or called


def _called(hearing: Hearing, first: int) -> tuple[int, str] | None:
    """The last place after word `first` where a sample is said to be the winner (`the winner, by a nose, is heron`)."""
    words, last = hearing.words, None
    for mention in hearing.mentions:
        at = mention.start - (words[mention.start - 1].norm == "the")
        before = {w.norm for w in words[max(first, at - CALLED) : at]}
        if mention.kind == "name" and len(mention.samples) == 1 and at > first and words[at - 1].norm in COPULAS:
            last = (mention.start, mention.samples[0]) if before & WINNING else last
    return last


def _misprinted(hearing: Hearing, first: int) -> tuple[int, str] | None:
    """The last place after word `first` where the winner is called by what sounds like a sample's name."""
    words, names = hearing.words, spoken_names(hearing)
    last, called = None, -TELLS
    taken = {i for m in hearing.mentions if m.kind == "name" for i in range(m.start, m.end)}
    for i in range(max(first, 1), len(words) - 2):
        called = i if words[i].norm in CALLS else called
        names_it = words[i - 1].norm in BEFORE and words[i].tag[:2] in ("NN", "JJ", "DT")
        if names_it and i not in taken and i - called < TELLS:
            found = sounding_sample(words, i, names, ALIKE)
            last = (i, found[0]) if found else last
    return last


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
