"""Names written before what is said."""

import pytest

from notesmith.transcript import parse_captions


def _speakers(*lines: str) -> list[str | None]:
    return [cue.speaker for cue in parse_captions("\n".join(lines).encode(), "talk.txt").cues]


def test_names_that_recur() -> None:
    """Names that open the talk and recur are speakers, and hold until the next."""
    assert _speakers("Orla: one", "and two", "Piet: three", "Orla: four", "Piet: five") == [
        "Orla", "Orla", "Piet", "Orla", "Piet",
    ]  # fmt: skip


@pytest.mark.parametrize("name", ["Speaker 1", "SPEAKER_00", "[Orla]", "Mary-Ann O'Dea", "DR. Ó BRIAIN", "Žofie"])
def test_kinds_of_name(name: str) -> None:
    """Numbers, underscores, brackets, hyphens and accents occur in names."""
    assert _speakers(f"{name}: one", f"{name}: two") == [name.strip("[]")] * 2


@pytest.mark.parametrize(
    "lines",
    [
        ("one", "Note: two", "three", "Note: four"),
        ("Nose: hay", "Palate: hay", "Nose: dust", "Palate: dust"),
        ("Cup 1: hay", "Cup 2: dust", "Cup 1: hay"),
        ("one", "Orla: two", "three", "four"),
        ("so here is the thing: tea", "so here is the thing: coffee"),
    ],
)
def test_no_names(lines: tuple[str, ...]) -> None:
    """Headings, a name that does not recur and ordinary colons are what was said."""
    captions = parse_captions("\n".join(("It begins.", *lines)).encode(), "talk.txt")
    assert {cue.speaker for cue in captions.cues} == {None}
    assert captions.cues[-1].text == lines[-1]


def test_voice_tags_leave_prefixes_alone() -> None:
    """Where the format tells the speaker, a colon is what was said."""
    text = "WEBVTT\n\n00:01.000 --> 00:02.000\n<v Orla>Piet: come in\n\n00:02.000 --> 00:03.000\n<v Orla>Piet: sit\n"
    captions = parse_captions(text.encode(), "talk.vtt")
    assert [(cue.speaker, cue.text) for cue in captions.cues] == [("Orla", "Piet: come in"), ("Orla", "Piet: sit")]
