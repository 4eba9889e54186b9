"""How much room words take."""

import pytest
from matplotlib import rc_context
from matplotlib.backends.backend_agg import FigureCanvasAgg
from matplotlib.figure import Figure

from notesmith.publishing.charts.letters import families, fit, width, wrap


@pytest.mark.parametrize("words", ["", "smoke", "BM (Guadeloupe)", "illicit fill", "née à l’été", "7:33"])
@pytest.mark.parametrize("bold", [False, True])
def test_words_are_as_wide_as_they_are_drawn(words: str, bold: bool) -> None:
    """What is measured is what matplotlib draws, to two pixels for the space between pairs of letters."""
    with rc_context({"text.hinting": "none"}):
        figure = Figure(dpi=72)
        drawn = figure.text(0, 0, words, fontsize=13, weight="bold" if bold else "normal", family="DejaVu Sans")
        renderer = FigureCanvasAgg(figure).get_renderer()
        assert width(words, 13, bold=bold) == pytest.approx(drawn.get_window_extent(renderer).width, abs=2)


def test_nothing_fits_anywhere() -> None:
    """No words, no ellipsis."""
    assert fit("", 0, 12) == ""


def test_words_that_fit_are_left_alone() -> None:
    """Room enough."""
    assert fit("smoke", 100, 12) == "smoke"


@pytest.mark.parametrize("words", ["a very long name of a very small garden", "x" * 10_000, "龙井" * 500])
def test_words_that_do_not_fit_are_cut_and_show_it(words: str) -> None:
    """Never wider than the room."""
    short = fit(words, 80, 12)
    assert short.endswith("…")
    assert width(short, 12) <= 80


def test_a_line_ends_between_words() -> None:
    """As many words as fit go on each line."""
    assert wrap("one two three four", width("one two", 12) + 1, 12) == ["one two", "three", "four"]


def test_the_last_line_allowed_is_cut() -> None:
    """What does not fit into the lines is shown to be missing."""
    assert wrap("one two three four five six", width("one two", 12) + 1, 12, lines=2)[-1].endswith("…")


def test_line_ends_inside_words_are_spaces() -> None:
    """A name of two lines stands on one."""
    assert fit("old\nbarn", 200, 12) == "old barn"


def test_one_font_draws_what_it_holds() -> None:
    """No other is looked for."""
    assert families("née smoke") == ["DejaVu Sans"]


def test_other_fonts_draw_only_what_the_usual_one_lacks() -> None:
    """The usual one comes first, whatever fonts are at hand."""
    found = families("龙井 smoke")
    assert found[0] == "DejaVu Sans"
    assert len(set(found)) == len(found)
