"""Notes on the terminal."""

from pathlib import Path

from notesmith.publishing.table import render
from notesmith.records import Notes


def test_no_notes_are_a_title_and_no_more(empty: Notes) -> None:
    """Nothing is printed where nothing was said."""
    assert render(empty).split("\n") == ["none.vtt", "from none.vtt · no sheet: samples drafted from the talk", ""]


def test_samples_stand_side_by_side(small: Notes, cases: Path) -> None:
    """The whole table is as expected."""
    assert render(small) == (cases / "small.table.txt").read_text("utf-8")


def test_a_narrow_terminal_gets_samples_below_one_another(small: Notes, cases: Path) -> None:
    """Nothing is squeezed or cut: each sample has a block of its own."""
    assert render(small, width=50) == (cases / "small.narrow.txt").read_text("utf-8")


def test_no_line_is_wider_than_the_terminal(small: Notes) -> None:
    """From a narrow to a wide terminal every line fits."""
    for width in (30, 45, 60, 80, 120):
        assert max(map(len, render(small, width=width).split("\n"))) <= width


def test_a_denied_term_is_struck_through_in_colour_and_says_no_in_both(small: Notes) -> None:
    """A terminal that cannot strike through must not turn a denial into a finding."""
    assert "no smoke 1:20" in render(small)
    assert "\x1b[31mno \x1b[0m\x1b[9;31msmoke" in render(small, colour=True)


def test_plain_text_holds_no_escape(small: Notes) -> None:
    """Without colour nothing steers the terminal."""
    assert "\x1b" not in render(small)


def test_captions_cannot_steer_the_terminal(small: Notes) -> None:
    """An escape sequence in the captions is shown, not obeyed."""
    hostile = small.observations[0].model_copy(update={"term": "red\x1b[2J\u202e\x9b"})
    shown = render(small.model_copy(update={"observations": (hostile,)}))
    assert "red�[2J��" in shown


def test_square_brackets_are_no_markup(small: Notes) -> None:
    """Words that look like the table's own markup are left as they are."""
    odd = small.observations[0].model_copy(update={"term": "[bold]plum[/bold] :smile:"})
    assert "[bold]plum[/bold] :smile:" in render(small.model_copy(update={"observations": (odd,)}))


def test_untimed_notes_show_no_times(small: Notes) -> None:
    """Captions without times give terms without times."""
    untimed = small.observations[0].model_copy(update={"start": None, "end": None})
    assert "brick red Ana" in render(small.model_copy(update={"observations": (untimed,)}))


def test_one_taster_is_not_named_at_every_term(small: Notes) -> None:
    """Who said it is told only where it could be another."""
    alone = small.model_copy(
        update={
            "observations": tuple(seen for seen in small.observations if seen.taster == "Ana"),
            "sheet": small.sheet.model_copy(update={"tasters": ("Ana",)}),
        }
    )
    assert "brick red 0:12\n" in render(alone)


def test_an_observation_is_never_lost(small: Notes) -> None:
    """Even one of a preparation or a sample that the sheet lacks is shown."""
    stray = small.observations[0].model_copy(update={"preparation": "cold", "sample": "Z"})
    shown = render(small.model_copy(update={"observations": (stray,)}))
    assert "Prepared: cold" in shown
    assert "Z\n" in shown
