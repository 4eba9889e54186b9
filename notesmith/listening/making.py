"""How a sample was made, where the lexicon has no term: `smoked over alder`, `eight months in a rum cask`."""

from notesmith.listening.hearing import Amount, Hearing, Word
from notesmith.listening.measures import UNITS, may_begin
from notesmith.listening.numbers import read_number

DONE = frozenset(
    "smoked dried fermented pressed aged matured fired oxidised oxidized withered brined cured distilled rubbed "
    "wrapped washed shaded covered conched refermented unfined unfiltered roasted stoneground sifted stirred "
    "cooked pasteurised pasteurized thermised charcoal crushed polished steamed rolled salted bottled blended "
    "hopped".split()
)
WHOLE = frozenset("unfined unfiltered refermented stoneground".split())  # tell a process by themselves
HOW = frozenset("over in on with by for from at into through using under against overnight twice again".split())
MANNER = frozenset(
    "cold lightly heavily hand pine wood oak beech slowly gently never not twice double pan sun air charcoal "
    "naturally dry wet stone cask barrel slow".split()
)
WOODS = frozenset(
    "barrel barrels cask casks tank tanks foudre foudres oak wood cellar amphora clay vat vats pit steel "
    "warehouse".split()
)
STOPS = frozenset(
    ". , ? ! ; : and but so which that i it it's we they he she you because when where if or then".split()
)
OWN = frozenset("i i'm i've we we're we've you my your our hands mouth".split())
LONGEST = 8


def find_processes(hearing: Hearing) -> list[Amount]:
    """Every open statement of a process, in order."""
    found: list[Amount] = []
    for i in hearing.places_where(_may_tell):
        end = _done_end(hearing.words, i) or _in_wood_end(hearing.words, i)
        if end and (not found or found[-1].end <= i):
            start = _with_manner(hearing.words, i)
            signs = _said_how(hearing.words, i)
            found.append(Amount(start, end, "process", hearing.said(start, end), None, "made so", signs))
    return found


def _may_tell(norm: str) -> bool:
    return norm in WHOLE or norm in DONE or may_begin(norm)


def _said_how(words: list[Word], i: int) -> tuple[str, ...]:
    done = f"done {words[i].norm}" if words[i].norm in DONE else "kept in wood"
    return done, *(f"how {w.norm}" for w in words[i + 1 : i + 2])


def _done_end(words: list[Word], i: int) -> int:
    """Where `smoked over alder` ends, if it begins at `i`; 0 where the word is no statement of making."""
    if words[i].norm in WHOLE:
        return _phrase_end(words, i + 1) if words[i + 1 : i + 2] and words[i + 1].norm == "in" else i + 1
    if words[i].norm not in DONE or i == 0 or not OWN.isdisjoint(w.norm for w in words[max(0, i - 4) : i + 4]):
        return 0
    manner = words[i - 1].norm in MANNER
    if _how(words, i + 1):
        return _phrase_end(words, i + 1)
    if i + 1 < len(words) and words[i + 1].norm in MANNER and words[i + 1].norm.endswith("ly"):
        return i + 2
    return i + 1 if manner and words[i - 1].norm not in ("not", "dry", "wet") else 0


def _how(words: list[Word], i: int) -> bool:
    return i < len(words) and words[i].norm in HOW


def _phrase_end(words: list[Word], start: int) -> int:
    """Where the phrase that tells how ends."""
    end = start
    while end < len(words) and end - start < LONGEST and words[end].norm not in STOPS and words[end].pause < 900:
        end += 1
    return end


def _with_manner(words: list[Word], i: int) -> int:
    while i > 0 and words[i - 1].norm in MANNER:
        i -= 1
    return i


def _in_wood_end(words: list[Word], i: int) -> int:
    """Where `eight months in a rum cask` ends, if it begins at `i`."""
    norms = [w.norm for w in words[i : i + 12]]
    if not may_begin(norms[0]) or WOODS.isdisjoint(norms):
        return 0
    number = read_number(norms, 0)
    if not number or number.end + 1 >= len(norms) or UNITS.get(norms[number.end], ("", "bare"))[1] != "time":
        return 0
    if norms[number.end + 1] not in ("in", "on"):
        return 0
    wood = next((k for k in range(number.end + 2, min(len(norms), number.end + 7)) if norms[k] in WOODS), None)
    return i + wood + 1 if wood else 0
