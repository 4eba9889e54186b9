"""Notes for the terminal: samples side by side while the width allows it, below one another where it does not."""

import io
from collections.abc import Iterator

from rich import box
from rich.console import Console, RenderableType
from rich.padding import Padding
from rich.table import Table
from rich.text import Text

from notesmith.publishing.arrange import Cell, Entry, Grid, Listing, arrange, subtitle, title
from notesmith.publishing.plain import one_line
from notesmith.records import Notes

MIN_COLUMN = 22
FACET_COLUMN = 12


def render(notes: Notes, *, width: int = 100, colour: bool = False) -> str:
    """Write the notes for a terminal of that many characters, with its colours or as plain text."""
    written = io.StringIO()
    console = _console(written, width, colour)
    console.print(Text(one_line(title(notes)), "bold"))
    console.print(Text(one_line(subtitle(notes)), "dim"))
    for block in arrange(notes):
        console.print()
        console.print(Text(one_line(block.heading), "bold cyan"))
        for part in _parts(block, width):
            console.print(part)
    return "\n".join(line.rstrip() for line in written.getvalue().split("\n"))


def _console(file: io.StringIO, width: int, colour: bool) -> Console:
    # Told everything, so that what surrounds the program cannot change what it writes.
    return Console(
        file=file, width=width, force_terminal=colour, color_system="standard" if colour else None,
        no_color=not colour, highlight=False, markup=False, emoji=False, legacy_windows=False, _environ={},
    )  # fmt: skip


def _parts(block: Grid | Listing, width: int) -> Iterator[RenderableType]:
    if isinstance(block, Listing):
        yield _listing(block)
    elif len(block.columns) * (MIN_COLUMN + 2) + FACET_COLUMN <= width:
        yield _side_by_side(block)
    else:
        yield from _stacked(block)


def _side_by_side(grid: Grid) -> Table:
    table = Table(box=box.SIMPLE_HEAD, show_edge=False, pad_edge=False, leading=1, header_style="bold")
    table.add_column("", width=FACET_COLUMN - 2, style="cyan")
    for column in grid.columns:
        table.add_column(Text(one_line(column)), min_width=MIN_COLUMN, overflow="fold")
    for facet, cells in grid.rows:
        table.add_row(facet, *map(_cell, cells))
    return table


def _stacked(grid: Grid) -> Iterator[RenderableType]:
    for number, column in enumerate(grid.columns):
        yield Text(one_line(column), "bold")
        table = Table.grid(padding=(0, 2, 0, 0))
        table.add_column(width=FACET_COLUMN - 2, style="cyan")
        table.add_column(overflow="fold")
        for facet, cells in grid.rows:
            if cells[number]:
                table.add_row(facet, _cell(cells[number]))
        yield Padding(table, (0, 0, 0, 2))


def _listing(listing: Listing) -> Table:
    table = Table.grid(padding=(0, 2, 0, 0))
    if any(time for time, _ in listing.lines):
        table.add_column(justify="right", style="dim", no_wrap=True)
    table.add_column(overflow="fold")
    for time, text in listing.lines:
        cells = (time, Text(one_line(text)))
        table.add_row(*cells[-len(table.columns) :])
    return table


def _cell(cell: Cell) -> Text:
    return Text("\n").join(map(_entry, cell))


def _entry(entry: Entry) -> Text:
    """The term and its detail; a denied one says so in a word too, since not every terminal strikes through."""
    term = one_line(entry.term)
    parts: list[tuple[str, str]] = {
        "present": [(term, "")],
        "absent": [("no ", "red"), (term, "red strike")],
        "uncertain": [(f"{term}?", "italic")],
    }[entry.presence]
    return Text.assemble(*parts, (f" {one_line(entry.detail)}" if entry.detail else "", "dim"))
