"""A browser on the page, as a reviewer has one: a server of its own, a recording, and keys to press."""

import json
import re
import subprocess
import sys
import time
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path
from typing import Any

from selenium import webdriver
from selenium.webdriver.common.by import By
from selenium.webdriver.common.keys import Keys
from selenium.webdriver.remote.webdriver import WebDriver
from selenium.webdriver.support.ui import WebDriverWait

FLAGS = [
    "--headless", "--no-sandbox", "--disable-gpu", "--no-first-run", "--disable-background-networking",
    "--disable-component-update", "--disable-sync", "--autoplay-policy=no-user-gesture-required",
]  # fmt: skip
PATIENCE = 10.0
READY = "return !!document.querySelector('table.queue') || !!window.htmx && !!document.querySelector('#card article')"
SETTLED = """
const done = arguments[0];
const wait = () => { const now = last; now.then(() => now === last ? done() : wait()); };
wait();
"""


@contextmanager
def served(*arguments: str | Path) -> Iterator[tuple[str, subprocess.Popen[str]]]:
    """The page's server, and the address that opens it once."""
    command = [sys.executable, "-m", "notesmith", "review", "--no-browser", *map(str, arguments)]
    server = subprocess.Popen(command, stdout=subprocess.PIPE, stderr=subprocess.PIPE, text=True)
    try:
        assert server.stdout
        told = re.search(r"http://\S+", server.stdout.readline())
        if told is None:
            raise AssertionError(server.communicate()[1])
        yield told[0], server
    finally:
        server.kill()
        server.wait()


@contextmanager
def browser(profile: Path) -> Iterator[WebDriver]:
    """Chromium with a profile of its own."""
    options = webdriver.ChromeOptions()
    options.binary_location = "/usr/bin/chromium"
    for flag in (*FLAGS, f"--user-data-dir={profile}"):
        options.add_argument(flag)
    options.set_capability("goog:loggingPrefs", {"browser": "ALL"})
    driver = webdriver.Chrome(options=options, service=webdriver.ChromeService("/usr/bin/chromedriver"))
    try:
        yield driver
    finally:
        driver.quit()


class Page:
    """The page in a browser."""

    def __init__(self, driver: WebDriver, address: str, width: int = 1280, height: int = 900) -> None:
        self.driver = driver
        self.resize(width, height)
        driver.get(address)
        WebDriverWait(driver, PATIENCE).until(lambda it: it.execute_script(READY))

    def resize(self, width: int, height: int) -> None:
        """Show the page in a window of that size, though a headless one is never so narrow."""
        told = {"width": width, "height": height, "deviceScaleFactor": 1, "mobile": width < 500}
        self.driver.execute_cdp_cmd("Emulation.setDeviceMetricsOverride", told)

    def press(self, *keys: str) -> None:
        """Press keys one after another, each once the one before is answered; those of one text in a rush."""
        for key in keys:
            self.driver.switch_to.active_element.send_keys(key)
            self.settle()

    def settle(self) -> None:
        """Wait until every question is answered."""
        self.driver.execute_async_script(SETTLED)

    def text(self, selector: str) -> str:
        """What stands there."""
        return str(self.driver.find_element(By.CSS_SELECTOR, selector).get_property("innerText"))

    def count(self, selector: str) -> int:
        """How many there are."""
        return len(self.driver.find_elements(By.CSS_SELECTOR, selector))

    def click(self, selector: str) -> None:
        """Click there."""
        place = self.driver.find_element(By.CSS_SELECTOR, selector)
        self.script("arguments[0].scrollIntoView({block: 'center'})", place)
        place.click()
        self.settle()

    def held(self) -> str:
        """Id of the note at hand."""
        return str(self.script("return held()"))

    def script(self, script: str, *arguments: Any) -> Any:
        """Ask the page itself."""
        return self.driver.execute_script(script, *arguments)

    def open(self, record: str) -> None:
        """Take up a note by its id."""
        self.script("const id = arguments[0]; then(() => open(id))", record)
        self.settle()

    def edits(self, corrections: Path) -> list[dict[str, Any]]:
        """What has been written down."""
        return list(json.loads(corrections.read_text("utf-8"))) if corrections.exists() else []

    def errors(self) -> list[str]:
        """What the browser complained of."""
        return [entry["message"] for entry in self.driver.get_log("browser") if entry["level"] == "SEVERE"]

    def shot(self, path: Path) -> None:
        """A picture of what is seen."""
        time.sleep(0.2)
        self.driver.save_screenshot(str(path))


__all__ = ["Keys", "Page", "browser", "served"]
