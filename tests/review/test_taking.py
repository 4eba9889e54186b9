"""Notes taken with corrections heeded: before listening what was taught, after it the rest."""

import json
from pathlib import Path

import pytest

from notesmith.errors import NotesFileError
from notesmith.jobs import do, notes_of, plan, renderer
from notesmith.lexicon import Lexicon
from notesmith.records import Notes, Sheet, SheetPreparation, SheetSample
from notesmith.review.corrections import append, corrections_path, read_corrections
from notesmith.review.edits import Alias, Change, Edit, Mend, Replace, Teach, Undo, Words
from notesmith.review.saying import said, words_at
from notesmith.review.taking import amended_sheet, heeding, listened, taught_lexicon, uncorrected
from notesmith.transcript import Captions, Talk, read_captions

DEMO = Path(__file__).parents[2] / "samples" / "demo" / "pegs.vtt"
AT = "2031-05-01T09:00:00+00:00"
TALK = """WEBVTT

00:01.000 --> 00:05.000
Left cup first. It's malty and smoky.

00:05.000 --> 00:10.000
Now the heron. The heron is sweet, and there's no plum in it.
"""
SHEET = Sheet(category="black tea", samples=(SheetSample(id="left"), SheetSample(id="right")))


@pytest.fixture
def captions(tmp_path: Path) -> Path:
    """A short talk, with its sheet beside it."""
    path = tmp_path / "talk.vtt"
    path.write_text(TALK)
    sheet = 'category = "black tea"\n[[samples]]\nid = "left"\n[[samples]]\nid = "right"\n'
    (tmp_path / "talk.sheet.toml").write_text(sheet)
    return path


def _alias(of: str = "right", alias: str = "heron") -> Alias:
    return Alias(id="a", at=AT, of=of, alias=alias)


def _of(notes: Notes, captions: Captions, term: str, **fields: str) -> Change:
    o = next(o for o in notes.observations if o.term == term)
    return Change(id=f"c-{term}", at=AT, record=said(notes, Talk.from_captions(captions), o), set=dict(fields))


def test_without_corrections_the_lexicon_is_ours() -> None:
    """The very one, for loading takes its time."""
    assert taught_lexicon(()) is Lexicon.load()


def test_a_word_that_was_taught_stands_for_its_concept() -> None:
    """From then on, and no longer when it is undone."""
    teach = Teach(id="t", at=AT, label="wet kerbstone", concept="malt")
    assert taught_lexicon((teach,)).look_up("wet kerbstone").concept == "malt"  # type: ignore[union-attr]
    assert taught_lexicon((teach, Undo(id="u", at=AT, edit="t"))) is Lexicon.load()


def test_a_mishearing_mended_everywhere_is_known_to_the_lexicon() -> None:
    """Where what was meant is one of its words."""
    words = Words(text="multi", span=(0, 5))
    mends = [Mend(id=meant, at=AT, heard="Multi", meant=meant, words=words) for meant in ("malty", "Quarry Gate")]
    assert taught_lexicon(mends[:1]).misheard["multi",].concept == "malt"
    assert taught_lexicon(mends[1:]) is Lexicon.load()


@pytest.mark.parametrize(
    ("edits", "aliases"),
    [
        ((), ("the far one",)),
        ((_alias(),), ("the far one", "heron")),
        ((_alias(), Undo(id="u", at=AT, edit="a")), ("the far one",)),
        ((_alias(alias="The far one"),), ("The far one",)),
        ((_alias(of="nine"),), ("the far one",)),
    ],
)
def test_names_are_added_to_the_sheet(edits: tuple[Edit, ...], aliases: tuple[str, ...]) -> None:
    """Once each, and taken away when that is undone."""
    sheet = Sheet(samples=(SheetSample(id="left"), SheetSample(id="right", aliases=("the far one",))))
    assert amended_sheet(sheet, edits).samples[1].aliases == aliases


def test_names_of_preparations_are_added_too() -> None:
    """Beside those of samples."""
    sheet = Sheet(preparations=(SheetPreparation(id="cold"),))
    assert amended_sheet(sheet, (_alias(of="cold"),)).preparations[0].aliases == ("heron",)


def test_a_name_that_the_sheet_lacked_decides_whose_it_is(captions: Path) -> None:
    """What was said under that name is noted of the sample."""
    append(corrections_path(captions), _alias())
    notes = notes_of(captions)
    assert {o.term: o.sample for o in notes.observations}["sweet"] == "right"


