"""How strongly? A grader counts where it stands at the description: before its phrase, or right after it."""

from notesmith.listening.hearing import Clause, Description, Hearing
from notesmith.listening.vocabulary import DETERMINERS, FILLERS, HIGH, LIKING, LOW, MIDDLE
from notesmith.records import Intensity

NEUTRAL = DETERMINERS | FILLERS | MIDDLE | LIKING | frozenset(["of", "'s", "is", "-"])
AFTER_LOW = frozenset("bit little slightly faintly faint slight touch".split())


def read_intensity(hearing: Hearing, description: Description, clause: Clause) -> tuple[Intensity | None, int]:
    """The intensity, and the word that says so (-1 for none)."""
    words = hearing.words
    for i in range(description.start - 1, max(clause.start, description.start - 7) - 1, -1):
        norm = words[i].norm
        if norm in ("bit", "little", "touch", "hint") and i and words[i - 1].norm == "quite":
            return None, i
        if norm in LOW:
            return "low", i
        if norm in HIGH and not (norm == "full" and words[i + 1].norm != "of"):
            return "high", i
        if norm not in NEUTRAL:
            break
    for i in range(description.end, min(clause.end, description.end + 3)):
        norm = words[i].norm
        if norm in AFTER_LOW and words[i - 1].norm in ("a", "very", ","):
            return "low", i
        if norm in (".", "and", ","):
            break
    return None, -1
