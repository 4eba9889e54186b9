"""What a sample is called, what files are called, how long a recording is."""

from pathlib import Path

import pytest

from notesmith.publishing.episode import Episode, Media
from notesmith.records import Notes, Reveal, Sheet, SheetSample


def named(empty: Notes, *, blind: bool = False, product: str | None = None, revealed: float | None = None) -> Episode:
    """An episode of one sample."""
    sheet = Sheet(samples=(SheetSample(id="A", product=product),), blind=blind)
    reveal = Reveal(
        id="v", start=revealed, end=revealed, quote="mill lane", span=(0, 9), confidence=1, why=(), sample="A",
        product="mill lane",
    )  # fmt: skip
    reveals = () if revealed is None else (reveal,)
    return Episode(empty.model_copy(update={"sheet": sheet, "reveals": reveals}))


def test_a_sample_without_a_product_has_its_code(empty: Notes) -> None:
    """There is no more to tell."""
    assert named(empty).name("A") == "A"


def test_a_sample_of_an_open_tasting_has_both_from_the_start(empty: Notes) -> None:
    """Everybody knows."""
    assert named(empty, product="Mill Lane oolong").name("A", 0.0) == "A (Mill Lane oolong)"


def test_a_blind_sample_keeps_its_code_until_it_is_revealed(empty: Notes) -> None:
    """From that second on it has both, in the sheet's spelling."""
    episode = named(empty, blind=True, product="Mill Lane oolong", revealed=60.0)
    assert [episode.name("A", at) for at in (0.0, 59.9, 60.0, None)] == ["A", "A"] + ["A (Mill Lane oolong)"] * 2


def test_a_reveal_counts_in_an_open_tasting_too(empty: Notes) -> None:
    """What the sheet knows, the audience learns there."""
    assert named(empty, product="Mill Lane oolong", revealed=60.0).name("A", 10.0) == "A"


def test_a_sample_that_stays_sealed_keeps_its_code(empty: Notes) -> None:
    """Even if the sheet knows better."""
    assert named(empty, blind=True, product="Mill Lane oolong").name("A") == "A"


def test_without_a_sheets_word_the_one_said_at_the_reveal_is_taken(empty: Notes) -> None:
    """As it was said."""
    assert named(empty, blind=True, revealed=60.0).name("A") == "A (mill lane)"


@pytest.mark.parametrize(
    ("transcript", "stem"),
    [
        ("talk.vtt", "talk"), ("two cups.en.srt", "two cups.en"), ("茶.vtt", "茶"), ("../../etc/passwd", "passwd"),
        ("..\\x.vtt", "x"), ("a:b|c*?.vtt", "a_b_c_"), ("", "notes"), ("...", "notes"), ("x" * 300 + ".vtt", "x" * 80),
        ("line\nbreak\u202e.vtt", "line break_"),
    ],
)  # fmt: skip
def test_files_are_named_like_the_captions(transcript: str, stem: str, empty: Notes) -> None:
    """Without what a file name cannot hold, or would lead elsewhere."""
    assert Episode(empty.model_copy(update={"transcript": transcript})).stem == stem


def test_a_recording_is_as_long_as_it_says(small: Notes) -> None:
    """Failing that, to the end of what is known."""
    assert Episode(small, media=Media(Path("a.mp3"), 5_000_000)).length_ms == 5_000_000
    assert Episode(small).length_ms == 3_728_000


def test_notes_of_nothing_have_no_length(empty: Notes) -> None:
    """Which is no error."""
    assert Episode(empty).length_ms == 0
