"""Our tracks in a browser, as its own player reads them."""

import html
import json
import re
import threading
from collections.abc import Iterator
from functools import partial
from http.server import SimpleHTTPRequestHandler, ThreadingHTTPServer
from pathlib import Path
from typing import Any

import pytest

from notesmith.publishing.captions import webvtt as captions_webvtt
from notesmith.publishing.chapters import webvtt as chapters_webvtt
from notesmith.publishing.episode import Episode
from tests.publishing.clients.conftest import expected, run

pytestmark = [pytest.mark.client("chromium"), pytest.mark.slow]

PAGE = """<!doctype html><meta charset="utf-8"><video>
<track kind="chapters" src="chapters.vtt"><track kind="captions" src="captions.vtt" srclang="en"></video>
<pre id="told"></pre><script>
const told = {};
for (const track of document.querySelectorAll("track")) {
  track.onload = () => {
    told[track.kind] = [...track.track.cues].map((cue) => ({
      id: cue.id, start: cue.startTime, end: cue.endTime, raw: cue.text, shown: cue.getCueAsHTML().textContent,
    }));
    document.getElementById("told").textContent = JSON.stringify(told);
  };
  track.track.mode = "hidden";
}
</script>
"""


class _Quiet(SimpleHTTPRequestHandler):
    def log_message(self, *_: object) -> None:
        """Say nothing of each file that is fetched."""


@pytest.fixture
def address(tmp_path: Path) -> Iterator[str]:
    """Where the folder is served."""
    server = ThreadingHTTPServer(("127.0.0.1", 0), partial(_Quiet, directory=str(tmp_path)))
    threading.Thread(target=server.serve_forever, daemon=True).start()
    yield f"http://127.0.0.1:{server.server_port}"
    server.shutdown()


def shown(address: str) -> dict[str, list[dict[str, Any]]]:
    """The cues that the browser finds on the page."""
    options = ["--headless", "--no-sandbox", "--disable-gpu", "--virtual-time-budget=10000", "--dump-dom"]
    page = run("chromium", *options, f"{address}/page.html")
    told = re.search(r'<pre id="told">(.*?)</pre>', page, re.DOTALL)
    assert told
    return dict(json.loads(html.unescape(told[1])))


def test_a_browser_reads_chapters_and_captions(episode: Episode, tmp_path: Path, address: str) -> None:
    """Titles to the letter, times to the millisecond, and what people see is what was said."""
    (tmp_path / "page.html").write_text(PAGE, "utf-8")
    (tmp_path / "chapters.vtt").write_text(chapters_webvtt.render(episode) or "", "utf-8")
    (tmp_path / "captions.vtt").write_text(captions_webvtt.render(episode) or "", "utf-8")
    told = shown(address)
    assert [(cue["start"], cue["shown"]) for cue in told["chapters"]] == expected(episode)
    seen = " ".join(cue["shown"].replace("\n", " ") for cue in told["captions"])
    assert seen == (
        "So the gai<wan & its lid, then the <other> one. It is all smoke, and that goes on for quite a while, "
        "longer than two lines of captions would ever hold. Then the bowl. I like it best."
    )
