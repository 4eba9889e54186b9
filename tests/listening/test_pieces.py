"""Words cut into the encoder's pieces."""

import pytest

from notesmith.listening.encoder import FOLDER
from notesmith.listening.pieces import Pieces

SMALL = Pieces(["[UNK]", "un", "##aff", "##able", "-", "tea", "##s", "cafe"])


def test_no_words_have_no_pieces() -> None:
    """Empty input first."""
    assert SMALL.cut([]) == ([], [])


def test_the_longest_piece_is_taken_first() -> None:
    """`unaffable` is cut as the example in BERT's own code cuts it (Devlin et al. 2019, from memory)."""
    assert SMALL.cut(["unaffable"]) == ([1, 2, 3], [0, 0, 0])


@pytest.mark.parametrize(
    ("word", "pieces"),
    [("TEAS", [5, 6]), ("café", [7]), ("tea-tea", [5, 4, 5]), ("teaz", [0]), ("tea" * 60, [0]), ("te\u200ba", [5])],
)
def test_a_word_is_read_without_case_accents_and_marks(word: str, pieces: list[int]) -> None:
    """Lower case, no accents, cut at marks; what cannot be made of pieces is unknown as a whole."""
    assert SMALL.cut([word])[0] == pieces


def test_a_word_mended_away_keeps_its_place() -> None:
    """A word that a repair took in has no piece, and the words after it keep their numbers."""
    assert SMALL.cut(["tea", "", "teas"]) == ([5, 5, 6], [0, 2, 2])


def test_the_published_vocabulary_knows_everyday_words() -> None:
    """The vocabulary beside the encoder holds whole words and the marks it is asked for."""
    pieces = Pieces.read(FOLDER / "pieces.txt")
    assert [len(pieces.cut([word])[0]) for word in ("bitter", "smoke", "?", "gaiwan")] == [1, 1, 1, 3]
