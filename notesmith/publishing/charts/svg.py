"""A chart as SVG: plain shapes and real text, nothing that runs, and no ids that could meet others on a page."""

import re
from html import escape

from notesmith.publishing.charts.paper import Paper, Shape, Words
from notesmith.publishing.charts.signs import PAPER
from notesmith.publishing.plain import one_line

MARGIN = 8
SPACE = "http://www.w3.org/2000/svg"
_NO_XML = re.compile("[\ufffe\uffff]")
FAMILY = "DejaVu Sans, Verdana, Arial, sans-serif"


def svg(paper: Paper) -> str:
    """Write the sheet as SVG, the same bytes for the same sheet."""
    wide, high = _short(paper.width + 2 * MARGIN), _short(paper.height + 2 * MARGIN)
    size = f'width="{wide}" height="{high}" viewBox="-{MARGIN} -{MARGIN} {wide} {high}"'
    return "\n".join(
        (
            f'<svg xmlns="{SPACE}" role="img" aria-label="{_safe(paper.title)}" {size} font-family="{FAMILY}">',
            f"<title>{_safe(paper.title)}</title>",
            f"<desc>{_safe(paper.says)}</desc>",
            f'<rect x="-{MARGIN}" y="-{MARGIN}" width="100%" height="100%" fill="{PAPER}"/>',
            *(_words(item) if isinstance(item, Words) else _shape(item) for item in paper.drawn),
            "</svg>\n",
        )
    )


def _words(item: Words) -> str:
    weight = ' font-weight="bold"' if item.bold else ""
    anchor = "" if item.anchor == "start" else f' text-anchor="{item.anchor}"'
    turn = f' transform="rotate(-90 {_short(item.x)} {_short(item.y)})"' if item.upright else ""
    return (
        f'<text x="{_short(item.x)}" y="{_short(item.y)}" font-size="{_short(item.size)}"{weight}{anchor}{turn} '
        f'fill="{item.colour}">{_safe(item.words)}</text>'
    )


def _shape(item: Shape) -> str:
    points = " ".join(f"{_short(x)},{_short(y)}" for x, y in item.points)
    stroke = f' stroke="{item.stroke}" stroke-width="{_short(item.weight)}"' if item.stroke else ""
    dashes = ' stroke-dasharray="4 3"' if item.dashed else ""
    name = "polygon" if item.closed else "polyline"
    drawn = f'<{name} points="{points}" fill="{item.fill or "none"}"{stroke}{dashes}'
    return f"{drawn}><title>{_safe(item.tip)}</title></{name}>" if item.tip else f"{drawn}/>"


def _safe(text: str) -> str:
    return escape(_NO_XML.sub("\ufffd", one_line(text)))


def _short(number: float) -> str:
    """A number with one decimal at most.

    >>> _short(3.0), _short(3.14)
    ('3', '3.1')
    """
    return f"{number:.1f}".removesuffix(".0")
