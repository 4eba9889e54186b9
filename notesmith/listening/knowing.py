"""Which words does the lexicon know? Looked up once as printed, and again only around what is mended."""

from notesmith.lexicon import Hit
from notesmith.listening.hearing import Hearing


def known_as_printed(hearing: Hearing) -> list[Hit]:
    """The lexicon's words in the talk as the captions print them."""
    return hearing.lexicon.match([word.norm for word in hearing.words])


def known_as_meant(hearing: Hearing, printed: list[Hit]) -> list[Hit]:
    """The lexicon's words in the talk as mended: what a mending cannot have changed is as it was."""
    mended = {i for mending in hearing.mendings for i in range(mending.start, mending.end)}
    redone = bytearray(len(hearing.words))
    fresh: list[Hit] = []
    for start, end in sorted({_around(hearing, mending.start, mended) for mending in hearing.mendings}):
        redone[start:end] = b"\1" * (end - start)
        fresh += _matched(hearing, start, end)
    kept = [hit for hit in printed if not redone[hit.start]]
    return sorted([*kept, *fresh], key=lambda hit: hit.start)


def _around(hearing: Hearing, at: int, mended: set[int]) -> tuple[int, int]:
    """The stretch around a mended word, up to words over which no label reaches."""
    words, lexicon = hearing.words, hearing.lexicon
    ends = (i for i in range(at, len(words)) if i not in mended and lexicon.is_outside(words[i].norm))
    starts = (i + 1 for i in range(at, -1, -1) if i not in mended and lexicon.is_outside(words[i].norm))
    return next(starts, 0), next(ends, len(words))


def _matched(hearing: Hearing, start: int, end: int) -> list[Hit]:
    at = [i for i in range(start, end) if hearing.words[i].norm]
    hits = hearing.lexicon.match([hearing.words[i].norm for i in at])
    return [Hit(at[hit.start], at[hit.end - 1] + 1, hit.label) for hit in hits]
