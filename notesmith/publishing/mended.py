"""Words from captions as they were meant."""

from collections.abc import Iterable

from notesmith.records import Repair

Span = tuple[int, int]


def mended(repairs: Iterable[Repair], span: Span, words: str) -> str:
    """The words of a span of the talk, in characters, with what the captions got wrong mended in square brackets."""
    text, at = "", span[0]
    touching = (repair for repair in repairs if repair.span[0] < span[1] and span[0] < repair.span[1])
    for repair in sorted(touching, key=lambda repair: repair.span):
        text += words[at - span[0] : max(repair.span[0] - span[0], 0)] + f"[{repair.meant}]"
        at = repair.span[1]
    return text + words[max(at - span[0], 0) :]
