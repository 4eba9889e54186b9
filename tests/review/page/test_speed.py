"""Two hours of recording: how soon the page is there, and each action done, against an empty page."""

from collections.abc import Callable, Iterator
from statistics import median

import pytest
from selenium.webdriver.remote.webdriver import WebDriver

from tests.review.page.browsing import Page, served
from tests.review.page.long import written

pytestmark = [pytest.mark.client("chromium", "chromedriver"), pytest.mark.benchmark]

OPENED = "const [it] = performance.getEntriesByType('navigation'); return it.loadEventEnd - it.startTime"
ACTED = """
const [key, done] = arguments, begun = performance.now();
document.activeElement.dispatchEvent(new KeyboardEvent("keydown", { key, bubbles: true, cancelable: true }));
const shown = () => requestAnimationFrame(() => setTimeout(() => done(performance.now() - begun)));
const wait = () => { const now = last; now.then(() => now === last ? shown() : wait()); };
wait();
"""
ASKED = """
const [done] = arguments, begun = performance.now();
fetch(location.href).then((answer) => answer.text()).then((text) => {
  document.body.textContent = text;
  requestAnimationFrame(() => setTimeout(() => done(performance.now() - begun)));
});
"""


@pytest.fixture(scope="module")
def long(tmp_path_factory: pytest.TempPathFactory, chromium: WebDriver) -> Iterator[Page]:
    """The page of a long recording."""
    with served(written(tmp_path_factory.mktemp("long"))) as (address, _):
        yield Page(chromium, address)


def empty(page: Page) -> str:
    """A page of the same server with a few words on it."""
    return page.driver.current_url.split("/r/")[0].rstrip("/") + "/static/nothing"


def test_it_opens_in_two_seconds(long: Page, record_property: Callable[[str, object], None]) -> None:
    """The best of five openings, and at most sixty times what an empty page takes."""
    home = long.driver.current_url
    times: dict[str, list[float]] = {}
    for _ in range(5):
        for place in (empty(long), home):
            long.driver.get(place)
            times.setdefault(place, []).append(float(long.script(OPENED)))
    nothing, whole = min(times[empty(long)]), min(times[home])
    record_property("times an empty page", round(whole / nothing, 1))
    assert whole < 2_000
    assert whole / nothing < 60


@pytest.mark.parametrize("keys", ["aaaaaaaa", "nnnnnnnn", "jjjjjjjj", "12341234", "uuuuUUUU", "xxxxxxxx"])
def test_an_action_takes_a_tenth_of_a_second(
    keys: str, long: Page, record_property: Callable[[str, object], None]
) -> None:  # fmt: skip
    """From the key to the picture, in the median; told beside an empty page that asks the server for a few words."""
    times = [float(long.driver.execute_async_script(ACTED, key)) for key in keys]
    home = long.driver.current_url
    long.driver.get(empty(long))
    nothing = median(float(long.driver.execute_async_script(ASKED)) for _ in range(8))
    long.driver.get(home)
    record_property("times an empty page", round(median(times) / nothing, 1))
    assert median(times) < 100
