"""How long listening takes, beside the English pipeline's own pass over the same talk: a ratio, taken in one run."""

from pathlib import Path
from statistics import median
from time import perf_counter

import pytest

from notesmith import Lexicon, read_captions, read_sheet, take_notes
from notesmith.listening.pipeline import QUESTIONS, listener
from notesmith.transcript import Talk, parse_captions

DEMO = Path(__file__).parents[1] / "samples" / "demo"
HOUR_WORDS = 9_000
ROUNDS = 5


def an_hour_of_talk() -> bytes:
    """The demo recording said again and again, as stamped lines, until it has an hour's words."""
    cues = read_captions(DEMO / "pegs.vtt").cues
    length_ms = cues[-1].start_ms + 10_000
    times = -(-HOUR_WORDS // sum(len(cue.words) for cue in cues))
    lines = [
        f"[{(cue.start_ms + k * length_ms) // 60000}:{(cue.start_ms + k * length_ms) // 1000 % 60:02}] {cue.text}"
        for k in range(times)
        for cue in cues
    ]
    return "\n".join(lines).encode()


@pytest.mark.benchmark
@pytest.mark.xfail(reason="about 2.1 times: facts, sections and topics cost most of what is over")
def test_notes_of_an_hour_take_at_most_one_and_a_half_times_the_tagger_alone() -> None:
    """Rules, lexicon and all may cost half as much again as spaCy's own pass with the same components, not more."""
    captions = parse_captions(an_hour_of_talk(), "hour.txt")
    talk, sheet, lexicon = Talk.from_captions(captions), read_sheet(DEMO / "pegs.sheet.toml"), Lexicon.load()
    nlp = listener()
    spacys_own = [name for name in nlp.pipe_names if name not in {"notesmith_words", *(q for q, _ in QUESTIONS)}]
    take_notes(captions, sheet, lexicon=lexicon)
    ratios = []
    for _ in range(ROUNDS):
        begun = perf_counter()
        with nlp.select_pipes(enable=spacys_own):
            nlp(talk.text)
        tagged = perf_counter()
        take_notes(captions, sheet, lexicon=lexicon)
        ratios.append((perf_counter() - tagged) / (tagged - begun))
    assert median(ratios) <= 1.5, ratios
