"""Which is liked better? A ranking settles what is said within it; the last overall preference is the verdict."""

from collections.abc import Iterator
from dataclasses import replace

from notesmith.listening.facets import AROMA_SIGNS, FLAVOUR_SIGNS, LOOK_SIGNS
from notesmith.listening.hearing import Grounds, Hearing, Preferred
from notesmith.listening.names import tokens_of
from notesmith.listening.rankings import find_rankings
from notesmith.listening.scenes import STOPS
from notesmith.listening.siding import all_but, said_by
from notesmith.listening.verdicts import find_picks
from notesmith.listening.vocabulary import CONTAINERS
from notesmith.records import Intensity

FACETS = {
    **dict.fromkeys(AROMA_SIGNS, "aroma"), **dict.fromkeys(FLAVOUR_SIGNS, "flavour"),
    **dict.fromkeys(LOOK_SIGNS, "appearance"),
    **{word: facet for word, facet in CONTAINERS.items() if facet},
}  # fmt: skip
SCOPING = frozenset("for on in by".split())
NO_USE = frozenset(
    "now me us lot day money price table time sure once winner win today tonight order answer everyday".split()
)
FAR = frozenset(
    "easily easy far miles mile contest definitely hands question discussion doubt way much lot street close".split()
)
JUST = frozenset("just hair whisker narrowly slightly bit points barely".split())
LOOK_AROUND = 9  # words before a preference that tell its scope
WEAK = frozenset(["would take", "liked better", "the best", "the answer is", "better than", "put above"])
SAME = 12  # words within which the same sample picked again is the same preference


def find_preferences(hearing: Hearing) -> None:
    """Fill in the preferences, in the order they are said."""
    found = sorted([*_ranked(hearing), *_picked(hearing)], key=lambda p: (p.start, -p.end))
    kept: list[Preferred] = []
    for preference in found:
        if kept and _repeats(kept[-1], preference):
            kept[-1] = _fuller(kept[-1], preference)
        elif not _strays(hearing, kept, preference):
            kept.append(preference)
    hearing.preferences = kept


def _repeats(kept: Preferred, preference: Preferred) -> bool:
    """Inside another one, or the same sample again at once."""
    same = preference.preferred == kept.preferred and preference.scope == kept.scope
    return preference.start < kept.end or (same and preference.start - kept.end < SAME)


def _fuller(kept: Preferred, preference: Preferred) -> Preferred:
    """A ranking tells more than the pick that leads it (`for me it's X`, then the order)."""
    told = preference.grounds[0].rule == "ranking" != kept.grounds[0].rule and preference.preferred == kept.preferred
    return replace(preference, start=kept.start) if told else kept


def _strays(hearing: Hearing, kept: list[Preferred], preference: Preferred) -> bool:
    """A pick after a full ranking by the same taster is of another occasion, unless it says that it wins."""
    if preference.scope != "overall" or preference.grounds[0].rule not in WEAK or preference.taster is None:
        return False
    rankings = (p for p in reversed(kept) if p.grounds[0].rule == "ranking" and p.scope == "overall")
    last = next((p for p in rankings if p.taster == preference.taster), None)
    whole = last is not None and len(last.over) == len(hearing.sheet.samples) - 1
    return whole and last is not None and last.preferred != preference.preferred


def _ranked(hearing: Hearing) -> Iterator[Preferred]:
    for row in find_rankings(hearing):
        start = min(m.start for m, _ in row)
        end = max(m.end for m, _ in row)
        first, *rest = (sample for _, sample in row)
        yield _preference(hearing, start, end, first, tuple(rest), "ranking", 0.8)


def _picked(hearing: Hearing) -> Iterator[Preferred]:
    for pick in find_picks(hearing):
        over = pick.over or all_but(hearing, pick.sample)
        yield _preference(hearing, pick.start, pick.end, pick.sample, over, pick.rule, pick.score)


def _preference(
    hearing: Hearing, start: int, end: int, sample: str, over: tuple[str, ...], rule: str, score: float
) -> Preferred:
    return Preferred(
        start, end, sample, over, _scope(hearing, start, end, rule), _degree(hearing, start, end),
        said_by(hearing, start), score, (Grounds(rule, start, end),),
    )  # fmt: skip


def _sentence(hearing: Hearing, start: int, end: int) -> tuple[int, int]:
    """The words around a stretch that belong to the same sentence."""
    first, last = start, end
    while first > max(0, start - LOOK_AROUND) and hearing.words[first - 1].norm not in STOPS:
        first -= 1
    while last < min(len(hearing.words), end + 5) and hearing.words[last].norm not in STOPS:
        last += 1
    return first, last


def _scope(hearing: Hearing, start: int, end: int, rule: str) -> str:
    """The preparation or the facet that the sentence names, or `overall`."""
    first, last = _sentence(hearing, start, end)
    norms = [w.norm for w in hearing.words[first:last]]
    if "overall" in norms:
        return "overall"
    preparations = _preparations(hearing, norms)
    if preparations:
        return preparations.pop() if len(preparations) == 1 else "overall"
    return _facet(hearing, first, last) or (_use(hearing, first, start) if rule in WEAK else None) or "overall"


def _facet(hearing: Hearing, first: int, last: int) -> str | None:
    """The facet that is named after `for`, `on`, `in` (`for the finish`)."""
    taken = {i for m in hearing.mentions if first < m.end and m.start < last for i in range(max(first, m.start), m.end)}
    norms = ["" if i in taken else hearing.words[i].norm for i in range(first, last)]
    for k in range(1, len(norms)):
        before = norms[k - 2] if norms[k - 1] in ("the", "its") and k > 1 else norms[k - 1]
        if norms[k] in FACETS and before in SCOPING:
            return FACETS[norms[k]]
    return None


def _use(hearing: Hearing, first: int, start: int) -> str | None:
    """What it would be used for (`for eating, it's …`), where that leads the sentence."""
    words = hearing.words[first:start]
    for k, word in enumerate(words[:-1]):
        if word.norm == "for":
            used = next((w for w in words[k + 1 : k + 3] if w.norm != "the"), None)
            if used and used.tag in ("NN", "NNS", "VBG") and used.norm not in NO_USE:
                return used.norm
    return None


def _preparations(hearing: Hearing, norms: list[str]) -> set[str]:
    """The preparations named among some words; `out of a mug` names none."""
    found = set()
    for preparation in hearing.sheet.preparations:
        for name in (preparation.id, *preparation.aliases):
            words = [w for w in tokens_of(name) if w != "the"]
            for k in range(len(norms) - len(words) + 1):
                if norms[k : k + len(words)] == words and "of" not in norms[max(0, k - 2) : k]:
                    found.add(preparation.id)
    return found


def _degree(hearing: Hearing, start: int, end: int) -> Intensity | None:
    first, last = _sentence(hearing, start, end)
    norms = {w.norm for w in hearing.words[first:last]}
    return "low" if norms & JUST else "high" if norms & FAR else None
