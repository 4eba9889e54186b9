"""What stands around a verdict word: the sample named after it, the one before it, whom it is set above."""

from typing import NamedTuple

from notesmith.listening.hearing import Hearing, Mention, Word
from notesmith.listening.siding import Named, other_than, topic_at, within
from notesmith.listening.vocabulary import BE

RECENT = 30  # words before `that one` in which what it means is named
NEAR = 7  # words between a verdict word and the name it is about
WINS = frozenset("wins won winning win beats beat".split())
LIGHT = frozenset(
    "it 's to for with the a an that this one my vote as well is be probably still just definitely on "
    "actually um uh rather always maybe cup glass of , number still have home i 'd".split()
)
PRONOUNS = frozenset("that this it he she him her these".split())
STOPS = frozenset([".", "?", "!", ";", ":", "..."])
AFTER_PICK = STOPS | frozenset(
    ", then and over for because every any again before above now on in with to so if but i it 's that out "
    "home after as by myself at every thanks please or yeah".split()
)


class Scene(NamedTuple):
    """What the patterns look at."""

    hearing: Hearing
    words: list[Word]
    named: list[Named]
    short: list[Named]  # common words that are names only where a name is called for


def named_after(scene: Scene, i: int, limit: int = NEAR) -> Named | None:
    """The first name after word `i` with nothing but light words between."""
    for mention, sample in within(scene.named, i + 1, i + 1 + limit):
        between = [w.norm for w in scene.words[i + 1 : mention.start]]
        return (mention, _antecedent(scene, mention, sample)) if LIGHT.issuperset(between) else None
    for mention, sample in within(scene.short, i + 1, i + 1 + limit):
        between = [w.norm for w in scene.words[i + 1 : mention.start]]
        return (mention, sample) if LIGHT.issuperset(between) and ends_thought(scene, mention.end) else None
    return None


def _antecedent(scene: Scene, mention: Mention, sample: str) -> str:
    """`I'm buying that one`: the one named last."""
    if mention.kind != "that":
        return sample
    recent = reversed(within(scene.named, mention.start - RECENT, mention.start))
    return next((s for m, s in recent if m.kind == "name"), sample)


def named_before(scene: Scene, i: int, limit: int = NEAR) -> Named | None:
    """The last name before word `i` in the same sentence."""
    for mention, sample in reversed(within(scene.named, i - limit, i)):
        between = [w.norm for w in scene.words[mention.end : i]]
        return (mention, sample) if not STOPS.intersection(between) and "than" not in between else None
    return None


def _pronoun(scene: Scene, i: int) -> int:
    """Where `that 's`, `this is`, `it 's` stands shortly before word `i`; -1 if nowhere."""
    for k in range(i - 1, max(-1, i - 6), -1):
        if scene.words[k].norm in STOPS:
            break
        if scene.words[k].norm in PRONOUNS and scene.words[k + 1].norm in BE | WINS | {"one"}:
            return k
    return -1


def subject_of(scene: Scene, i: int) -> tuple[str, int] | None:
    """The sample that word `i` is said of, and where that is said."""
    named = named_before(scene, i)
    if named:
        return named[1], named[0].start
    k = _pronoun(scene, i)
    sample = topic_at(scene.hearing, k) if k >= 0 else None
    return (sample, k) if sample else None


def preferred_over(scene: Scene, end: int, sample: str) -> tuple[tuple[str, ...], int]:
    """Whom it is preferred to, where that is said right after."""
    words = [w.norm for w in scene.words[end : end + 5]]
    for step, norm in enumerate(words):
        if norm in ("over", "than", "above", "before"):
            for mention, named in within(scene.named, end + step + 1, end + step + 4):
                turned = named == sample and mention.kind == "that"
                other = (turned and other_than(scene.hearing, sample, mention.start)) or named
                return ((other,), mention.end) if other != sample else ((), end)
    return (), end


def ends_thought(scene: Scene, end: int) -> bool:
    """Whether nothing that the thought needs follows word `end`."""
    words = scene.words
    return end >= len(words) or words[end].norm in AFTER_PICK or words[end].pause > 300
