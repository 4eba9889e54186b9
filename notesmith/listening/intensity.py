"""How strongly? A grader counts where it stands at the description: before its phrase, or right after it."""

from notesmith.listening.hearing import Clause, Description, Hearing
from notesmith.listening.vocabulary import DETERMINERS, FILLERS, HIGH, LIKING, LOW, MIDDLE
from notesmith.records import Intensity

NEUTRAL = DETERMINERS | FILLERS | MIDDLE | LIKING | frozenset(["of", "'s", "is", "-"])
HALVED = frozenset("bit little touch hint".split())  # `quite a bit` is neither little nor much
AFTER_LOW = frozenset("bit little slightly faintly faint slight touch".split())


def read_intensity(hearing: Hearing, description: Description, clause: Clause) -> tuple[Intensity | None, int]:
    """The intensity, and the word that says so (-1 for none)."""
    norms = hearing.meant
    first = max(clause.start, description.start - 7)
    for i in range(description.start - 1, first - 1, -1):
        if norms[i] in HALVED and "quite" in norms[max(0, i - 2) : i]:
            return None, i
        degree = _degree(norms, i)
        if degree:
            return degree, i
        if norms[i] not in NEUTRAL:
            break
    return _graded_after(norms, description.end, min(clause.end, description.end + 3))


def _degree(norms: list[str], i: int) -> Intensity | None:
    """What the grader at `i` says; `full` only counts in `full of`."""
    norm = norms[i]
    if norm in LOW:
        return "low"
    return "high" if norm in HIGH and (norm != "full" or norms[i + 1] == "of") else None


def _graded_after(norms: list[str], start: int, stop: int) -> tuple[Intensity | None, int]:
    """A grader right after the description (`sweet, slightly`)."""
    for i in range(start, stop):
        if norms[i] in AFTER_LOW and norms[i - 1] in ("a", "very", ","):
            return "low", i
        if norms[i] in (".", "and") or (norms[i] == "," and i > start):
            break
    return None, -1
