"""Whatever stands in a file of corrections, the notes stay notes."""

from typing import get_args

from hypothesis import given
from hypothesis import strategies as st

from notesmith.records import Notes
from notesmith.review.applying import applied
from notesmith.review.edits import EDIT, Edit, Kind, Said, Words, standing
from notesmith.review.saying import FIELDS

from .conftest import CASES, bench_of

CUPS = bench_of((CASES / "cups.vtt").read_text("utf-8"))
LENGTH = len(CUPS.talk.text)
FIELD_NAMES = sorted(
    {name for kind in FIELDS for name in CUPS.said("malty").says} | {"kind", "value", "more", "colour"}
)


def _standing_words(start: int, length: int) -> Words:
    from notesmith.review.saying import words_at

    return words_at(CUPS.talk, start, min(LENGTH, start + length))


WORDS = st.builds(_standing_words, st.integers(0, LENGTH - 2), st.integers(1, 40)) | st.builds(
    Words,
    text=st.sampled_from(["sweet", "one", ".", "nowhere", "Back to cup"]),
    before=st.sampled_from(["", "Cup two is"]),
    span=st.tuples(st.integers(-9, LENGTH + 9), st.integers(-9, LENGTH + 9)),
)
VALUES = st.none() | st.sampled_from(["one", "two", "nine", "absent", "flavour", "taster", "high", "", 3, 2.5, True])
SAYS = st.dictionaries(st.sampled_from(FIELD_NAMES), VALUES | st.just(("one", "two")), min_size=1, max_size=8)
SAID = st.sampled_from([CUPS.said(words) for words in ("malty", "no plum", "five grams", "guy one", "Quarry Gate")]) | (
    st.builds(Said, kind=st.sampled_from(get_args(Kind)), words=WORDS, term=st.none() | WORDS, says=SAYS)
)
DATED = {"at": st.just("2031-05-01")}


def _edit(number: int, fields: dict[str, object]) -> Edit:
    return EDIT.validate_python({"id": f"e{number}", **fields})


EDITS = st.lists(
    st.one_of(
        st.fixed_dictionaries({**DATED, "do": st.just("change"), "record": SAID, "set": SAYS}),
        st.fixed_dictionaries({**DATED, "do": st.just("confirm"), "record": SAID}),
        st.fixed_dictionaries({**DATED, "do": st.just("move"), "first": WORDS, "last": WORDS, "sample": VALUES.filter(
            lambda value: value is None or isinstance(value, str))}),
        st.fixed_dictionaries({**DATED, "do": st.sampled_from(["split", "join", "delete", "add"]),
                               "records": st.lists(SAID, max_size=2), "by": st.lists(SAID, max_size=2)}),
        st.fixed_dictionaries({**DATED, "do": st.just("mend"), "heard": st.sampled_from(["one", "guy one", "!"]),
                               "meant": st.just("gaiwan"), "words": WORDS}),
        st.fixed_dictionaries({**DATED, "do": st.sampled_from(["undo", "redo"]),
                               "edit": st.sampled_from(["e0", "e1", "e9"])}),
    ),
    max_size=6,
)  # fmt: skip


@given(EDITS)
def test_whatever_is_asked_the_notes_stay_notes(told: list[dict[str, object]]) -> None:
    """Every record is one, quotes what stands there, comes in order and once; an edit is made or told as lost."""
    edits = [_edit(number, fields) for number, fields in enumerate(told)]
    done = applied(CUPS.notes, CUPS.talk, edits)
    assert Notes.model_validate_json(done.notes.model_dump_json()) == done.notes
    records = [record for name in (*FIELDS.values(), "ignored") for record in getattr(done.notes, name)]
    assert all(CUPS.talk.text[slice(*record.span)] == record.quote for record in records)
    assert len({record.id for record in records}) == len(records)
    assert {lost.edit.id for lost in done.lost} <= {edit.id for edit in standing(edits)}


@given(EDITS)
def test_the_same_edits_make_the_same_notes(told: list[dict[str, object]]) -> None:
    """Undoing them all leaves the notes as they were taken."""
    edits = [_edit(number, fields) for number, fields in enumerate(told)]
    assert applied(CUPS.notes, CUPS.talk, edits) == applied(CUPS.notes, CUPS.talk, edits)
    undone = [_edit(100 + n, {"at": "", "do": "undo", "edit": edit.id}) for n, edit in enumerate(standing(edits))]
    assert applied(CUPS.notes, CUPS.talk, [*edits, *undone]).notes == CUPS.notes
