"""Words from captions as they were meant, and as they are written inside a sentence."""

from collections.abc import Iterable

from notesmith.lexicon import Lexicon
from notesmith.records import Repair

Span = tuple[int, int]


def mended(repairs: Iterable[Repair], span: Span, words: str) -> str:
    """The words of a span of the talk, in characters, with what the captions got wrong mended in square brackets."""
    text, at = "", span[0]
    touching = [repair for repair in repairs if repair.span[0] < span[1] and span[0] < repair.span[1]]
    for repair in sorted(touching, key=lambda repair: repair.span):
        text += words[at - span[0] : max(repair.span[0] - span[0], 0)] + f"[{repair.meant}]"
        at = repair.span[1]
    return text + words[max(at - span[0], 0) :]


def inside_sentence(term: str) -> str:
    """A term of the lexicon with a small letter first, unless it is always written with a capital.

    >>> inside_sentence("Peach"), inside_sentence("Turkish delight"), inside_sentence("Ana")
    ('peach', 'Turkish delight', 'Ana')
    """
    if not term[:1].isupper() or not term[1:].islower():
        return term
    label = Lexicon.load().look_up(term)
    return term[0].lower() + term[1:] if label and not label.text[0].isupper() else term
