"""The trained encoder: trusted only as published, and the same whatever the machine does besides."""

import shutil
from pathlib import Path

import numpy as np
import pytest

from notesmith.lexicon import Lexicon
from notesmith.listening import encoder, learned, take_notes
from notesmith.listening.encoder import FOLDER, Encoder, load_encoder
from notesmith.listening.hearing import Hearing
from notesmith.listening.pipeline import listen
from notesmith.listening.shown import PARTS, SIGHTS, cast_parts, show
from notesmith.listening.told import POINTERS, WIDTHS
from notesmith.sheet import read_sheet
from notesmith.transcript import Talk, read_captions

DEMO = Path(__file__).parents[2] / "samples" / "demo"


@pytest.fixture(scope="module")
def heard() -> Hearing:
    """The demo recording as the rules hear it."""
    captions = read_captions(DEMO / "pegs.vtt")
    return listen(Talk.from_captions(captions), read_sheet(DEMO / "pegs.sheet.toml"), Lexicon.load(), by_rules=True)


def test_what_is_shown_stays_within_its_size(heard: Hearing) -> None:
    """Every sight takes only values that its table has."""
    sights = show(heard, cast_parts(heard))
    assert sights.shape == (len(heard.words), len(SIGHTS))
    assert (sights.max(axis=0) < list(SIGHTS.values())).all()
    assert sights.min() >= 0


def test_a_part_is_played_by_a_sample_of_the_sheet(heard: Hearing) -> None:
    """Slots count the sheet's samples from one; nobody plays the part of nobody."""
    parts = cast_parts(heard).parts
    assert parts.shape == (len(heard.words), len(PARTS))
    assert set(np.unique(parts)) == set(range(len(heard.sheet.samples) + 1))
    assert not parts[:, 0].any()


def test_every_word_is_answered(heard: Hearing) -> None:
    """A row a word for every head and pointer, and a head's probabilities make one."""
    answers = _loaded().answer(heard, show(heard, cast_parts(heard)))
    assert list(answers) == [*WIDTHS, *POINTERS]
    assert {len(answer) for answer in answers.values()} == {len(heard.words)}
    assert np.allclose(answers["description"].sum(axis=1), 1, atol=1e-5)


def test_no_words_are_no_answers() -> None:
    """An empty talk is answered with no rows."""
    nothing = Hearing(
        Talk.from_captions(read_captions(DEMO / "pegs.vtt")), read_sheet(DEMO / "pegs.sheet.toml"), Lexicon.load()
    )
    answers = _loaded().answer(nothing, np.zeros((0, len(SIGHTS)), dtype=np.int16))
    assert {len(answer) for answer in answers.values()} == {0}


def test_one_thread_answers_as_two_do(heard: Hearing) -> None:
    """The answers do not depend on how many threads share the work."""
    sights = show(heard, cast_parts(heard))
    one, two = (Encoder(FOLDER, threads=threads).answer(heard, sights) for threads in (1, 2))
    assert all(np.array_equal(one[name], two[name]) for name in one)


def test_a_file_that_is_not_the_published_one_is_refused(tmp_path: Path) -> None:
    """One byte more, and the encoder is not trusted."""
    shutil.copytree(FOLDER, tmp_path / "model")
    with (tmp_path / "model" / "encoder.onnx").open("ab") as file:
        file.write(b"x")
    assert load_encoder(tmp_path / "model") == "the trained encoder's file is not the one that was published"


def test_an_encoder_made_for_other_rules_is_refused(tmp_path: Path) -> None:
    """Columns that mean something else are not read as if they did not."""
    shutil.copytree(FOLDER, tmp_path / "model")
    about = tmp_path / "model" / "encoder.json"
    about.write_text(about.read_text("utf-8").replace('"topic"', '"tropic"'), "utf-8")
    assert load_encoder(tmp_path / "model") == "the trained encoder was made for another version of the rules"


def test_without_the_encoder_the_rules_answer_alone_and_say_so(
    monkeypatch: pytest.MonkeyPatch, tmp_path: Path, heard: Hearing
) -> None:
    """The notes are those of the rules, with a warning."""
    monkeypatch.setattr(learned, "load_encoder", lambda: load_encoder(tmp_path))
    notes = take_notes(read_captions(DEMO / "pegs.vtt"), read_sheet(DEMO / "pegs.sheet.toml"))
    assert notes.warnings[-1] == "the trained encoder is not installed: the rules listened alone"
    assert [o.term for o in notes.observations] == [
        heard.said(p.description.start, p.description.end) for p in heard.perceptions
    ]


def test_the_package_stays_small() -> None:
    """Everything beside the encoder together takes less than 25 MB."""
    assert sum(file.stat().st_size for file in FOLDER.iterdir()) < 25_000_000


def _loaded() -> Encoder:
    loaded = encoder.load_encoder()
    assert isinstance(loaded, Encoder)
    return loaded


def test_every_perception_says_why_it_is_one_and_whose() -> None:
    """The encoder's mark and the reason for the sample stand among the grounds of each observation."""
    notes = take_notes(read_captions(DEMO / "pegs.vtt"), read_sheet(DEMO / "pegs.sheet.toml"))
    reasons = [[why.rule for why in o.why] for o in notes.observations]
    assert all(rules[0].startswith("encoder 0.") or rules[0] == "encoder 1.00" for rules in reasons)
    assert all(any(rule.startswith("sample ") for rule in rules) for rules in reasons)
