"""The talk as one text with a clock."""

import pytest

from notesmith.transcript import Talk, parse_captions

SRT = b"""1
00:00:01,000 --> 00:00:02,000
one two

2
00:00:05,000 --> 00:00:06,000
three
"""
WORD_TIMES = b"WEBVTT\n\n00:01.000 --> 00:04.000\none<00:02.500> two three\n"


def _talk(data: bytes) -> Talk:
    return Talk.from_captions(parse_captions(data, "talk"))


def test_text_is_the_words_joined() -> None:
    """Words are joined by single spaces, across cues too, and every span holds its word."""
    talk = _talk(SRT)
    assert talk.text == "one two three"
    assert [talk.text[word.start : word.end] for word in talk.words] == ["one", "two", "three"]
    assert [talk.text[cue.start : cue.end] for cue in talk.cues] == ["one two", "three"]


def test_clock_of_cues() -> None:
    """A word that is not timed has its cue's time; a space belongs to what stands before it."""
    assert [_talk(SRT).ms_at(char) for char in (0, 3, 4, 7, 8, 12)] == [1000, 1000, 1000, 1000, 5000, 5000]


def test_clock_of_words() -> None:
    """A timed word has its own time."""
    assert [word.start_ms for word in _talk(WORD_TIMES).words] == [1000, 2500, 2500]


def test_cue_and_word_at() -> None:
    """Characters lead to words and cues."""
    talk = _talk(SRT)
    assert [talk.word_at(4), talk.cue_at(7), talk.cue_at(8), talk.words[2].cue] == [1, 0, 1, 1]


@pytest.mark.parametrize("char", [-1, 13])
def test_outside_the_text(char: int) -> None:
    """There is no time outside the text."""
    with pytest.raises(IndexError):
        _talk(SRT).ms_at(char)


def test_missing_ends() -> None:
    """A cue without an end lasts until the next one starts, the last one 400 ms a word."""
    talk = _talk(b"[0:01] one two\n[0:05] three four five\n")
    assert [(cue.start_ms, cue.end_ms) for cue in talk.cues] == [(1000, 5000), (5000, 6200)]


def test_untimed_text_runs_on_an_assumed_clock() -> None:
    """Plain text has a clock of 400 ms a word that does not call itself timed."""
    talk = _talk(b"one two\nthree\n")
    assert not talk.timed
    assert [word.start_ms for word in talk.words] == [0, 0, 800]


def test_words_lead_to_the_source() -> None:
    """The k-th word of the talk is the k-th word of the captions."""
    talk = _talk(SRT)
    words = [word for cue in talk.captions.cues for word in cue.words]
    assert [SRT.decode()[word.source_start : word.source_end] for word in words] == talk.text.split()
