"""How large and how hostile a file may be."""

import json
import time
from collections.abc import Callable
from contextlib import suppress

import pytest

from notesmith.errors import CaptionError
from notesmith.transcript import Talk, parse_captions
from notesmith.transcript.limits import MAX_BYTES, MAX_CUES, MAX_WORDS

LINE = 200_000


def _cues(count: int) -> bytes:
    times = ((k, k // 3600, k // 60 % 60, k % 60) for k in range(count))
    return b"WEBVTT\n\n" + b"".join(
        f"{h:02}:{m:02}:{s:02}.000 --> {h:02}:{m:02}:{s:02}.900\n<v Orla>seven words of cue {k} are said\n\n".encode()
        for k, h, m, s in times
    )


def _seconds(work: Callable[[], object]) -> float:
    start = time.process_time()
    work()
    return time.process_time() - start


@pytest.mark.benchmark
def test_reading_grows_with_the_length_and_not_with_its_square() -> None:
    """Ten times the cues take at most 25 times as long (the square would be a hundred times)."""
    short, long = _cues(1_000), _cues(10_000)

    def fastest(data: bytes) -> float:
        return min(_seconds(lambda: Talk.from_captions(parse_captions(data, "talk.vtt"))) for _ in range(3))

    assert fastest(long) <= 25 * fastest(short)


HOSTILE = {
    "unclosed tags": "<a" * (LINE // 2),
    "unclosed known tags": "<c " * (LINE // 3),
    "voices": "<v " * (LINE // 3),
    "brackets": "<" * LINE,
    "spaced brackets": "< " * (LINE // 2),
    "ampersands": "&" * LINE,
    "unclosed entities": "&amp" * (LINE // 4),
    "overrides": "{\\" * (LINE // 2),
    "arrows": "-->" * (LINE // 3),
    "comments": "<!--" * (LINE // 4),
    "digits": "1" * LINE,
    "times": "00:01:" * (LINE // 6),
    "spaces": "a" + " " * LINE + "b",
    "colons": "A:" * (LINE // 2),
    "quotes": '\\"' * (LINE // 2),
}
FRAMES = {
    "plain": "{}",
    "WebVTT": "WEBVTT\n\n00:01.000 --> 00:02.000\nword {}\n",
    "SubRip": "1\n00:00:01,000 --> 00:00:02,000\nword {}\n",
    "stamped": "[0:01] word\n[0:02] {}\n",
    "page": "<cite>Orla</cite><time>0:01</time><p>word {}</p>",
    "broken page": "<cite>{}",
    "broken JSON": '{{"segments": [{{"text": "{}',
    "XML": "<tt><body><p begin='1s'>{}</p></body></tt>",
}


@pytest.mark.parametrize("line", HOSTILE.values(), ids=HOSTILE)
@pytest.mark.parametrize("frame", FRAMES.values(), ids=FRAMES)
def test_hostile_line_is_read_or_refused_at_once(frame: str, line: str) -> None:
    """A line of 200 kB, whatever it repeats, takes linear time and ends in captions or a clear refusal."""

    def read() -> None:
        with suppress(CaptionError):
            parse_captions(frame.format(line).encode(), "talk")

    assert _seconds(read) < 2


@pytest.mark.slow
def test_too_many_cues() -> None:
    """More than 200,000 cues are refused."""
    data = b"WEBVTT\n\n" + b"00:01.000 --> 00:02.000\na\n\n" * (MAX_CUES + 1)
    with pytest.raises(CaptionError, match="more than 200,000 cues"):
        parse_captions(data, "talk.vtt")


@pytest.mark.slow
def test_too_many_words() -> None:
    """More than a million words are refused."""
    with pytest.raises(CaptionError, match="more than 1,000,000 words"):
        parse_captions(b"a " * (MAX_WORDS + 1), "talk.txt")


def test_too_many_bytes() -> None:
    """More than 64 MB are refused before they are looked at."""
    with pytest.raises(CaptionError, match="larger than 64 MB"):
        parse_captions(bytes(MAX_BYTES + 1), "talk.txt")


def test_warnings_are_few() -> None:
    """A file that is wrong throughout gives twenty warnings and a count."""
    segments = [{"start": k, "end": k - 0.5, "text": "a"} for k in range(1, 101)]
    captions = parse_captions(json.dumps({"segments": segments}).encode(), "talk.json")
    assert len(captions.warnings) == 21
    assert captions.warnings[-1] == "and 80 more"


@pytest.mark.parametrize(
    ("data", "said"),
    [
        (b"[0:01] a\n" + b"\n" * 2_000_000, "more than 2,000,000 lines"),
        (b'{"segments": [' + b"[]," * 4_000_000 + b"[]]}", "more than 4,000,000 objects and lists"),
        (b"<tt>" + b"<p/>" * 2_000_001 + b"</tt>", "more than 2,000,000 elements"),
        (b"WEBVTT\n\n00:01.000 --> 00:02.000\na" + b"&amp;" * 1_000_001, "more than 1,000,000 marks"),
    ],
)
@pytest.mark.slow
def test_swollen(data: bytes, said: str) -> None:
    """Files that hold far more of something than any recording does are refused before they fill the memory."""
    with pytest.raises(CaptionError, match=said):
        parse_captions(data, "talk")
