"""The page in the hands of others: an HTML validator, axe-core, a browser at two widths, and a CommonMark renderer."""

import html
import json
import re
import subprocess
from pathlib import Path
from typing import Any

import pytest
from markdown_it import MarkdownIt

from notesmith.publishing.episode import Episode
from notesmith.publishing.show_notes import markdown, page
from tests.publishing.hostile.conftest import episode_with
from tests.publishing.show_notes import annotated

NODE = Path(__file__).parents[2] / "node"
CHROMIUM = [
    "chromium", "--headless", "--no-sandbox", "--disable-gpu", "--no-first-run", "--disable-background-networking",
    "--disable-component-update", "--disable-sync",
]  # fmt: skip
ASKING = """<script>{axe}</script><pre id="told"></pre><script>
addEventListener("load", () => axe.run().then((found) => {{
  const wide = document.documentElement.scrollWidth - document.documentElement.clientWidth;
  const broken = found.violations.filter((one) => ["serious", "critical"].includes(one.impact))
    .map((one) => one.id + ": " + one.nodes[0].html);
  document.getElementById("told").textContent = JSON.stringify({{broken, wide, passes: found.passes.length}});
}}));
</script>"""
NAMES = ["d14", "e07", "d31"]


def asked(made: str, folder: Path, width: int) -> dict[str, Any]:
    """What axe-core finds on a page in a browser so many pixels wide, and how many pixels stick out."""
    axe = (NODE / "node_modules" / "axe-core" / "axe.min.js").read_text("utf-8").replace("</script", "<\\/script")
    free = re.sub(r"<meta http-equiv[^>]*>", "", made)  # the page allows no script; axe-core is one
    path = folder / "page.html"
    path.write_text(free.replace("</body>", ASKING.format(axe=axe) + "</body>"), "utf-8")
    options = [f"--user-data-dir={folder / 'profile'}", f"--window-size={width},900", "--virtual-time-budget=60000"]
    command = [*CHROMIUM, *options, "--dump-dom", path.as_uri()]
    shown = subprocess.run(command, check=True, capture_output=True, text=True)
    told = re.search(r'<pre id="told">(.*?)</pre>', shown.stdout, re.DOTALL)
    assert told
    answer: dict[str, Any] = json.loads(html.unescape(told[1]))
    return answer


def made_of(name: str) -> Episode:
    """The episode of a recording, or one with a hostile text in every place."""
    return annotated.episode(name) if name in annotated.names() else episode_with(name)


@pytest.mark.slow
@pytest.mark.node
@pytest.mark.client("node")
@pytest.mark.parametrize("name", [*NAMES, "script", "turned", "newlines"])
def test_the_page_is_valid_html(name: str, tmp_path: Path) -> None:
    """The validator has nothing to say, whatever was said on the recording."""
    path = tmp_path / "page.html"
    path.write_text(page(made_of(name)), "utf-8")
    validator = NODE / "node_modules" / "html-validate" / "bin" / "html-validate.mjs"
    command = ["node", str(validator), "--config", str(NODE / "htmlvalidate.json"), "-f", "text", str(path)]
    found = subprocess.run(command, check=False, capture_output=True, text=True)
    assert (found.returncode, found.stdout) == (0, "")


@pytest.mark.slow
@pytest.mark.node
@pytest.mark.client("chromium")
@pytest.mark.parametrize("width", [1280, 500])  # a headless window is never narrower than 500
@pytest.mark.parametrize("name", [*NAMES, "script"])
def test_the_page_is_accessible(name: str, width: int, tmp_path: Path) -> None:
    """axe-core has no serious finding, and nothing sticks out at the side."""
    told = asked(page(made_of(name)), tmp_path, width)
    assert told["broken"] == []
    assert told["wide"] <= 0
    assert told["passes"] > 15


@pytest.mark.parametrize("name", [*NAMES, "script", "newlines"])
def test_markdown_is_read_by_another_renderer(name: str) -> None:
    """A CommonMark renderer finds our headings and tables, and no markup of the recording's own."""
    notes = markdown(made_of(name))
    read = MarkdownIt("commonmark").enable("table").render(notes)
    assert read.count("<h1>") == 1
    assert read.count("<h2>") == len(re.findall(r"^## ", notes, re.MULTILINE))
    assert "<table>" in read
    tags = set(re.findall(r"<(\w+)", read))
    assert tags <= {"h1", "h2", "h3", "p", "ul", "li", "strong", "em", "table", "thead", "tbody", "tr", "th", "td"}
