"""The talk as a row of words with their tags, times, speakers and pauses."""

from bisect import bisect_left
from collections.abc import Callable, Iterator, Sequence
from itertools import pairwise
from operator import add

import numpy as np
from spacy.tokens import Doc

from notesmith.listening.hearing import Hearing, Word
from notesmith.transcript import Talk

LETTER_MS = 70  # how long one letter takes to say at about 150 words a minute (common practice, no source)
FOLDED = str.maketrans({"’": "'", "‘": "'", "`": "'"})


def note_words(hearing: Hearing, doc: Doc) -> None:
    """Give every token of the tagged text its time, cue, speaker and the pause before it.

    All tokens are read at once: asked one by one, the pipeline takes longer to tell than we to listen.
    """
    talk, strings = hearing.talk, doc.vocab.strings
    starts, lengths, lowers, tags = doc.to_array(["IDX", "LENGTH", "LOWER", "TAG"]).T.tolist()
    spoken = _spoken(talk, starts)
    pauses = [0] * len(starts)
    for k, silence in _silences(talk):
        pauses[bisect_left(spoken, k)] = silence
    words = [talk.words[k] for k in spoken]
    cues = [word.cue for word in words]
    hearing.words = [*map(
        Word,
        _texts(lowers, lambda number: strings[number].translate(FOLDED)), _texts(tags, strings.__getitem__),
        starts, map(add, starts, lengths),
        [word.start_ms for word in words], cues, [talk.cues[cue].speaker for cue in cues], pauses,
    )]  # fmt: skip


def _spoken(talk: Talk, starts: Sequence[int]) -> list[int]:
    """Of which spoken word each token is, or the first part."""
    found = np.searchsorted([word.start for word in talk.words], starts, "right")
    spoken: list[int] = np.maximum(found - 1, 0).tolist()
    return spoken


def _texts(numbers: Sequence[int], read: Callable[[int], str]) -> list[str]:
    """The strings that the pipeline's numbers stand for, each read once."""
    known = {number: read(number) for number in set(numbers)}
    return [known[number] for number in numbers]


def _silences(talk: Talk) -> Iterator[tuple[int, int]]:
    """The spoken words with silence before them, and its milliseconds, as far as the captions tell."""
    by_word = talk.captions.word_timed
    for i, (before, now) in enumerate(pairwise(talk.words), 1):
        if before.cue != now.cue:
            silence = talk.cues[now.cue].start_ms - talk.cues[before.cue].end_ms
            yield i, max(0, min(silence, now.start_ms - before.start_ms))
        elif by_word:
            yield i, max(0, now.start_ms - before.start_ms - LETTER_MS * (before.end - before.start) - 150)
