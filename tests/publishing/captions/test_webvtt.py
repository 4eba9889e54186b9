"""Mended captions as WebVTT, from captions of any other kind."""

from notesmith.publishing.captions.webvtt import render
from notesmith.publishing.episode import Episode
from notesmith.records import Notes, Repair
from notesmith.transcript.reading import parse_captions


def written(empty: Notes, source: str, *repairs: Repair) -> str | None:
    """The captions of an episode as WebVTT."""
    captions = parse_captions(source.encode(), "a.txt")
    return render(Episode(empty.model_copy(update={"repairs": repairs}), captions, source.encode()))


def test_captions_without_times_make_no_cues(empty: Notes) -> None:
    """An assumed clock is good enough to listen by, not to show."""
    assert written(empty, "It is hot.\nAnd smoky.\n") is None


def test_webvtt_is_not_written_again(empty: Notes) -> None:
    """It is mended in place."""
    assert written(empty, "WEBVTT\n\n00:01.000 --> 00:02.000\nhot\n") is None


def test_cues_tell_who_speaks(empty: Notes) -> None:
    """In a voice tag, with every sign of WebVTT's own escaped."""
    source = "1\n00:00:01,000 --> 00:00:02,000\nAna: salt & <smoke>\n\n2\n00:00:02,000 --> 00:00:03,000\nBram: no\n"
    assert written(empty, source) == (
        "WEBVTT\n\n00:00:01.000 --> 00:00:02.000\n<v Ana>salt &amp; &lt;smoke&gt;\n\n"
        "00:00:02.000 --> 00:00:03.000\n<v Bram>no\n"
    )


def test_a_long_cue_is_cut_into_cues_of_two_lines(empty: Notes) -> None:
    """In order of time, without a gap between them."""
    source = f"[0:00] {'smoke and plum ' * 20}\n[0:40] done\n"
    made = written(empty, source) or ""
    blocks = made.strip().split("\n\n")[1:]
    assert all(len(block.splitlines()) <= 3 for block in blocks)
    assert all(len(line) <= 42 for block in blocks for line in block.splitlines()[1:])
    times = [block.split("\n")[0].split(" --> ") for block in blocks]
    assert [start for start, _ in times[1:]] == [end for _, end in times[:-1]]


def test_repairs_are_in_it(empty: Notes) -> None:
    """As they are in the mended file."""
    repair = Repair(
        id="r", start=1, end=2, quote="guy one", span=(4, 11), confidence=1, why=(), heard="guy one", meant="gaiwan"
    )
    made = written(empty, "[0:01] The guy one is hot.\n[0:05] So hot.\n", repair)
    assert "The gaiwan is hot." in (made or "")
