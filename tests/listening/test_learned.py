"""What the encoder tells, written into the hearing."""

from pathlib import Path

import pytest

from notesmith.lexicon import Lexicon
from notesmith.listening.hearing import Hearing
from notesmith.listening.pipeline import listen
from notesmith.sheet import read_sheet
from notesmith.transcript import Talk, read_captions

DEMO = Path(__file__).parents[2] / "samples" / "demo"


@pytest.fixture(scope="module")
def heard() -> Hearing:
    """The demo recording, heard by rules and encoder."""
    captions = read_captions(DEMO / "pegs.vtt")
    return listen(Talk.from_captions(captions), read_sheet(DEMO / "pegs.sheet.toml"), Lexicon.load())


def test_a_mended_term_is_noted_with_all_the_words_it_was_printed_as(heard: Hearing) -> None:
    """`A stringent` is one word misheard as two; the note quotes both."""
    facets = {heard.said(p.description.start, p.description.end): p.facet for p in heard.perceptions}
    assert facets["a stringent"] == "mouthfeel"
    assert "a" not in facets


def test_no_words_are_noted_twice_of_one_sample(heard: Hearing) -> None:
    """A stretch stands for one perception of a sample."""
    noted = [(p.description.start, p.sample) for p in heard.perceptions]
    assert len(noted) == len(set(noted))
