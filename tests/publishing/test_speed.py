"""How long publishing takes beside taking the notes: the processor's time of both, the least of several rounds."""

from pathlib import Path
from time import process_time

import pytest

from notesmith import read_sheet, take_notes
from notesmith.publishing import Episode, publish
from notesmith.transcript import parse_captions
from tests.test_speed import DEMO, an_hour_of_talk

ROUNDS = 3


@pytest.mark.benchmark
def test_publishing_an_hour_takes_no_longer_than_taking_its_notes(tmp_path: Path) -> None:
    """Everything: pages, pictures, tables and all."""
    source = an_hour_of_talk()
    captions, sheet = parse_captions(source, "hour.txt"), read_sheet(DEMO / "pegs.sheet.toml")
    notes = take_notes(captions, sheet)
    publish(Episode(notes, captions, source), tmp_path)
    taking, publishing = [], []
    for _ in range(ROUNDS):
        begun = process_time()
        take_notes(captions, sheet)
        taken = process_time()
        publish(Episode(notes, captions, source), tmp_path, force=True)
        taking.append(taken - begun)
        publishing.append(process_time() - taken)
    assert min(publishing) <= min(taking), (publishing, taking)
