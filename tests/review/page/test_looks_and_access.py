"""The page as it is seen and told: axe-core, two widths, and captions that would like to be more than words."""

from pathlib import Path
from typing import Any

import pytest
from selenium.webdriver.remote.webdriver import WebDriver

from notesmith.publishing import json_text
from tests.publishing.hostile.conftest import TEXTS, episode_with
from tests.review.page.browsing import Keys, Page, served
from tests.review.page.conftest import Recording

pytestmark = [pytest.mark.client("chromium", "chromedriver"), pytest.mark.slow]
AXE = Path(__file__).parents[2] / "node" / "node_modules" / "axe-core" / "axe.min.js"
TEXTS["page"] = "</span><b hx-get=/r/1/undo data-hx-post=/r/1/undo hx-trigger=load>x</b><style>*{display:none}</style>"
HOSTILE = ["script", "attribute", "image", "template", "newlines", "turned", "control", "quotes", "page", "long"]
ASK = """
const done = arguments[0];
axe.run().then((found) => done({
  broken: found.violations.filter((one) => ["serious", "critical"].includes(one.impact))
    .map((one) => `${one.id}: ${one.nodes[0].html}`),
  passes: found.passes.length,
}));
"""


def found_by_axe(page: Page) -> dict[str, Any]:
    """What axe-core finds on the page as it is."""
    page.script(AXE.read_text("utf-8"))
    return dict(page.driver.execute_async_script(ASK))


def sticking_out(page: Page) -> int:
    """Pixels by which the page is wider than its window."""
    return int(page.script("return document.documentElement.scrollWidth - document.documentElement.clientWidth"))


@pytest.mark.node
@pytest.mark.parametrize("width", [1280, 390])
@pytest.mark.parametrize("keys", ["", "n", ".>o", "!", "?"], ids=["opened", "next", "words", "sheet", "keys"])
def test_axe_finds_nothing_serious(page: Page, keys: str, width: int) -> None:
    """Whatever stands on the card, at the width of a desk and of a phone."""
    page.resize(width, 844)
    page.press(*keys)
    told = found_by_axe(page)
    assert told["broken"] == []
    assert told["passes"] > 20
    assert sticking_out(page) <= 0


@pytest.mark.node
def test_axe_finds_nothing_serious_in_the_queue(recording: Recording, chromium: WebDriver) -> None:
    """The list of recordings."""
    (recording.folder / "more.notes.json").write_bytes(recording.notes.read_bytes())
    with served("--queue", recording.folder) as (address, _):
        page = Page(chromium, address, width=390)
        assert found_by_axe(page)["broken"] == []
        assert sticking_out(page) <= 0


def test_in_the_dark_axe_finds_nothing_serious(page: Page) -> None:
    """Contrast holds where the machine asks for dark pages."""
    told = {"features": [{"name": "prefers-color-scheme", "value": "dark"}]}
    page.driver.execute_cdp_cmd("Emulation.setEmulatedMedia", told)
    try:
        page.press("n")
        assert found_by_axe(page)["broken"] == []
    finally:
        page.driver.execute_cdp_cmd("Emulation.setEmulatedMedia", {"features": []})


@pytest.mark.parametrize("name", HOSTILE)
def test_hostile_captions_are_words_and_nothing_else(name: str, chromium: WebDriver, tmp_path: Path) -> None:
    """No element of theirs, no script, no request: they stand on the page as they were said."""
    episode = episode_with(name)
    assert episode.source
    (tmp_path / "cups.json").write_bytes(episode.source)
    (tmp_path / "cups.notes.json").write_text(json_text.render(episode.notes), "utf-8")
    with served(tmp_path / "cups.notes.json", "--captions", tmp_path / "cups.json") as (address, _):
        page = Page(chromium, address)
        page.errors()
        page.press(*"jjjjjjjjjjjj", "!", "?", Keys.ESCAPE)
        assert page.errors() == []
        assert page.count("script") == 2
        assert page.count("img, style, b, iframe, [onerror], [onmouseover], [data-hx-post], #talk [hx-get]") == 0
        said = page.script("return [...document.querySelectorAll('.said')].map((one) => one.textContent)")
        assert episode.captions
        assert said == [cue.text for cue in episode.captions.cues]
        assert not (tmp_path / "cups.corrections.json").exists()


def test_what_is_done_is_told_to_a_screen_reader(page: Page) -> None:
    """The line at the foot is a live region; the note at hand is marked in the list; presence is told by words."""
    page.press("a")
    assert page.text("[role=status]").startswith("Right as it is")
    assert page.count("#notes [aria-current=true]") == 1
    assert page.count("#card [aria-pressed=true]") >= 4
