"""Words cut into the pieces that the encoder knows.

The greedy longest match of WordPiece (Wu et al. 2016, as BERT uses it, Devlin et al. 2019). The library that does this
brings a client for a model hub with it, which a program without a network has no use for.
"""

import unicodedata
from collections.abc import Iterator, Sequence
from pathlib import Path

UNKNOWN, CONTINUED, LONGEST = "[UNK]", "##", 100  # characters; a longer word is unknown


class Pieces:
    """The vocabulary, and the cutting by it."""

    def __init__(self, vocabulary: Sequence[str]) -> None:
        self.ids = {piece: k for k, piece in enumerate(vocabulary)}

    @classmethod
    def read(cls, path: Path) -> "Pieces":
        """A vocabulary from a file with a piece a line."""
        return cls(path.read_text(encoding="utf-8").splitlines())

    def cut(self, words: Sequence[str]) -> tuple[list[int], list[int]]:
        """The numbers of all pieces, and for each the index of its word; an empty word has none.

        >>> Pieces(["[UNK]", "un", "##aff", "##able", "-"]).cut(["unaffable", "", "un-?"])
        ([1, 2, 3, 1, 4, 0], [0, 0, 0, 2, 2, 2])
        """
        cuts = {word: [piece for part in _parts(word) for piece in self._cut_part(part)] for word in set(words)}
        pieces = [piece for word in words for piece in cuts[word]]
        return pieces, [k for k, word in enumerate(words) for _ in cuts[word]]

    def _cut_part(self, part: str) -> list[int]:
        """The longest pieces that a part is made of; the unknown piece where it cannot be."""
        pieces, at = [], 0
        while at < len(part) <= LONGEST:
            mark = CONTINUED if at else ""
            end = next((end for end in range(len(part), at, -1) if mark + part[at:end] in self.ids), at)
            if end == at:
                break
            pieces.append(self.ids[mark + part[at:end]])
            at = end
        return pieces if at == len(part) else [self.ids[UNKNOWN]]


def _parts(word: str) -> Iterator[str]:
    """A word without accents and in lower case, cut at every punctuation mark."""
    part = ""
    for letter in unicodedata.normalize("NFD", word.lower()):
        sort = unicodedata.category(letter)
        if sort in ("Mn", "Cf"):
            continue
        if sort[0] == "P" or (sort[0] == "S" and letter.isascii()) or "\u4e00" <= letter <= "\u9fff":
            yield from (part, letter) if part else (letter,)
            part = ""
        elif sort[0] in "ZC":
            yield from (part,) if part else ()
            part = ""
        else:
            part += letter
    if part:
        yield part
