"""Where the words of an edit stand in captions that were exported anew."""

import pytest

from notesmith.review.edits import Words
from notesmith.review.finding import find_words, places, words_after, words_before

TEXT = "So the first one is sweet. And the second is, um, sweet too, but thin."


def _words(text: str, nth: int = 1) -> Words:
    start = -1
    for _ in range(nth):
        start = TEXT.index(text, start + 1)
    end = start + len(text)
    return Words(text=text, before=words_before(TEXT, start), after=words_after(TEXT, end), span=(start, end))


@pytest.mark.parametrize(
    ("text", "words", "found"),
    [
        ("", _words("sweet"), None),
        (TEXT, _words("sweet"), "sweet. And"),
        (TEXT, _words("sweet", 2), "sweet too"),
        ("Hello. " + TEXT, _words("sweet", 2), "sweet too"),
        (TEXT.upper(), _words("thin"), "THIN"),
        (TEXT.replace("is, um, sweet too,", "is sweet too"), _words("sweet", 2), "sweet too"),
        (TEXT.replace("sweet.", "suite."), _words("sweet"), None),
        ("I had something sweet for breakfast today, and toast with it.", _words("sweet"), None),
        (TEXT.replace("sweet too", "sweetish too"), _words("sweet", 2), None),
        ("Sweet.", Words(text="sweet", span=(40, 45)), "Sweet"),
    ],
)  # fmt: skip
def test_words_are_found_by_what_stands_around_them(text: str, words: Words, found: str | None) -> None:
    """Not by their number of characters, nor wherever the same word stands."""
    span = find_words(text, words)
    assert (span and text[span[0] :].startswith(found or "")) == (None if found is None else True)


def test_what_is_no_word_is_found_where_it_stood() -> None:
    """A mark or a picture sign."""
    assert find_words("so 🙂 good", Words(text="🙂", before="so", after="good", span=(3, 4))) == (3, 4)
    assert find_words("really so 🙂 good", Words(text="🙂", before="so", after="good", span=(3, 4))) is None


def test_places_of_a_phrase_are_whole_words() -> None:
    """Whatever stands between them."""
    assert [TEXT[slice(*span)] for span in places(TEXT, "one is")] == ["one is"]
    assert list(places(TEXT, "ne is")) == []
    assert list(places("a (b) a, b", "a b")) == [(0, 4), (6, 10)]
