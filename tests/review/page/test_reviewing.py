"""The page in the hands of a reviewer: heard, corrected, undone, reloaded; by keyboard alone."""

import json
from collections.abc import Callable
from pathlib import Path

import pytest
from selenium.webdriver.remote.webdriver import WebDriver
from selenium.webdriver.support.ui import WebDriverWait

from notesmith.jobs import notes_of
from notesmith.records import Notes, Observation
from tests.review.page.browsing import Keys, Page, served
from tests.review.page.conftest import Recording

pytestmark = [pytest.mark.client("chromium", "chromedriver"), pytest.mark.slow]

LISTED = "return [...document.querySelectorAll('.line span:nth-child(2)')].map((one) => one.textContent)"


def observation(notes: Notes, term: str, sample: str | None = None) -> Observation:
    """The first observation of a term."""
    return next(one for one in notes.observations if one.term == term and sample in (None, one.sample))


@pytest.fixture
def watery(recording: Recording) -> Observation:
    """An observation of the demo."""
    return observation(Notes.model_validate_json(recording.notes.read_bytes()), "watery")


def test_the_words_are_played_from_a_second_before(page: Page, watery: Observation) -> None:
    """`h` seeks an actual sound file and plays it."""
    page.open(watery.id)
    page.press("h")
    assert watery.start
    heard: Callable[[WebDriver], bool] = lambda _: bool(page.script("return player.currentTime > 1 && !player.paused"))  # noqa: E731
    WebDriverWait(page.driver, 10).until(heard)
    assert watery.start - 1.01 <= page.script("return player.currentTime") <= watery.start + 2


def test_a_click_on_a_note_plays_its_words_and_stops(page: Page, watery: Observation) -> None:
    """From a second before to half a second after."""
    page.click(f"#n-{watery.id}")
    WebDriverWait(page.driver, 10).until(lambda _: page.script("return player.currentTime > 1 && !player.paused"))
    assert watery.start
    assert watery.end
    assert watery.start - 1.01 <= page.script("return player.currentTime") <= watery.end + 1
    WebDriverWait(page.driver, 15).until(lambda _: page.script("return player.paused"))
    assert page.script("return player.currentTime") <= watery.end + 1


def test_a_time_in_the_talk_plays_from_there(page: Page) -> None:
    """A click on the time of a cue seeks to it."""
    page.click("#c-9 .at")
    start = float(page.script("return document.querySelector('#c-9').dataset.start"))
    WebDriverWait(page.driver, 10).until(lambda _: page.script("return player.currentTime") >= start)
    assert page.script("return player.currentTime") < start + 2


def test_without_a_recording_the_page_works_on_its_words(recording: Recording, chromium: WebDriver) -> None:
    """There is no player, and hearing says so."""
    (recording.folder / "pegs.wav").unlink()
    with served(recording.notes) as (address, _):
        page = Page(chromium, address)
        page.press("h")
        assert page.count("audio") == 0
        assert "no recording" in page.text("#told")


def test_a_correction_is_there_after_a_reload_and_on_a_new_run(
    page: Page, recording: Recording, watery: Observation
) -> None:
    """Another sample, by one digit; the page shows it, the file holds it, and the notes of a new run have it."""
    page.open(watery.id)
    page.press("1")
    assert "● red mouthfeel" in str(page.script("return document.querySelector('mark.held').dataset.tag"))
    page.driver.refresh()
    page.open(watery.id)
    assert page.text("#card .row[data-key=s] [aria-pressed=true]").strip() == "1 red"
    assert [edit["do"] for edit in recording.edits()] == ["change"]
    again = notes_of(recording.captions)
    assert [one.sample for one in again.observations if one.term_span == watery.term_span] == ["red"]


