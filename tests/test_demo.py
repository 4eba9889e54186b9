"""The demo recording, held against the notes a careful listener would take."""

import json
from pathlib import Path
from typing import Any

import pytest

from notesmith.jobs import notes_of
from notesmith.publishing import json_text
from notesmith.records import Evidenced, Notes, Observation
from notesmith.transcript import Talk, read_captions

DEMO = Path(__file__).parent.parent / "samples" / "demo"
CAPTIONS = DEMO / "pegs.vtt"
SLACK_S = 8.0  # a cue and a half: how far apart the same observation may be timed
RIGHT = 73  # of 95; what the program finds, less a few: lower it for no reason but a better recording


@pytest.fixture(scope="module")
def notes() -> Notes:
    """What the program makes of the demo."""
    return notes_of(CAPTIONS)


@pytest.fixture(scope="module")
def listener() -> dict[str, Any]:
    """The notes a careful listener would take."""
    loaded: dict[str, Any] = json.loads((DEMO / "pegs.gold.json").read_text("utf-8"))
    return loaded


def _agree(noted: Observation, known: dict[str, Any]) -> bool:
    """The same term, one within the other where one is longer, of the same sample and as present, at about the time."""
    ours, theirs = set(noted.term.lower().split()), set(known["term"].lower().split())
    alike = ours <= theirs or theirs <= ours
    judged = (noted.sample, noted.presence) == (known["sample"], known["presence"])
    return alike and judged and abs((noted.start or 0) - known["start"]) <= SLACK_S


def _count_right(noted: list[Observation], known: list[dict[str, Any]]) -> int:
    """How many known observations are noted, none of ours counted twice."""
    left = list(noted)
    for one in known:
        match = next((o for o in left if _agree(o, one)), None)
        if match:
            left.remove(match)
    return len(noted) - len(left)


def test_notes_taken_twice_are_the_same_bytes(notes: Notes) -> None:
    """Nothing but the captions and the sheet decides what the notes say."""
    assert json_text.render(notes) == json_text.render(notes_of(CAPTIONS))


def test_every_quote_is_verbatim(notes: Notes) -> None:
    """Each record's quote is what the captions say at the place it names."""
    talk = Talk.from_captions(read_captions(CAPTIONS))
    lists = (notes.observations, notes.comparisons, notes.preferences, notes.facts, notes.reveals, notes.repairs)
    records: list[Evidenced] = [record for some in lists for record in some]
    assert records
    assert all(talk.text[record.span[0] : record.span[1]] == record.quote for record in records)


def test_the_listeners_quotes_are_verbatim(listener: dict[str, Any]) -> None:
    """The notes held against the program quote the recording, and not what its writer remembers of it."""
    text = read_captions(CAPTIONS)
    said = " ".join(cue.text for cue in text.cues)
    kinds = ("observations", "comparisons", "preferences", "facts", "reveals")
    assert [r["quote"] for kind in kinds for r in listener[kind] if r["quote"] not in said] == []


def test_most_observations_are_found(notes: Notes, listener: dict[str, Any]) -> None:
    """The program finds about as many observations as when this was written, of the right sample and presence."""
    assert _count_right(list(notes.observations), listener["observations"]) >= RIGHT


def test_the_reveal(notes: Notes, listener: dict[str, Any]) -> None:
    """What each cup turns out to be, read from the slips, is noted of the right cup."""
    assert {r.sample: r.product for r in notes.reveals} == {r["sample"]: r["product"] for r in listener["reveals"]}


def test_the_verdict(notes: Notes, listener: dict[str, Any]) -> None:
    """The last preference over all is the announced winner, with the others in order."""
    known = [p for p in listener["preferences"] if p["scope"] == "overall"][-1]
    last = [p for p in notes.preferences if p.scope == "overall"][-1]
    assert (last.preferred, list(last.over)) == (known["preferred"], known["over"])
