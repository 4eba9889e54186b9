"""Names that are no codes: printed with capitals, said to be what something is called, or standing as names do."""

from collections import Counter
from collections.abc import Iterator, Sequence

from notesmith.lexicon.check import common_words
from notesmith.listening.naming import ARTICLES, LEADS, Key, Naming, Said, Sign, code_at, sign_at
from notesmith.sheet import COMMON_WORDS

CALLED = frozenset("called named".split())
# Before a person's name, before a place's, and after a person's.
KIN = frozenset(
    "wife husband brother sister mother father mum dad son daughter friend neighbour neighbor aunt uncle cousin boss "
    "mate roommate partner thanks thank hello hi hey".split()
)
WHERE = frozenset("in at near from by".split())
DOINGS = frozenset(
    "said says told thinks reckons asked who brought poured made set wants went came likes loves you".split()
)
NO_NAME = COMMON_WORDS | frozenset(
    "'s the a an because that which who after it's that's i'm something he's she's they're when what there".split()
)
LONGEST_NAME = 3  # words
OFTEN = 3  # times that a name is said which no capital tells


def find_proper_names(said: Sequence[Said]) -> list[Naming]:
    """Every place of a name printed with capitals, under the form in which it is printed most often."""
    runs = list(_capital_runs(said))
    forms = _forms(Counter(_norms(said, i, end) for i, end in runs))
    people = {w for i, end in runs if _is_person(said, i, end) for w in _norms(said, i, end)}
    return [
        Naming(i, "called", forms[key], _proper_sign(said, i, end))
        for i, end in runs
        if not set(forms[key := _norms(said, i, end)]) & people
    ]


def _capital_runs(said: Sequence[Said]) -> Iterator[tuple[int, int]]:
    """Stretches of words that are always printed with a capital, somewhere inside a sentence too."""
    lower = {w.norm for w in said if w.printed[0].islower()}
    inside = {w.norm for w in said if w.inside and w.printed[0].isupper() and w.printed not in ("I", "I'm")}
    proper = {word for word in inside - lower - common_words() if len(word) > 2 and "'" not in word and word.isalpha()}
    start = -1
    for i, word in enumerate(said):
        if word.norm not in proper:
            if start >= 0:
                yield start, i
            start = -1
        elif start < 0:
            start = i
        elif said[i - 1].ends:
            yield start, i
            start = i
    if start >= 0:
        yield start, len(said)


def _norms(said: Sequence[Said], start: int, end: int) -> Key:
    return tuple(word.norm for word in said[start:end])


def _forms(counts: Counter[Key]) -> dict[Key, Key]:
    """For each name its usual form: names that share a word are one, called as they are called most often."""
    forms: dict[Key, Key] = {}
    for key, _ in sorted(counts.items(), key=lambda item: (-item[1], item[0])):
        forms[key] = next((usual for usual in dict.fromkeys(forms.values()) if set(usual) & set(key)), key)
    return forms


def _is_person(said: Sequence[Said], start: int, end: int) -> bool:
    """Whether a name is a person's, or a place's where something comes from."""
    does = end < len(said) and not said[end - 1].ends and said[end].norm in DOINGS
    before = [word.norm for word in said[max(0, start - 2) : start]]
    return does or bool(KIN & set(before)) or bool(WHERE & set(before[-1:]))


def _proper_sign(said: Sequence[Said], start: int, end: int) -> Sign:
    before = said[start - 1].norm if start else "."
    if before in CALLED:
        return "called"
    if before == "the":
        return "with article"
    return sign_at(said, start, end, "called") or "said"


def find_called(said: Sequence[Said]) -> list[Naming]:
    """What is said to be called something, where no capital tells a name: the most words of it that are said again."""
    places = _places_by_word(said)
    places_called = [i + 1 for i, word in enumerate(said[:-1]) if word.norm in CALLED and not word.ends]
    first = {name: i for i in reversed(places_called) if (name := name_after(said, i))}
    found: dict[Key, list[Naming]] = {}
    for name, i in first.items():
        key, again = _said_often(said, places, name)
        if again and again[0] > i - LONGEST_NAME:  # a name is not used before it is told
            found.setdefault(key, [Naming(at, "called", key, "called" if at == i else "said") for at in again])
    return [naming for namings in found.values() for naming in namings]


def _said_often(said: Sequence[Said], places: dict[str, list[int]], name: Key) -> tuple[Key, list[int]]:
    """As many words of the name as are said often, and where."""
    for length in range(len(name), 0, -1):
        again = [i for i in places[name[0]] if _norms(said, i, i + length) == name[:length]]
        if len(again) >= OFTEN:
            return name[:length], again
    return name, []


def _places_by_word(said: Sequence[Said]) -> dict[str, list[int]]:
    places: dict[str, list[int]] = {}
    for i, word in enumerate(said):
        places.setdefault(word.norm, []).append(i)
    return places


def name_after(said: Sequence[Said], i: int) -> Key:
    """The name that begins at a word: up to the end of the thought, or to a word that no name holds."""
    i += said[i].norm in ARTICLES and not said[i].ends
    words: list[str] = []
    for word in said[i : i + LONGEST_NAME]:
        if word.norm in NO_NAME:
            break
        words.append(word.norm)
        if word.ends:
            break
    return tuple(words) if len("".join(words)) > 3 else ()


def find_bare(said: Sequence[Said]) -> list[Naming]:
    """Words without article that open thoughts (`Dash is quieter.`), where some stand side by side (`Dot, dash.`)."""
    found: list[Naming] = []
    for i, word in enumerate(said):
        opens = word.begins or (i > 0 and said[i - 1].norm in LEADS)
        if not opens or len(word.norm) < 3 or word.norm in COMMON_WORDS or code_at(said, i):
            continue
        if sign := sign_at(said, i, i + 1, "bare"):
            found.append(Naming(i, "bare", (word.norm,), sign))
    alone = {naming.at: naming.key for naming in found if naming.sign == "alone"}
    near = (-2, -1, 1, 2)
    beside = {key for at, key in alone.items() if any(alone.get(at + step, key) != key for step in near)}
    return [naming for naming in found if naming.key in beside]
