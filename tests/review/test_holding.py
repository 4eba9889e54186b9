"""Corrections of what one listener wrote, made to what a better one writes of captions exported anew."""

import random
import re
from collections import Counter
from pathlib import Path

import pytest

from notesmith.lexicon import Lexicon
from notesmith.listening import take_notes
from notesmith.listening.notes import write_notes
from notesmith.listening.pipeline import listen
from notesmith.records import Notes, Observation
from notesmith.review.applying import Applied, applied
from notesmith.review.edits import Change, Edit, Replace
from notesmith.review.finding import find_words
from notesmith.review.saying import said
from notesmith.sheet import read_sheet
from notesmith.transcript import Talk, parse_captions, read_captions

RECORDINGS = Path(__file__).parents[2] / "samples" / "recordings"
NAMES = ("d05", "d14", "e25", "e39")
EDITS = 40
LOST_WORDS = 0.02


def _exported_anew(text: str, chance: random.Random) -> str:
    """Lower case, no punctuation, and one word in fifty gone."""
    lines = []
    for line in text.splitlines():
        is_talk = "-->" not in line and line != "WEBVTT" and not line.strip().isdigit()
        words = [re.sub(r"[^\w']", "", w).lower() for w in line.split() if chance.random() > LOST_WORDS]
        lines.append(" ".join(words) if is_talk else line)
    return "\n".join(lines)


def _edit(notes: Notes, talk: Talk, o: Observation, chance: random.Random) -> Edit:
    dated, kept = {"id": f"e-{o.id}", "at": "2031-05-01T09:00:00+00:00"}, said(notes, talk, o)
    other = chance.choice([sample for sample in notes.samples if sample != o.sample])
    return chance.choice([
        Change(**dated, record=kept, set={"sample": other}),
        Change(**dated, record=kept, set={"presence": "present" if o.presence == "absent" else "absent"}),
        Replace(**dated, do="delete", records=(kept,)),
    ])  # fmt: skip


def _outcome(edit: Edit, done: Applied, talk: Talk) -> str:
    if edit.id in {lost.edit.id for lost in done.lost}:
        return "told as lost"
    assert isinstance(edit, Change | Replace)
    record = edit.record if isinstance(edit, Change) else edit.records[0]
    assert record.term
    place = find_words(talk.text, record.term)
    assert place
    near = [o for o in done.notes.observations if o.term_span[0] < place[1] and place[0] < o.term_span[1]]
    if isinstance(edit, Replace):
        beside = [other["sample"] for other in record.beside]
        return "holds" if all(o.sample in beside for o in near) else "deleted in part"
    (field, value), rule = next(iter(edit.set.items())), f"correction {edit.id}"
    holds = any(getattr(o, field) == value and rule in [why.rule for why in o.why] for o in near)
    return "holds" if holds else "forgotten"


@pytest.mark.slow
def test_corrections_hold_against_another_listener_and_new_captions() -> None:
    """On the same notes all of them; else nineteen in twenty, or they are told as lost, and no change is forgotten."""
    same, anew, chance = Counter[str](), Counter[str](), random.Random(3)
    for name in NAMES:
        sheet, path = read_sheet(RECORDINGS / f"{name}.sheet.json"), RECORDINGS / f"{name}.vtt"
        captions = read_captions(path)
        talk = Talk.from_captions(captions)
        by_rules = write_notes(listen(talk, sheet, Lexicon.load(), by_rules=True), captions, drafted=False)
        chosen = chance.sample(by_rules.observations, EDITS)
        edits = [_edit(by_rules, talk, o, chance) for o in chosen]
        done = applied(by_rules, talk, edits)
        same.update(_outcome(edit, done, talk) for edit in edits)
        other = parse_captions(_exported_anew(path.read_text("utf-8"), chance).encode(), path.name)
        again = Talk.from_captions(other)
        done = applied(take_notes(other, sheet), again, edits)
        anew.update(_outcome(edit, done, again) for edit in edits)
    assert same == {"holds": EDITS * len(NAMES)}
    assert anew["forgotten"] == 0
    assert anew["holds"] + anew["told as lost"] >= 0.95 * anew.total(), anew
    assert anew["holds"] >= 0.9 * anew.total(), anew
