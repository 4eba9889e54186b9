"""Which words does the lexicon know?"""

import pytest

from notesmith.listening.hearing import Hearing
from notesmith.records import Sheet, SheetSample
from tests.listening.conftest import Hear

SHEET = Sheet(samples=(SheetSample(id="Marrowby"),))


def looked_up_afresh(hearing: Hearing) -> list[tuple[int, int, str]]:
    """The lexicon's words in the talk as mended, all of it looked up."""
    at = [i for i, word in enumerate(hearing.words) if word.norm]
    hits = hearing.lexicon.match([hearing.words[i].norm for i in at])
    return [(at[hit.start], at[hit.end - 1] + 1, hit.label.text) for hit in hits]


@pytest.mark.parametrize(
    "talk",
    [
        "Hello.",
        "So the marrow bee is sweet.",
        "Sweet marrow bee honey and smoke, then the marrow bee again.",
        "marrow bee",
        "pure marrow bee dark chocolate with a lemon peel marrow bee",
    ],
)
def test_what_is_mended_is_looked_up_again(hear: Hear, talk: str) -> None:
    """Around a mending the words are known as meant, and all others as printed."""
    heard = hear(talk, SHEET)
    assert [(hit.start, hit.end, hit.label.text) for hit in heard.known] == looked_up_afresh(heard)
