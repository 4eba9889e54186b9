"""What chosen words most likely say: the first guess of a new note, which the reviewer then corrects."""

from functools import lru_cache
from itertools import combinations
from typing import TYPE_CHECKING

from notesmith.errors import LexiconError
from notesmith.lexicon import Lexicon
from notesmith.records import Facet, Observation
from notesmith.review.edits import Kind, Value

if TYPE_CHECKING:
    from notesmith.review.sitting import State

Span = tuple[int, int]
MOST_WORDS = 12
"""Words of a choice among which a term of the lexicon is looked for."""


@lru_cache(maxsize=1)
def lexicon() -> Lexicon:
    """The built-in lexicon, read when it is first asked."""
    return Lexicon.load()


def concept_of(text: str, *, strict: bool = True) -> str | None:
    """The concept of that id, or that the words stand for; None where there is none and that may be.

    Raises:
        LexiconError: there is none, and there has to be one.
    """
    text = text.strip()
    if text in lexicon().concepts:
        return text
    label = lexicon().look_up(text)
    if label is None and strict:
        raise LexiconError(f'the lexicon knows no "{text}"', mend="write a word that it knows, or leave it empty")
    return label.concept if label else None


def first_guess(state: "State", kind: Kind, span: Span) -> tuple[dict[str, Value], Span | None]:
    """What a new record of the words says at first, and where its term stands among them.

    The sample is that of the nearest note before, the taster who speaks or the only one.
    """
    text, sample = state.talk.text[slice(*span)], _sample_at(state, span[0])
    taster = _taster_at(state, span[0])
    says: dict[Kind, dict[str, Value]] = {
        "comparison": {"attribute": text, "more": sample, "less": None, "samples": (), "relation": "more",
                       "degree": None, "taster": taster},
        "preference": {"preferred": sample, "over": (), "scope": "overall", "degree": None, "taster": taster},
        "fact": {"kind": "origin", "value": text, "unit": None, "sample": sample, "preparation": None},
        "reveal": {"sample": sample, "product": text},
        "section": {"kind": "tasting", "sample": sample},
        "repair": {"heard": text, "meant": text},
    }  # fmt: skip
    if kind != "observation":
        return says[kind], None
    term, concept, facet = _term_in(state, span)
    perceived: dict[str, Value] = {
        "concept": concept, "facet": facet, "presence": "present", "intensity": None, "sample": sample,
        "taster": taster, "preparation": _preparation_at(state, span[0]), "voice": "taster",
    }  # fmt: skip
    return perceived, term


def _term_in(state: "State", span: Span) -> tuple[Span, str | None, Facet]:
    """The longest descriptor that the lexicon knows among the words, else all of them; with concept and facet."""
    words = [word for word in state.talk.words if span[0] <= word.start < span[1]][:MOST_WORDS]
    runs = sorted(combinations(range(len(words) + 1), 2), key=lambda run: run[0] - run[1])
    for first, last in runs:
        place = _bare(state, (words[first].start, words[last - 1].end))
        label = lexicon().look_up(state.talk.text[slice(*place)])
        concept = lexicon().concepts.get(label.concept) if label else None
        if concept and concept.sort == "descriptor":
            return place, concept.id, _facet_at(state, span[0], concept.facets)
    return _bare(state, span), None, _facet_at(state, span[0], ())


def _facet_at(state: "State", place: int, possible: tuple[Facet, ...]) -> Facet:
    """The facet that was just talked about, where the concept can be said of it; else its most usual one."""
    before = _before(state, place)
    talked_of = before.facet if before else None
    if talked_of and (not possible or talked_of in possible):
        return talked_of
    return possible[0] if possible else "flavour"


def _bare(state: "State", span: Span) -> Span:
    """The stretch without the punctuation around it."""
    text = state.talk.text[slice(*span)]
    signs = ".,;:!?…\"'()[]–—-“”‘’ "
    left, right = len(text) - len(text.lstrip(signs)), len(text) - len(text.rstrip(signs))
    return (span[0] + left, span[1] - right) if left + right < len(text) else span


def _before(state: "State", place: int) -> Observation | None:
    earlier = [r for r in state.notes.observations if r.term_span[0] <= place and r.voice == "taster"]
    return max(earlier, key=lambda record: record.term_span[0], default=None)


def _sample_at(state: "State", place: int) -> str | None:
    before = _before(state, place)
    return before.sample if before else next(iter(state.notes.samples), None)


def _preparation_at(state: "State", place: int) -> str | None:
    before = _before(state, place)
    return before.preparation if before else None


def _taster_at(state: "State", place: int) -> str | None:
    tasters, speaker = state.notes.sheet.tasters, state.talk.cues[state.talk.cue_at(place)].speaker
    return speaker if speaker in tasters else tasters[0] if len(tasters) == 1 else None
