"""What deserves a look first."""

import pytest

from notesmith.records import Notes, Observation, Sheet, Why
from notesmith.review.applying import corrected
from notesmith.review.looks import looks, progress, unsureness

from .conftest import Bench

NONE = Notes(
    transcript="none.vtt", sheet=Sheet(), sheet_drafted=True, samples=(), observations=(), comparisons=(),
    preferences=(), facts=(), reveals=(), sections=(), repairs=(), ignored=(), warnings=(),
)  # fmt: skip


def _observation(identity: str = "o", **fields: object) -> Observation:
    rules = fields.pop("rules", ("encoder 0.90", "sample named here"))
    told = {
        "id": identity, "start": 1.0, "end": 2.0, "quote": "malty", "span": (0, 5), "confidence": 0.9,
        "why": tuple(Why(rule=str(rule)) for rule in rules),  # type: ignore[attr-defined]
        "term": "malty", "term_span": (0, 5), "concept": None, "facet": "flavour", "presence": "present",
        "intensity": None, "sample": "one", "taster": None, "preparation": None, "voice": "taster",
        "after_reveal": False,
    }  # fmt: skip
    return Observation.model_validate(told | fields)


def _notes(*observations: Observation) -> Notes:
    return NONE.model_copy(update={"observations": observations})


def test_in_empty_notes_nothing_deserves_a_look() -> None:
    """And they are the surest of all."""
    assert (looks(NONE), progress(NONE), unsureness(NONE)) == ((), (0, 0), 0.0)


@pytest.mark.parametrize(
    ("fields", "reasons"),
    [
        ({}, ()),
        ({"confidence": 0.6}, ("low confidence",)),
        ({"rules": ("encoder 0.90", "sample pointed to 0.80")}, ("rules and listener disagree",)),
        ({"presence": "absent"}, ("rules and listener disagree",)),
        ({"presence": "absent", "rules": ("encoder 0.90", "denied", "sample named here")}, ()),
        ({"rules": ("encoder 0.90", "sample named here", "taken back later")}, ("taken back",)),
        ({"rules": ("weighed", "sample named before")}, ("sample decided by distance",)),
        ({"rules": ("weighed", "sample named before"), "sample": None}, ()),
        ({"presence": "uncertain", "rules": ("encoder 0.90", "hedged")}, ("doubted aloud",)),
        ({"after_reveal": True}, ("after the reveal",)),
    ],
)
def test_each_sign_of_doubt_is_told(fields: dict[str, object], reasons: tuple[str, ...]) -> None:
    """And where there is none, none."""
    assert looks(_notes(_observation(**fields)))[0].reasons == reasons


@pytest.mark.parametrize(("seconds", "far"), [(30.0, False), (80.0, True)])
def test_a_sample_named_a_while_ago_is_decided_by_distance(seconds: float, far: bool) -> None:
    """Not one that was named just now."""
    later = _observation("p", start=seconds, span=(300, 305), term_span=(300, 305), rules=("sample named before",))
    reasons = {look.record: look.reasons for look in looks(_notes(_observation(), later))}
    assert ("sample decided by distance" in reasons["p"]) == far


@pytest.mark.parametrize(("characters", "far"), [(300, False), (1_000, True)])
def test_without_times_distance_is_counted_in_characters(characters: int, far: bool) -> None:
    """As in a transcript without any."""
    span = (characters, characters + 5)
    later = _observation("p", start=None, span=span, term_span=span, rules=("sample named before",))
    reasons = {look.record: look.reasons for look in looks(_notes(_observation(start=None), later))}
    assert ("sample decided by distance" in reasons["p"]) == far


def test_what_is_most_doubtful_comes_first(cups: Bench) -> None:
    """And of equals what was said first."""
    doubted = _observation("p", confidence=0.6, rules=("encoder 0.90", "sample pointed to 0.80"))
    notes = _notes(_observation("a"), _observation("b"), doubted)
    assert [look.record for look in looks(notes)] == ["p", "a", "b"]


def test_what_was_confirmed_is_done(cups: Bench) -> None:
    """And the bar moves."""
    before = progress(cups.notes)
    notes = corrected(cups.notes, cups.talk, cups.edits([{"do": "confirm", "record": "malty"}]))
    assert progress(notes) == (before[0] + 1, before[1])
    assert unsureness(notes) < unsureness(cups.notes)


def test_what_was_deleted_need_not_be_looked_at(cups: Bench) -> None:
    """It is no longer there."""
    malty = cups.record("malty").id
    notes = corrected(cups.notes, cups.talk, cups.edits([{"do": "delete", "records": ["malty"]}]))
    assert malty not in {look.record for look in looks(notes)}
