"""How long listening takes, beside the English pipeline's own pass over the same talk: a ratio, taken in one run.

It is the processor's time, and the least of several rounds in turn: what else the machine does lengthens a round, and
nothing shortens one. spaCy's own pass is made by a pipeline of its own, which nobody has prepared for the talk.
"""

from importlib import import_module
from importlib.util import find_spec
from pathlib import Path
from time import perf_counter, process_time

import pytest

from notesmith import Lexicon, read_captions, read_sheet
from notesmith.collection import collection_put_off
from notesmith.listening.english import PACKAGES, load_english
from notesmith.listening.notes import write_notes
from notesmith.listening.pipeline import listen
from notesmith.records import Notes, Sheet
from notesmith.transcript import Captions, Talk, parse_captions

DEMO = Path(__file__).parents[1] / "samples" / "demo"
HOUR_WORDS = 9_000
ROUNDS, ROUNDS_BY_CLOCK = 9, 4


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


@collection_put_off()
def notes_by_rules(captions: Captions, sheet: Sheet, lexicon: Lexicon) -> Notes:
    """What the rules alone note."""
    hearing = listen(Talk.from_captions(captions), sheet, lexicon, by_rules=True)
    return write_notes(hearing, captions, drafted=False)


@pytest.mark.benchmark
def test_notes_of_an_hour_by_rules_take_at_most_one_and_a_half_times_the_tagger_alone() -> None:
    """Rules, lexicon and all may cost half as much again as spaCy's own pass with the same components, not more."""
    captions = parse_captions(an_hour_of_talk(), "hour.txt")
    talk, sheet, lexicon = Talk.from_captions(captions), read_sheet(DEMO / "pegs.sheet.toml"), Lexicon.load()
    spacys_own = load_english.__wrapped__()
    spacys_own(talk.text)
    notes_by_rules(captions, sheet, lexicon)
    passes, notes = [], []
    for _ in range(ROUNDS):
        begun = process_time()
        spacys_own(talk.text)
        tagged = process_time()
        notes_by_rules(captions, sheet, lexicon)
        passes.append(tagged - begun)
        notes.append(process_time() - tagged)
    assert min(notes) <= 1.5 * min(passes), (min(notes) / min(passes), notes, passes)


@pytest.mark.benchmark
def test_notes_of_an_hour_by_rules_and_encoder_take_at_most_twice_the_tagger_and_parser() -> None:
    """All that listens may take as long again as spaCy's own pass with tagger and parser, by the clock."""
    captions = parse_captions(an_hour_of_talk(), "hour.txt")
    talk, sheet, lexicon = Talk.from_captions(captions), read_sheet(DEMO / "pegs.sheet.toml"), Lexicon.load()
    spacys_own = import_module(next(filter(find_spec, PACKAGES))).load(exclude=["ner"])
    passes, notes = [], []
    for _ in range(ROUNDS_BY_CLOCK):
        begun = perf_counter()
        spacys_own(talk.text)
        parsed = perf_counter()
        write_notes(listen(talk, sheet, lexicon), captions, drafted=False)
        passes.append(parsed - begun)
        notes.append(perf_counter() - parsed)
    assert min(notes) <= 2.0 * min(passes), (min(notes) / min(passes), notes, passes)
