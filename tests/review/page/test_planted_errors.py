"""Errors planted in the notes and corrected with what the page shows: how many clicks and keys each takes."""

from collections.abc import Callable
from typing import Any

import pytest
from selenium.webdriver.remote.webdriver import WebDriver

from notesmith.publishing import json_text
from notesmith.records import Evidenced, Notes
from notesmith.review.opening import open_notes
from notesmith.review.saying import FIELDS
from tests.review.page.browsing import Keys, Page, served
from tests.review.page.conftest import Recording

pytestmark = [pytest.mark.client("chromium", "chromedriver"), pytest.mark.slow]

# What is planted: the kind of record, a field, what it says wrongly; then the keys that put it right after a click on
# its words. Where `RIGHT` stands the digit of the right answer is pressed.
PLANTED: dict[str, tuple[str, str, Any, list[str]]] = {
    "another sample": ("observation", "sample", "white", ["RIGHT"]),
    "of no sample": ("observation", "sample", None, ["RIGHT"]),
    "said to be absent": ("observation", "presence", "absent", ["p", "RIGHT"]),
    "another facet": ("observation", "facet", "overall", ["f", "RIGHT"]),
    "strong": ("observation", "intensity", "high", ["i", "RIGHT"]),
    "in somebody else's words": ("observation", "voice", "quoted", ["v", "RIGHT"]),
    "another preparation": ("observation", "preparation", "cold", ["b", "RIGHT"]),
    "misheard otherwise": ("repair", "meant", "kettle", ["e", "gaiwan" + Keys.ENTER]),
    "another amount": ("fact", "value", 7, ["e", "5" + Keys.ENTER]),
}
DIGITS = {"sample": ["red", "blue", "white"], "presence": ["present"], "voice": ["taster"], "preparation": ["gaiwan"],
          "facet": ["appearance", "aroma", "flavour", "mouthfeel", "finish"], "intensity": ["low", "high"]}  # fmt: skip


def suited(notes: Notes, kind: str, field: str, wrong: Any) -> Evidenced:
    """A record of the kind that says something else, and whose words are its own."""
    tests: dict[str, Callable[[Any], bool]] = {
        "observation": lambda one: one.sample == "red" and one.presence == "present" and one.voice == "taster",
        "repair": lambda one: one.meant == "gaiwan", "fact": lambda one: one.value == 5,
    }  # fmt: skip
    records = getattr(notes, FIELDS[kind])  # type: ignore[index]
    return next(one for one in records if getattr(one, field) != wrong and tests[kind](one))


@pytest.mark.parametrize("name", PLANTED)
def test_a_planted_error_takes_three_actions(name: str, recording: Recording, chromium: WebDriver) -> None:
    """A click on the words, the row's letter unless it is the sample's, the answer; and the notes say what they did."""
    kind, field, wrong, keys = PLANTED[name]
    notes = Notes.model_validate_json(recording.notes.read_bytes())
    right = suited(notes, kind, field, wrong)
    planted = tuple(
        one.model_copy(update={field: wrong}) if one.id == right.id else one
        for one in getattr(notes, FIELDS[kind])  # type: ignore[index]
    )
    changed = notes.model_copy(update={FIELDS[kind]: planted})  # type: ignore[index]
    recording.notes.write_text(json_text.render(changed), "utf-8")
    known = DIGITS.get(field, [])
    digit = str(known.index(getattr(right, field)) + 1) if getattr(right, field) in known else "0"
    with served(recording.notes) as (address, _):
        page = Page(chromium, address)
        page.click(f'mark[data-notes~="{right.id}"]')
        page.press(*[digit if key == "RIGHT" else key for key in keys])
        assert len(recording.edits()) == 1
    again = next(one for one in open_notes(recording.notes).state.records if one.id == right.id)
    assert getattr(again, field) == getattr(right, field)
    assert len(keys) <= 2


def test_what_is_no_note_takes_two_actions(recording: Recording, page: Page) -> None:
    """A click and `x`."""
    first = Notes.model_validate_json(recording.notes.read_bytes()).observations[0]
    page.click(f'mark[data-notes~="{first.id}"]')
    page.press("x")
    assert first.id not in open_notes(recording.notes).state.by_id


def test_what_is_missing_takes_two_actions_where_the_guess_is_right(recording: Recording, chromium: WebDriver) -> None:
    """A click on the word and `1`: its concept, the sample talked about, the facet and the taster are guessed."""
    notes = Notes.model_validate_json(recording.notes.read_bytes())
    told = next(one for one in notes.observations if one.term == "charcoal grey")
    rest = tuple(one for one in notes.observations if one.id != told.id)
    recording.notes.write_text(json_text.render(notes.model_copy(update={"observations": rest})), "utf-8")
    with served(recording.notes) as (address, _):
        page = Page(chromium, address)
        page.script(SELECT, *told.term_span)
        page.press("o", "1")
    new = next(one for one in open_notes(recording.notes).state.notes.observations if one.term == told.term)
    assert (new.sample, new.facet, new.presence, new.taster) == (told.sample, told.facet, told.presence, told.taster)


SELECT = """
const [from, to] = arguments;
const said = [...document.querySelectorAll(".said")].filter((one) => Number(one.dataset.from) <= from).at(-1);
const place = (at) => {
  const walk = document.createTreeWalker(said, NodeFilter.SHOW_TEXT);
  for (let left = at - said.dataset.from; walk.nextNode(); left -= walk.currentNode.data.length)
    if (left <= walk.currentNode.data.length) return [walk.currentNode, left];
};
getSelection().setBaseAndExtent(...place(from), ...place(to));
"""
