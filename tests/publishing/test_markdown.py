"""Notes as Markdown."""

from pathlib import Path

from notesmith.publishing.markdown import render
from notesmith.records import Notes


def test_no_notes_are_a_title_and_no_more(empty: Notes) -> None:
    """Nothing is written where nothing was said."""
    assert render(empty) == "# none.vtt\n\nfrom none.vtt · no sheet: samples drafted from the talk\n"


def test_notes_as_markdown(small: Notes, cases: Path) -> None:
    """The whole page is as expected."""
    assert render(small) == (cases / "small.md").read_text("utf-8")


def test_words_cannot_break_out_of_their_cell(small: Notes) -> None:
    """Signs of Markdown and HTML, and new lines, are words like others."""
    odd = small.observations[0].model_copy(update={"term": "a|b\n# c <script> *d* [e](f)"})
    page = render(small.model_copy(update={"observations": (odd,)}))
    assert r"a\|b \# c \<script\> \*d\* \[e\](f) 0:12" in page
