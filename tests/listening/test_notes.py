"""From what was heard to the published notes."""

from time import process_time

import pytest

from notesmith.errors import CaptionError, NoTastingError
from notesmith.listening import take_notes
from notesmith.listening.hearing import Revealed
from notesmith.listening.notes import write_notes
from notesmith.records import Evidenced, Notes, Sheet, SheetSample
from notesmith.transcript import Talk, parse_captions
from tests.listening.conftest import Hear, captions_of

SHEET = Sheet(
    category="tea",
    samples=(SheetSample(id="left"), SheetSample(id="right")),
    tasters=("Mo",),
    blind=True,
)
TALK = """
[0:00] Now the left. On the nose I get burnt sugar, plum and leather.
[0:05] It's not bitter on the palate, a hint of smoke. Do you get mint?
[0:10] Now the right. It's a lot sweeter than the left. I get plum notes, and plum on the palate.
[0:20] I prefer the right.
[0:25] Let's find out. The left is an Assam and the right is a Keemun.
[0:30] The left was nine pounds for fifty grams.
"""


def noted(talk: str = TALK, sheet: Sheet = SHEET) -> Notes:
    """The notes of a talk."""
    return take_notes(captions_of(talk), sheet)


def records(notes: Notes) -> list[Evidenced]:
    """All records of the notes."""
    return [
        *notes.observations, *notes.comparisons, *notes.preferences, *notes.facts,
        *notes.reveals, *notes.sections, *notes.repairs, *notes.ignored,
    ]  # fmt: skip


def test_talk_of_nothing_is_no_tasting() -> None:
    """Where no sample is named and nothing perceived, there is nothing to note."""
    with pytest.raises(NoTastingError, match="nothing is tasted"):
        noted("Hello and welcome, mind the step.")


def test_talk_of_nothing_is_no_tasting_without_a_sheet_either() -> None:
    """The refusal says how to mend it."""
    with pytest.raises(NoTastingError, match="--sheet"):
        take_notes(captions_of("Hello and welcome, mind the step."))


def test_one_perception_is_a_tasting() -> None:
    """A single perception is enough where a sheet says what is tasted."""
    assert [o.term for o in noted("On the nose I get honey notes.").observations] == ["honey"]


def test_same_talk_gives_the_same_bytes() -> None:
    """Notes of the same talk and sheet do not differ by a byte."""
    assert noted().model_dump_json() == noted().model_dump_json()


def test_every_id_is_its_own() -> None:
    """No two records have the same id, though the same words come twice."""
    ids = [record.id for record in records(noted())]
    assert len(set(ids)) == len(ids)
    assert [o.term for o in noted().observations].count("plum") > 1


def test_ids_outlive_a_change_elsewhere() -> None:
    """Words that stay keep their ids when other words come before them, and when their times move."""
    before = {o.id for o in noted("[0:00] On the nose I get leather.").observations}
    after = {o.id for o in noted("[0:00] Hello. It tastes of plum.\n[0:09] On the nose I get leather.").observations}
    assert before < after


def test_an_id_changes_with_the_words() -> None:
    """Other words get another id."""
    leather = {o.id for o in noted("On the nose I get leather notes.").observations}
    assert not leather & {o.id for o in noted("On the nose I get plum notes.").observations}


def test_quotes_are_verbatim() -> None:
    """Every quote is what the captions say at its span, every term what they say at its own."""
    talk = Talk.from_captions(captions_of(TALK))
    notes = noted()
    assert [r.quote for r in records(notes)] == [talk.text[slice(*r.span)] for r in records(notes)]
    assert [o.term for o in notes.observations] == [talk.text[slice(*o.term_span)] for o in notes.observations]


def test_a_term_stands_in_its_quote() -> None:
    """The quote of an observation covers its term."""
    assert all(o.span[0] <= o.term_span[0] and o.term_span[1] <= o.span[1] for o in noted().observations)


def test_a_quote_takes_in_what_denies() -> None:
    """A denied term is never quoted without its denial."""
    denied = [o.quote for o in noted().observations if o.presence == "absent"]
    assert denied == ["not bitter"]


def test_a_quote_takes_in_what_grades() -> None:
    """A graded term is quoted with the word that grades it."""
    assert [o.quote for o in noted().observations if o.intensity == "low"] == ["hint of smoke"]


def test_times_are_those_of_the_captions() -> None:
    """A record starts with its caption, in seconds."""
    starts = {(o.term, o.start) for o in noted().observations}
    assert {("burnt sugar", 0.0), ("smoke", 5.0), ("plum", 10.0)} <= starts


@pytest.mark.parametrize(
    ("revealed", "marked"), [("left", {"honey"}), ("right", set()), (None, set())], ids=["its own", "another's", "none"]
)
def test_after_the_reveal(revealed: str | None, marked: set[str], hear: Hear) -> None:
    """What is said of a sample once it is known is marked; what is said before, or of one still sealed, is not."""
    talk = "Now the left. On the nose I get leather.\nLift the lid.\nThe left has honey notes on the nose."
    heard = hear(talk, SHEET)
    lid = [word.norm for word in heard.words].index("lift")
    heard.reveals = [Revealed(lid, lid + 3, revealed, "an Assam", 1.0, ())] if revealed else []
    notes = write_notes(heard, captions_of(talk), drafted=False)
    assert [o.term for o in notes.observations] == ["leather", "honey"]
    assert {o.term for o in notes.observations if o.after_reveal} == marked


def test_what_is_less_sure_than_asked_for_is_ignored_and_listed() -> None:
    """Fewer notes, and none of them less sure; the rest is among the ignored with its reason."""
    every = take_notes(captions_of(TALK), SHEET)
    bound = sorted(o.confidence for o in every.observations)[2]
    surer = take_notes(captions_of(TALK), SHEET, confidence=bound)
    assert all(o.confidence >= bound for o in surer.observations)
    assert sum(i.reason == "less sure than asked for" for i in surer.ignored) == 2


def test_what_is_left_out_is_listed_with_its_reason() -> None:
    """A term asked about is among the ignored, with the reason and the words."""
    ignored = {(record.term, record.reason) for record in noted().ignored}
    assert ("mint", "asked about, not perceived") in ignored


def test_nothing_is_both_observed_and_ignored() -> None:
    """A stretch of words is an observation or left out, not both."""
    notes = noted()
    assert not {o.term_span for o in notes.observations} & {record.span for record in notes.ignored}


def test_every_record_says_why() -> None:
    """Every record names at least one rule, and its confidence is a probability."""
    assert all(r.why and r.why[0].rule and 0 <= r.confidence <= 1 for r in records(noted()))


def test_talk_without_times_has_none() -> None:
    """Captions without times give records without times."""
    captions = parse_captions(b"On the nose I get honey notes.\n\nIt tastes of plum.\n", "talk.txt")
    assert {(o.start, o.end) for o in take_notes(captions, SHEET).observations} == {(None, None)}


def test_a_given_sheet_is_kept_and_no_draft() -> None:
    """The notes carry the sheet they were taken with, and its samples."""
    notes = noted()
    assert (notes.sheet, notes.sheet_drafted, notes.samples) == (SHEET, False, ("left", "right"))


def test_a_word_nobody_can_have_said_is_refused_at_once() -> None:
    """Two hundred kilobytes without a space cost no more than one clear line."""
    captions = parse_captions(b"<a" * 100_000, "noise.vtt")
    begun = process_time()
    with pytest.raises(CaptionError, match="200,000 characters"):
        take_notes(captions)
    assert process_time() - begun < 2