def test_corrections_beside_the_captions_are_made_on_every_run(captions: Path) -> None:
    """Whatever form is written, the same bytes each time."""
    before, read = notes_of(captions), read_captions(captions)
    delete = said(before, Talk.from_captions(read), before.observations[1])
    append(corrections_path(captions), _of(before, read, "malty", presence="absent", facet="aroma"))
    append(corrections_path(captions), Replace(id="d", at=AT, do="delete", records=(delete,)))
    (job,) = plan([captions], "json")
    first, second = (do(job, renderer("json", width=80, colour=False)) for _ in range(2))
    assert first == second
    notes = json.loads(first or "")
    assert [(o["presence"], o["facet"]) for o in notes["observations"] if o["term"] == "malty"] == [("absent", "aroma")]
    assert before.observations[1].term not in [o["term"] for o in notes["observations"]]


def test_corrections_that_are_broken_stop_the_run(captions: Path) -> None:
    """Notes without them would be taken for corrected ones."""
    corrections_path(captions).write_text("[")
    with pytest.raises(NotesFileError, match=r"talk\.corrections\.json: holds no corrections"):
        notes_of(captions)


def test_an_edit_whose_words_are_gone_is_told_and_kept(captions: Path) -> None:
    """In the warnings, and in the file."""
    edit = _of(notes_of(captions), read_captions(captions), "malty", presence="absent")
    append(corrections_path(captions), edit)
    captions.write_text(TALK.replace("malty", "salty"))
    assert any('"malty" no longer stands' in warning for warning in notes_of(captions).warnings)
    assert read_corrections(corrections_path(captions)) == (edit,)


def test_notes_that_hold_corrections_are_listened_to_anew(captions: Path) -> None:
    """So that what was corrected can be undone."""
    read = read_captions(captions)
    before = heeding(read, SHEET, ())
    edits = (_of(before, read, "malty", presence="absent"),)
    after = listened(read, SHEET, edits)
    assert after != before
    assert uncorrected(after, read, edits) == before
    assert uncorrected(before, read, edits) is before


def test_a_name_for_a_drafted_sample_is_heeded_and_the_sheet_stays_a_draft() -> None:
    """Without a sheet of one's own."""
    read = read_captions(DEMO)
    (first, *_) = heeding(read, None, ()).samples
    notes = heeding(read, None, (_alias(of=first),))
    assert notes.sheet_drafted
    assert notes.sheet.samples[0].aliases[-1] == "heron"


def test_a_word_of_no_concept_is_told(captions: Path) -> None:
    """And the rest is done."""
    teach = Teach(id="t", at=AT, label="wet kerbstone", concept="no-such-thing")
    notes = listened(read_captions(captions), SHEET, (teach,))
    assert notes.warnings[-1] == "\"wet kerbstone\" could not be taught: the lexicon has no concept 'no-such-thing'"


def test_a_mended_mishearing_is_repaired_in_the_notes(captions: Path) -> None:
    """Wherever it stands."""
    captions.write_text(TALK.replace("malty", "multi"))
    read = read_captions(captions)
    talk = Talk.from_captions(read)
    at = talk.text.index("multi")
    mend = Mend(id="m", at=AT, heard="multi", meant="malty", words=words_at(talk, at, at + 5))
    notes = listened(read, SHEET, (mend,))
    assert [(r.heard, r.meant, r.confidence) for r in notes.repairs] == [("multi", "malty", 1.0)]
    assert [o.concept for o in notes.observations if o.term == "multi"] == ["malt"]


def test_a_lexicon_of_ones_own_is_laid_over_ours(captions: Path, tmp_path: Path) -> None:
    """With what was taught in review on top."""
    (tmp_path / "mine").mkdir()
    (tmp_path / "mine" / "labels.tsv").write_text(
        "concept\tlabel\tkind\tform\tuse\nmalt\twet kerbstone\tsynonym\tnoun\t\n"
    )
    teach = Teach(id="t", at=AT, label="tarred rope", concept="smoky")
    both = taught_lexicon((teach,), (tmp_path / "mine",))
    found = [label.concept for text in ("wet kerbstone", "tarred rope") if (label := both.look_up(text))]
    assert found == ["malt", "smoky"]
    captions.write_text(TALK.replace("malty", "wet kerbstone"))
    concepts = {o.term: o.concept for o in notes_of(captions, lexicon=(tmp_path / "mine",)).observations}
    assert concepts["wet kerbstone"] == "malt"
