"""What corrections make of notes."""

from collections import Counter
from typing import Any

import pytest

from notesmith.records import Evidenced, Ignored, Notes, Observation, Repair
from notesmith.review.applying import applied, corrected
from notesmith.review.saying import FIELDS

from .conftest import CASES, TOLD, Bench, bench_of

TWO = "Cup two is sweet. Sweet, and I get no plum."
TEXT = (CASES / "cups.vtt").read_text("utf-8")


def _line(record: Evidenced) -> str:
    if isinstance(record, Ignored):
        return f"ignored {record.term}: {record.reason}"
    if isinstance(record, Repair):
        return f"repair {record.heard}: {record.meant}"
    kind = type(record).__name__.lower()
    if isinstance(record, Observation):
        told = [
            record.sample, "no" if record.presence == "absent" else "", record.term, record.intensity,
            "aroma" if record.facet == "aroma" else "", f"@{record.term_span[0]}" if record.term == "sweet" else "",
        ]  # fmt: skip
    else:
        told = [getattr(record, "sample", None), getattr(record, "kind", None)]
    return " ".join(part for part in (kind, *told) if part)


def _lines(notes: Notes) -> Counter[str]:
    return Counter(_line(record) for name in (*FIELDS.values(), "ignored") for record in getattr(notes, name))


@pytest.mark.parametrize("case", TOLD["cases"], ids=lambda case: case["name"])
def test_corrections_change_what_they_say_and_nothing_else(case: dict[str, Any]) -> None:
    """Each case of the file: which lines go and come, and which edits are told as lost."""
    text = TEXT
    for old, new in case.get("exported", ()):
        assert old in text
        text = text.replace(old, new)
    first = bench_of(TEXT)
    now = bench_of(text, without=tuple(case.get("without", ())), heard=tuple(case.get("heard", ())))
    done = applied(now.notes, now.talk, first.edits(case["edits"]))
    before, after = _lines(now.notes), _lines(done.notes)
    assert (before - after, after - before) == (Counter(case.get("gone", ())), Counter(case.get("come", ())))
    assert [lost.reason for lost in done.lost] == case.get("lost", [])


def test_without_corrections_the_notes_stay_as_they_are(cups: Bench) -> None:
    """Not even their order changes."""
    assert corrected(cups.notes, cups.talk, ()) is cups.notes


@pytest.mark.parametrize("case", [c for c in TOLD["cases"] if "exported" not in c], ids=lambda case: case["name"])
def test_every_quote_stands_where_it_says(case: dict[str, Any], cups: Bench) -> None:
    """Whatever was corrected."""
    notes = applied(cups.notes, cups.talk, cups.edits(case["edits"])).notes
    for name in (*FIELDS.values(), "ignored"):
        for record in getattr(notes, name):
            assert cups.talk.text[slice(*record.span)] == record.quote


def test_a_note_that_was_deleted_stays_so_though_its_words_are_told_one_by_one(cups: Bench) -> None:
    """A better listener cuts what was said more finely."""
    told = {"kind": "observation", "words": "malty and a little smoky", "sample": "one"}
    coarse = cups.edits([{"do": "join", "records": ["malty", "a little smoky"], "by": [told]}])
    edits = Bench(cups.talk, corrected(cups.notes, cups.talk, coarse)).edits(
        [{"do": "delete", "records": [told["words"]]}]
    )
    notes = corrected(cups.notes, cups.talk, edits)
    assert [o.term for o in notes.observations if o.sample == "one"] == ["grassy"]
    assert {i.term for i in notes.ignored} == {"malty", "smoky"}


def test_what_was_corrected_names_the_correction(cups: Bench) -> None:
    """With the words it hangs on, and it is sure now."""
    edits = cups.edits([{"do": "change", "record": "malty", "set": {"sample": "two"}}])
    malty = corrected(cups.notes, cups.talk, edits).observations[0]
    assert (malty.why[-1].rule, malty.why[-1].words, malty.confidence) == ("correction e1", "malty", 1.0)


def test_a_stretch_moved_makes_its_notes_no_surer(cups: Bench) -> None:
    """Only whose they are was looked at."""
    edits = cups.edits([{"do": "move", "first": "Back to", "last": "long", "sample": "one"}])
    moved = [o for o in corrected(cups.notes, cups.talk, edits).observations if o.why]
    assert [(o.term, o.confidence) for o in moved] == [("sweet", 0.7), ("long", 0.7)]


def test_edits_build_on_one_another(cups: Bench) -> None:
    """A note that was added can be moved."""
    add = cups.edits([{"do": "add", "by": [{"kind": "observation", "words": "hot", "sample": "one"}]}])
    then = Bench(cups.talk, corrected(cups.notes, cups.talk, add))
    move = then.edits([{"do": "change", "record": "hot", "set": {"sample": "two"}}])[0].model_copy(update={"id": "e2"})
    notes = corrected(cups.notes, cups.talk, (*add, move))
    assert [o.sample for o in notes.observations if o.term == "hot"] == ["two"]


def test_what_was_said_before_a_reveal_that_is_added_is_before_it(cups: Bench) -> None:
    """And what was said after it after."""
    told = {"kind": "reveal", "words": "Now", "says": {"sample": "two", "product": "Quarry Gate"}}
    notes = corrected(cups.notes, cups.talk, cups.edits([{"do": "add", "by": [told]}]))
    assert [o.term for o in notes.observations if o.after_reveal] == ["sweet", "long", "grassy"]


def test_sections_last_until_the_next_one_begins(cups: Bench) -> None:
    """When one is added between them, and when one is deleted."""
    told = {"kind": "section", "words": "I poured five grams", "says": {"kind": "method", "sample": ""}}
    edits = cups.edits([{"do": "add", "by": [told]}, {"do": "delete", "records": [TWO]}])
    sections = corrected(cups.notes, cups.talk, edits).sections
    assert [(s.kind, s.start, s.end) for s in sections] == [
        ("tasting", 1.0, 10.0), ("comparison", 10.0, 18.0), ("method", 18.0, 25.0),
    ]  # fmt: skip


def test_lost_edits_are_among_the_warnings(cups: Bench) -> None:
    """With the day they were made and why they could not be."""
    edits = cups.edits([{"do": "change", "record": "malty", "set": {"sample": "nine"}}])
    assert corrected(cups.notes, cups.talk, edits).warnings == (
        "the correction e1 of 2031-05-01 could not be made: the sheet has no sample 'nine'",
    )


def _with_a_twin(bench: Bench, told: str) -> Bench:
    """The same notes, one of which stands there twice."""
    one = bench.record(told)
    assert isinstance(one, Observation)
    twin = one.model_copy(update={"id": f"{one.id}-again"})
    return Bench(bench.talk, bench.notes.model_copy(update={"observations": (*bench.notes.observations, twin)}))


def test_a_note_that_stands_twice_can_be_deleted(cups: Bench) -> None:
    """What the other says does not tell it from this one; both say what is wrong, so both go."""
    twins = _with_a_twin(cups, "malty")
    notes = corrected(twins.notes, twins.talk, twins.edits([{"do": "delete", "records": ["malty"]}]))
    assert "malty" not in [o.term for o in notes.observations]


def test_of_a_note_that_stands_twice_one_can_be_changed(cups: Bench) -> None:
    """No third is made: one of the two changes."""
    twins = _with_a_twin(cups, "malty")
    edits = twins.edits([{"do": "change", "record": "malty", "set": {"sample": "two"}}])
    notes = corrected(twins.notes, twins.talk, edits)
    assert sorted(o.sample or "" for o in notes.observations if o.term == "malty") == ["one", "two"]
