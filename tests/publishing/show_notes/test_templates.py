"""Templates of the author's own, and what no template can undo."""

from pathlib import Path

import pytest

from notesmith.errors import OutputError
from notesmith.publishing.episode import Episode
from notesmith.publishing.show_notes import markdown, page, plain
from notesmith.records import Notes, Sheet, SheetSample
from tests.publishing.show_notes.telling import seen, told

SHEET = Sheet(title="Two <b>cups</b>", samples=(SheetSample(id="A"),))


def write(folder: Path, name: str, text: str) -> Path:
    """Put a template into a folder of the author's own."""
    path = folder / name
    path.parent.mkdir(parents=True, exist_ok=True)
    path.write_text(text, "utf-8")
    return folder


def test_one_template_is_laid_over_ours(tmp_path: Path) -> None:
    """A template of the author's own takes the place of ours; all others stay."""
    own = write(tmp_path, "html/style.css", "body { color: teal }")
    made = page(told(["plum"], seen(0, "plum"), sheet=SHEET, templates=own))
    assert "color: teal" in made
    assert "“plum”" in made


def test_a_block_may_have_a_template_of_its_own(tmp_path: Path) -> None:
    """A template called like a block writes that block alone."""
    own = write(tmp_path, "markdown/portraits.j2", "Of {{ block.groups | length }} sample.\n")
    made = markdown(told(["plum"], seen(0, "plum"), sheet=SHEET, templates=own))
    assert "## Portraits\n\nOf 1 sample.\n" in made
    assert "## How blind it was\n\n- " in made


@pytest.mark.parametrize("name", ["block.j2", "style.css", "page.j2"])
def test_names_are_escaped_whatever_the_template_is_called(tmp_path: Path, name: str) -> None:
    """A template of any name that shows a text shows it escaped."""
    own = write(tmp_path, f"html/{name}", "{{ notes.title }}")
    assert "Two <b>cups</b>" not in page(told(["plum"], seen(0, "plum"), sheet=SHEET, templates=own))


@pytest.mark.parametrize("text", ["{{ nothing }}", "{% if %}", "{{ notes.nothing }}", "{% include 'none.j2' %}"])
def test_a_broken_template_is_told_on_one_line(tmp_path: Path, text: str) -> None:
    """What is wrong with a template is an error of the author's, in one line."""
    own = write(tmp_path, "html/block.j2", text)
    with pytest.raises(OutputError) as error:
        page(told(["plum"], seen(0, "plum"), sheet=SHEET, templates=own))
    assert "template" in str(error.value)
    assert "\n" not in str(error.value)


def test_an_unknown_locale_is_told() -> None:
    """A locale that nobody has is an error of the author's."""
    with pytest.raises(OutputError, match="no locale is called 'xx'"):
        page(told(["plum"], sheet=SHEET, locale="xx"))


def test_same_notes_same_bytes() -> None:
    """Every form comes out the same each time."""
    episode = told(["plum", "fig"], seen(0, "plum"), seen(1, "fig"), sheet=SHEET)
    for form in (page, markdown, plain):
        assert form(episode) == form(episode)


def test_the_page_needs_nothing_else() -> None:
    """Nothing on the page is fetched, and nothing on it runs."""
    made = page(told(["plum"], seen(0, "plum"), sheet=SHEET))
    assert "<script" not in made
    assert "http" not in made.replace("http-equiv", "").replace("http://www.w3.org/2000/svg", "")
    assert "default-src 'none'" in made


def test_empty_notes_make_a_page(empty: Notes) -> None:
    """Notes that say nothing still make a page with a title and the caution that holds for all."""
    made = page(Episode(empty))
    assert "<h1>none.vtt</h1>" in made
    assert "perceived" in made


def test_captions_that_are_missing_leave_the_quotes(small: Notes) -> None:
    """Without captions the page still shows every quote it rests on."""
    made = page(Episode(small))
    assert small.observations[0].quote.split()[0] in made
    assert 'id="said-1"' in made
