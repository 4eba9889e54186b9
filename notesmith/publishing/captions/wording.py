"""Which words of the captions the repairs change, and into what."""

from collections.abc import Iterable, Iterator
from itertools import chain

from notesmith.publishing.plain import one_line
from notesmith.records import Repair
from notesmith.transcript.talk import Talk


def mended_words(talk: Talk, repairs: Iterable[Repair], *, marked: bool = False) -> dict[int, str]:
    """The words that change, by their number in the talk, each with all it is now; empty where it is gone.

    What was meant goes into the words that were misheard one by one, the rest into the last; so every word keeps
    the time of the word in whose place it stands. Marked, what was meant stands in square brackets.
    """
    changed = chain.from_iterable(_mended(talk, repair, marked) for repair in repairs)
    words = talk.words
    return {at: text for at, text in changed if text != talk.text[words[at].start : words[at].end]}


def _mended(talk: Talk, repair: Repair, marked: bool) -> Iterator[tuple[int, str]]:
    begin, end = repair.span
    first, last = talk.word_at(begin), talk.word_at(end - 1)
    meant = _cased(one_line(repair.meant), talk.text[begin:end])
    tokens = (f"[{meant}]" if marked else meant).split()
    places = range(first, last + 1)
    tokens = [*tokens[: len(places) - 1], " ".join(tokens[len(places) - 1 :])] if tokens else []
    tokens = [token for token in tokens if token]
    if not tokens:
        return
    tokens[0] = talk.text[talk.words[first].start : begin] + tokens[0]
    tokens[-1] += talk.text[end : talk.words[last].end]
    for at in places:
        yield at, tokens[at - first] if at - first < len(tokens) else ""


def _cased(meant: str, heard: str) -> str:
    """The words meant, with the capitals of those misheard: a sentence still opens with one.

    >>> _cased("gaiwan", "Guy one"), _cased("gaiwan", "GUY ONE"), _cased("Sheng", "shang")
    ('Gaiwan', 'GAIWAN', 'Sheng')
    """
    if heard.isupper() and sum(map(str.isalpha, heard)) > 1:
        return meant.upper()
    return meant[:1].upper() + meant[1:] if heard[:1].isupper() else meant
