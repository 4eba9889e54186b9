"""A recording of two hours: 18,000 words in 1,800 cues, and 1,500 records."""

from pathlib import Path

from notesmith.publishing import json_text
from notesmith.records import Notes, Sheet, SheetSample
from notesmith.review.edits import Value
from notesmith.review.saying import drafted, made
from notesmith.transcript import Talk, read_captions

CUES, RECORDS, WORDS = 1_800, 1_500, 10
SAMPLES = ("A", "B", "C", "D")
PERCEIVED: dict[str, Value] = {
    "concept": None, "facet": "flavour", "presence": "present", "intensity": None, "taster": "Ana",
    "preparation": None, "voice": "taster",
}  # fmt: skip


def written(folder: Path) -> Path:
    """Write captions and notes into the folder, and answer where the notes lie."""
    captions = folder / "long.vtt"
    captions.write_text("WEBVTT\n\n" + "\n".join(_cue(number) for number in range(CUES)), "utf-8")
    talk = Talk.from_captions(read_captions(captions))
    assert len(talk.words) == CUES * WORDS
    observations = []
    for number in range(RECORDS):
        word = talk.words[(number * len(talk.words)) // RECORDS + 3]
        says = PERCEIVED | {"sample": SAMPLES[number * len(SAMPLES) // RECORDS]}
        draft = drafted(talk, "observation", (word.start, word.end), says)
        record = made(talk, draft, (word.start, word.end), (word.start, word.end), "listening", number)
        observations.append(record.model_copy(update={"why": (), "confidence": 0.5 + number % 50 / 100}))
    notes = Notes(
        transcript="long.vtt", sheet=Sheet(samples=tuple(SheetSample(id=one) for one in SAMPLES), tasters=("Ana",)),
        sheet_drafted=False, samples=SAMPLES, observations=tuple(observations), comparisons=(), preferences=(),
        facts=(), reveals=(), sections=(), repairs=(), ignored=(), warnings=(),
    )  # fmt: skip
    path = folder / "long.notes.json"
    path.write_text(json_text.render(notes), "utf-8")
    return path


def _cue(number: int) -> str:
    start, words = number * 4, " ".join(f"w{number}x{place}" for place in range(WORDS))
    return f"{_clock(start)}.000 --> {_clock(start + 4)}.000\n{words}\n"


def _clock(seconds: int) -> str:
    return f"{seconds // 3600:02}:{seconds // 60 % 60:02}:{seconds % 60:02}"
