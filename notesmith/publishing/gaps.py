"""The gaps of the lexicon as a table to read, and as rows for a label file."""

import io
from collections.abc import Iterable, Sequence
from typing import Literal

from rich import box
from rich.console import Console
from rich.table import Table
from rich.text import Text

from notesmith.clock import format_clock, seconds_to_ms
from notesmith.lexicon.check import common_words
from notesmith.lexicon.folders import COLUMNS
from notesmith.lexicon.gaps import Gap, Quote
from notesmith.publishing.plain import one_line

Form = Literal["table", "tsv"]


def render(gaps: Sequence[Gap], form: Form, *, width: int = 100, colour: bool = False) -> str:
    """Write the gaps: a table for a terminal of that many characters, or rows for a label file."""
    return rows(gaps) if form == "tsv" else table(gaps, width=width, colour=colour)


def rows(gaps: Iterable[Gap]) -> str:
    """A label file of the gaps; the concept is the nearest one, or left empty to be chosen.

    Each label is a `phrase`, since nothing tells how it is inflected, and guarded where it is an everyday word.
    """
    return "".join("\t".join(row) + "\n" for row in (COLUMNS, *map(_row, gaps)))


def table(gaps: Sequence[Gap], *, width: int = 100, colour: bool = False) -> str:
    """One row a gap: how often, what, the nearest concepts with their likeness, and quotes."""
    if not gaps:
        return "No open descriptors.\n"
    drawn = Table(box=box.SIMPLE_HEAD, show_edge=False, pad_edge=False, header_style="bold")
    drawn.add_column("said", justify="right", no_wrap=True)
    for heading in ("term", "nearest", "quotes"):
        drawn.add_column(heading, overflow="fold")
    for gap in gaps:
        near = "\n".join(f"{near.concept} {near.score:.2f}" for near in gap.nearest)
        drawn.add_row(str(gap.count), Text(one_line(gap.term)), near or "-", _quotes(gap.quotes))
    return _printed(drawn, width, colour)


def _row(gap: Gap) -> tuple[str, ...]:
    label = one_line(gap.term)
    concept = gap.nearest[0].concept if gap.nearest else ""
    return concept, label, "synonym", "phrase", "guarded" if label in common_words() else ""


def _quotes(quotes: Iterable[Quote]) -> Text:
    return Text("\n").join(Text.assemble((f"{_place(quote)} ", "dim"), one_line(quote.words)) for quote in quotes)


def _place(quote: Quote) -> str:
    name = one_line(quote.transcript)
    return name if quote.start is None else f"{name} {format_clock(seconds_to_ms(quote.start))}"


def _printed(drawn: Table, width: int, colour: bool) -> str:
    written = io.StringIO()
    # Told everything, so that what surrounds the program cannot change what it writes.
    console = Console(
        file=written, width=width, force_terminal=colour, color_system="standard" if colour else None,
        no_color=not colour, highlight=False, markup=False, emoji=False, legacy_windows=False, _environ={},
    )  # fmt: skip
    console.print(drawn)
    return "\n".join(line.rstrip() for line in written.getvalue().split("\n"))
