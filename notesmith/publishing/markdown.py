"""Notes as Markdown, for a page or a description: the same grids and lists as the table."""

import re
from collections.abc import Iterator

from notesmith.publishing.arrange import Cell, Entry, Grid, Listing, arrange, subtitle, title
from notesmith.publishing.plain import one_line
from notesmith.records import Notes


def render(notes: Notes) -> str:
    """Write the notes as Markdown with pipe tables."""
    blocks = [f"# {escaped(title(notes))}", escaped(subtitle(notes))]
    for block in arrange(notes):
        lines = _grid(block) if isinstance(block, Grid) else _listing(block)
        blocks += [f"## {escaped(block.heading)}", "\n".join(lines)]
    return "\n\n".join(blocks) + "\n"


def _grid(grid: Grid) -> Iterator[str]:
    yield row(["", *map(escaped, grid.columns)])
    yield row(["---"] * (len(grid.columns) + 1))
    for facet, cells in grid.rows:
        yield row([facet, *map(_cell, cells)])


def row(cells: list[str]) -> str:
    """A row of a pipe table, from cells that are Markdown already."""
    return "| " + " | ".join(cells) + " |"


def _cell(cell: Cell) -> str:
    return "<br>".join(map(_entry, cell))


def _entry(entry: Entry) -> str:
    term = escaped(entry.term)
    shown = {"present": term, "absent": f"*no {term}*", "uncertain": f"{term}?"}[entry.presence]
    return f"{shown} {escaped(entry.detail)}".rstrip()


def _listing(listing: Listing) -> Iterator[str]:
    for time, text in listing.lines:
        yield f"- {time} {escaped(text)}" if time else f"- {escaped(text)}"


def escaped(text: str) -> str:
    r"""The text with every sign that Markdown or HTML would read as its own made a plain one.

    >>> escaped("a|b *c* <d>")
    'a\\|b \\*c\\* \\<d\\>'
    """
    return re.sub(r"([\\`*_{}\[\]<>#|~&!])", r"\\\1", one_line(text))