def test_undo_and_redo_have_no_limit(page: Page, recording: Recording, watery: Observation) -> None:
    """Six changes are taken back one by one, and made again."""
    page.open(watery.id)
    for digit in "130130":
        page.press(digit)
    shown = lambda: page.text("#card .row[data-key=s] [aria-pressed=true]")  # noqa: E731
    last = shown()
    page.press(*"uuuuuu")
    assert shown().endswith("blue")
    page.press("u")
    assert "nothing to undo" in page.text("#told")
    page.press(*["U"] * 6)
    assert shown() == last
    assert len(recording.edits()) == 18


def test_by_keyboard_alone_a_note_is_made_of_words(page: Page, recording: Recording) -> None:
    """Words are chosen, noted, and the note set right, with keys that the page shows."""
    words = str(page.script("return document.querySelector('#c-5 .said').textContent")).split()
    page.script("document.querySelector('#c-5').scrollIntoView(); run = {cue: 'c-5', first: 0, length: 1}")
    page.press(".", ">")
    page.press("o")
    assert " ".join(words[1:3]) in page.text("#card h2")
    page.press("1", "p", "2", "f", "2")
    made = recording.edits()
    assert [edit["do"] for edit in made] == ["add", "change", "change"]
    assert made[0]["by"][0]["words"]["text"].split() == words[1:3]
    assert page.text("#card .row[data-key=p] [aria-pressed=true]").endswith("absent")
    assert page.text("#card .row[data-key=f] [aria-pressed=true]").endswith("aroma")


def test_what_deserves_a_look_comes_first_and_the_bar_tells_how_far(page: Page) -> None:
    """`a` says right and goes on; the bar moves on; `x` deletes and goes on too."""
    first, due = page.held(), int(page.script("return bar.max"))
    page.press("a")
    assert page.held() != first
    assert page.script("return bar.value") == 1
    page.press("x")
    assert page.script("return bar.value") == 2
    assert page.text("#far").strip() == f"2 of {due} looked at"


def test_two_pages_do_not_lose_each_others_edits(page: Page, recording: Recording, watery: Observation) -> None:
    """What one page changes the other shows with its next answer; both edits are in the file."""
    page.open(watery.id)
    here, address = page.driver.current_window_handle, page.driver.current_url
    page.driver.switch_to.new_window("tab")
    other = Page(page.driver, address)
    other.open(watery.id)
    other.press("1")
    page.driver.close()
    page.driver.switch_to.window(here)
    page.press("p", "2")
    assert page.text("#card .row[data-key=s] [aria-pressed=true]").endswith("red")
    assert len(recording.edits()) == 2
    assert page.text("#card .row[data-key=p] [aria-pressed=true]").endswith("absent")


def test_an_edit_of_another_program_is_shown(page: Page, recording: Recording, watery: Observation) -> None:
    """The file is read anew when it changed."""
    page.open(watery.id)
    page.press("1")
    path = recording.folder / "pegs.corrections.json"
    edits = json.loads(path.read_text("utf-8"))
    edits[0]["set"]["sample"] = "white"
    path.write_text(json.dumps([{**edits[0], "id": "other"}]), "utf-8")
    page.open(watery.id)
    assert page.text("#card .row[data-key=s] [aria-pressed=true]").endswith("white")


def test_keys_that_are_pressed_fast_are_all_heeded(page: Page, recording: Recording) -> None:
    """Twenty notes are confirmed without a pause."""
    page.press("a" * 20)
    assert [edit["do"] for edit in recording.edits()] == ["confirm"] * 20
    assert page.script("return bar.value") == 20


def test_single_keys_can_be_switched_off(page: Page, recording: Recording) -> None:
    """Who dictates to the machine would otherwise correct by talking."""
    page.click("[data-deed=keys]")
    page.click("#single")
    page.press(Keys.ESCAPE)
    page.press("x")
    assert recording.edits() == []


