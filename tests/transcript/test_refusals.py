"""Bad input: one clear line, whatever is wrong."""

from pathlib import Path

import pytest

from notesmith.errors import CaptionError
from notesmith.transcript import parse_captions, read_captions

BOMB = '<?xml version="1.0"?><!DOCTYPE tt [<!ENTITY a "aaaa"><!ENTITY b "&a;&a;">]><tt><body><p>&b;</p></body></tt>'
TT = '<tt xmlns="http://www.w3.org/ns/ttml"{0}><body><p begin="{1}" end="9s">word</p></body></tt>'
REFUSED = {
    "no cues": ("WEBVTT\n", "no words are captioned"),
    "cues without words": ("WEBVTT\n\n00:01.000 --> 00:02.000\n<v Orla></v>\n", "no words are captioned"),
    "a name alone": ("1\n00:00:01,000 --> 00:00:02,000\nORLA:\n", "no words are captioned"),
    "truncated JSON": ('{"segments": [\n{"start": 1, "te', "line 2.*truncated JSON"),
    "JSON of no shape": ('{"recipe": "tea"}', "no known transcript shape"),
    "JSON of two shapes": (
        '{"segments": [{"start": 1, "text": "a", "startTime": 1, "body": "a"}]}',
        "could be read as recogniser segments .* or Podcast Namespace segments",
    ),
    "a key twice": ('{"segments": [{"start": 1, "start": 2, "text": "a"}]}', "'start' is given twice"),
    "NaN": ('{"segments": [{"start": NaN, "text": "a"}]}', "NaN is no time"),
    "infinite": ('{"segments": [{"start": 1e999, "text": "a"}]}', "'inf' is no time"),
    "negative in JSON": ('{"segments": [{"start": -1.5, "text": "a"}]}', "'-1.5' is no time"),
    "a word for a time": ('{"segments": [{"start": "soon", "text": "a"}]}', "'soon' is no time"),
    "seconds or milliseconds": (
        '{"segments": [{"start": 0, "end": 4000, "text": "two words"}]}',
        "seconds or milliseconds",
    ),
    "milliseconds or seconds": (
        '{"words": [{"text": "a", "start": 1}, {"text": "b", "start": 2}, {"text": "c", "start": 3}]}',
        "milliseconds or seconds",
    ),
    "deep JSON": ('{"segments": ' + "[" * 100_000, "nested too deep"),
    "negative in WebVTT": ("WEBVTT\n\n-00:01.000 --> 00:02.000\na\n", "line 3: a time below zero"),
    "past a day": ("WEBVTT\n\n99:00:00.000 --> 99:00:01.000\na\n", "99:00:00|99:00:01, past 24 hours"),
    "entity bomb": (BOMB, "document type"),
    "truncated XML": ("<tt><body><p begin='1s'>a", "broken or truncated XML"),
    "other XML": ("<?xml version='1.0'?><recipe/>", "its root is <recipe>"),
    "deep XML": ("<tt>" + "<div>" * 1000, "nested too deep"),
    "bad TTML time": (TT.format("", "soon"), "begin='soon' is no time"),
    "bad TTML rate": (TT.format(' xmlns:p="p" p:frameRate="0"', "1f"), "frameRate='0' is no rate"),
    "bad TTML multiplier": (TT.format(' xmlns:p="p" p:frameRateMultiplier="1 0"', "1f"), "is no ratio"),
    "an ordinary page": ("<!DOCTYPE html><html><p>Hello</p></html>", "HTML that is no transcript"),
    "a page with a bad time": ("<cite>Orla</cite>\n<time>noon</time><p>Hello</p>", "line 2: not a clock time: 'noon'"),
    "SCC": ("Scenarist_SCC V1.0\n\n00:00:01:00 9420", "SCC captions, which is not read"),
    "ASS": ("[Script Info]\nTitle: tea", "ASS captions"),
    "MicroDVD": ("{0}{25}Hello", "MicroDVD"),
    "rich text": ("{\\rtf1 Hello}", "rich text"),
    "two formats": ("[0:01] a\n[0:02] b\n1\n00:00:03,000 --> 00:00:04,000\nc\n", "SubRip or lines that"),
    "half stamped": ("a\nb\nc\nd\n0:10 e\n0:20 f\ng\nh\n", "2 of 8 lines open with a time.*or plain text"),
    "seconds over 59": ("[0:01] a\n[0:75] b\n", "line 2: minutes or seconds over 59"),
    "two files joined": (
        "".join(f"{k}\n00:0{k // 6}:{k % 6}0,000 --> 00:0{k // 6}:{k % 6}9,000\nword {k}\n\n" for k in range(30)) * 2,
        "the times start again at 0:30, as in two caption files joined",
    ),
}


@pytest.mark.parametrize(("text", "said"), REFUSED.values(), ids=REFUSED)
def test_refused_in_one_line(text: str, said: str) -> None:
    """The message names the file, says what is wrong and how to mend it, in one line."""
    with pytest.raises(CaptionError, match=said) as caught:
        parse_captions(text.encode(), "talk.txt")
    message = str(caught.value)
    assert message.startswith("talk.txt")
    assert "\n" not in message
    assert caught.value.mend


def test_missing_file(tmp_path: Path) -> None:
    """A file that is not there is named."""
    with pytest.raises(CaptionError, match=r"gone\.vtt: cannot be opened \(no such file"):
        read_captions(tmp_path / "gone.vtt")


def test_folder(tmp_path: Path) -> None:
    """A folder is no caption file."""
    with pytest.raises(CaptionError, match="this is a folder"):
        read_captions(tmp_path)


def test_impossible_name() -> None:
    """A name that no file can have is refused like a missing one."""
    with pytest.raises(CaptionError, match="cannot be opened"):
        read_captions("talk\0.vtt")
