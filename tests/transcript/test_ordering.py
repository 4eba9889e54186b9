"""Times that are not in order, or do not fit."""

from notesmith.transcript import Captions, parse_captions


def _srt(*cues: tuple[str, str, str]) -> Captions:
    blocks = (f"{k}\n00:{start},000 --> 00:{end},000\n{text}\n" for k, (start, end, text) in enumerate(cues, 1))
    return parse_captions("\n".join(blocks).encode(), "talk.srt")


def test_overlap_of_speakers_is_kept() -> None:
    """Cues that overlap stay as they are, without a warning."""
    captions = _srt(("00:01", "00:05", "a"), ("00:02", "00:03", "b"))
    assert [(cue.start_ms, cue.end_ms) for cue in captions.cues] == [(1000, 5000), (2000, 3000)]
    assert captions.warnings == ()


def test_out_of_order_is_sorted() -> None:
    """A cue added at the end of the file goes where its time says, with a warning."""
    captions = _srt(("00:01", "00:02", "a"), ("05:00", "05:02", "c"), ("00:03", "00:04", "b"))
    assert [cue.text for cue in captions.cues] == ["a", "b", "c"]
    assert captions.warnings == ("cues were out of order and were sorted by time",)


def test_all_backwards_is_sorted() -> None:
    """Cues listed from last to first do not interleave, and are sorted."""
    captions = _srt(*[(f"{k:02}:00", f"{k:02}:05", f"w{k}") for k in range(50, 0, -1)])
    assert [cue.text for cue in captions.cues] == [f"w{k}" for k in range(1, 51)]


def test_end_before_start_is_left_open() -> None:
    """A cue that ends before it starts keeps its start."""
    captions = _srt(("00:05", "00:01", "a"))
    assert captions.cues[0].end_ms is None
    assert captions.warnings == ("the cue at 0:05 ended before it started; its end was left open",)


def test_word_time_outside_its_cue() -> None:
    """A word time far outside its cue is not used, and said to be."""
    captions = parse_captions(b"WEBVTT\n\n00:01.000 --> 00:02.000\na<00:30.000> b\n", "talk.vtt")
    assert [word.start_ms for word in captions.cues[0].words] == [1000, None]
    assert "lies outside its cue" in captions.warnings[0]


def test_unreadable_timing_line_keeps_its_words() -> None:
    """A cue whose time cannot be read follows the cue before it, with a warning that names the line."""
    captions = _srt(("00:01", "00:02", "a"), ("77:99", "78:00", "b"))
    assert [(cue.start_ms, cue.text) for cue in captions.cues] == [(1000, "a"), (2000, "b")]
    assert captions.warnings[0].startswith("line 6: ")


def test_twelve_hours_are_fine() -> None:
    """A long recording is read."""
    captions = parse_captions(b"WEBVTT\n\n12:00:00.000 --> 12:00:01.000\nstill here\n", "talk.vtt")
    assert captions.cues[0].start_ms == 12 * 3_600_000


def test_text_outside_cues_is_warned_of() -> None:
    """Text between WebVTT cues belongs to none, and is not lost in silence."""
    captions = parse_captions(b"WEBVTT\n\n00:01.000 --> 00:02.000\na\n\nlost\nlines\n\n", "talk.vtt")
    assert captions.cues[0].text == "a"
    assert captions.warnings == ("line 6: text outside any cue was left out",)