def test_a_term_is_split_and_joined_again(page: Page, recording: Recording) -> None:
    """`d` cuts a term in two notes; `m` makes one of them again."""
    notes = Notes.model_validate_json(recording.notes.read_bytes())
    whole = next(one for one in notes.observations if " " in one.term)
    page.open(whole.id)
    page.press("d", "1")
    first, second = whole.term.split(maxsplit=1)
    terms = lambda: [" ".join(line.split()) for line in page.script(LISTED)]  # noqa: E731
    place = next(number for number, one in enumerate(terms()) if one.startswith(f"{first} {whole.facet}"))
    assert terms()[place + 1].startswith(f"{second} {whole.facet}")
    page.press("m", "1")
    assert any(one.startswith(whole.term) for one in terms())
    assert [edit["do"] for edit in recording.edits()] == ["split", "join"]


def test_a_stretch_is_moved_to_another_sample(page: Page, recording: Recording, watery: Observation) -> None:
    """All that is said in the chosen words is of the sample that a digit names."""
    page.open(watery.id)
    page.press(".", *[">"] * 12, "o", "s", "3")
    moved = notes_of(recording.captions)
    inside = [one for one in moved.observations if 0 <= one.term_span[0] - watery.term_span[0] < 40]
    assert len(inside) > 1
    assert {one.sample for one in inside} == {"white"}


def test_a_word_is_taught_in_one_step(page: Page, recording: Recording) -> None:
    """Chosen words get a concept of the lexicon; the recording is listened to again with it."""
    page.script("run = {cue: 'c-5', first: 0, length: 1}")
    page.press(".", "o", "c")
    page.press(f"smoky{Keys.ENTER}")
    assert [(edit["do"], edit["concept"]) for edit in recording.edits()] == [("teach", "smoky")]


def test_what_the_lexicon_lacks_cannot_be_taught(page: Page, recording: Recording) -> None:
    """The page says so, and nothing is written."""
    page.press(".", "o", "c")
    page.press(f"qwertyness{Keys.ENTER}")
    assert "the lexicon knows no" in page.text("#told")
    assert recording.edits() == []


def test_what_was_meant_is_written_by_keyboard(page: Page, recording: Recording) -> None:
    """A row that is written in takes the focus; Enter saves and gives it back to the card."""
    page.open(str(page.script("return document.querySelector('#notes section:last-child [data-note]').dataset.note")))
    page.press("e")
    page.press(f"teapot{Keys.ENTER}")
    assert [edit["set"] for edit in recording.edits()] == [{"meant": "teapot"}]
    assert page.script("return document.activeElement.id") == "card"


def test_a_repair_is_made_everywhere(page: Page, recording: Recording) -> None:
    """`r` on a repair mends the same words wherever they stand."""
    page.open(str(page.script("return document.querySelector('#notes section:last-child [data-note]').dataset.note")))
    page.press("r")
    assert [edit["do"] for edit in recording.edits()] == ["mend"]


def test_a_name_is_tried_before_it_is_added(page: Page, recording: Recording) -> None:
    """The sheet's card tells what would come and go; only then is the name written down."""
    page.press("!")
    page.press("e")
    page.press("the left bottle", Keys.ENTER)
    assert "notes come" in page.text("#card")
    assert recording.edits() == []
    page.press("1")
    assert [(edit["do"], edit["alias"]) for edit in recording.edits()] == [("alias", "the left bottle")]


def test_a_queue_lists_the_least_sure_first(recording: Recording, chromium: WebDriver, tmp_path: Path) -> None:
    """Each recording has a page of its own, and a bar in the list."""
    notes = json.loads(recording.notes.read_text("utf-8"))
    for one in notes["observations"]:
        one["confidence"] = 0.3
    (recording.folder / "other.vtt").write_bytes(recording.captions.read_bytes())
    (recording.folder / "other.notes.json").write_text(json.dumps({**notes, "transcript": "other.vtt"}), "utf-8")
    with served("--queue", recording.folder) as (address, _):
        page = Page(chromium, address)
        assert page.text("tr:nth-of-type(2) a") == "other"
        page.click("tr:nth-of-type(3) a")
        assert "Three roasted oolongs" in page.text("h1")
