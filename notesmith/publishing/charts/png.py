"""A chart as PNG, drawn by matplotlib without a screen or a browser."""

import struct
import warnings
import zlib
from typing import TYPE_CHECKING, Any

from notesmith.publishing.charts.letters import families, width
from notesmith.publishing.charts.paper import Paper, Shape, Words
from notesmith.publishing.charts.signs import PAPER
from notesmith.publishing.charts.svg import MARGIN

if TYPE_CHECKING:
    from matplotlib.transforms import Affine2D

SHARPNESS = 2
"""Dots to a pixel of the page, for screens that have so many."""


def png(paper: Paper) -> bytes:
    """Draw the sheet, the same bytes for the same sheet and version of matplotlib.

    It draws with matplotlib's renderer alone: to make a figure of it first takes twice the time.
    """
    from matplotlib import rc_context
    from matplotlib.backends.backend_agg import RendererAgg
    from matplotlib.transforms import Affine2D

    wide, tall = int((paper.width + 2 * MARGIN) * SHARPNESS), int((paper.height + 2 * MARGIN) * SHARPNESS)
    # Letters as wide as they are measured.
    with rc_context({"text.hinting": "none", "text.usetex": False}), warnings.catch_warnings():
        # A sign that no font at hand holds is drawn as an empty box; the table beside the chart has it.
        warnings.simplefilter("ignore", UserWarning)
        make: Any = RendererAgg  # it tells no types
        renderer = make(wide, tall, 72 * SHARPNESS)
        place = Affine2D().translate(MARGIN, MARGIN).scale(SHARPNESS, -SHARPNESS).translate(0, tall)
        for item in (_sheet(paper), *paper.drawn):
            if isinstance(item, Words):
                _words(renderer, place, item)
            else:
                _shape(renderer, place, item)
    return _written(renderer, wide, tall)


def _written(renderer: Any, wide: int, tall: int) -> bytes:
    """The drawing as PNG (W3C, third edition), every line unfiltered: to try filters takes longer than to write it."""
    import numpy as np

    lines = np.zeros((tall, 1 + 3 * wide), np.uint8)
    lines[:, 1:] = np.asarray(renderer.buffer_rgba())[:, :, :3].reshape(tall, 3 * wide)
    head = struct.pack(">IIBBBBB", wide, tall, 8, 2, 0, 0, 0)
    chunks = ((b"IHDR", head), (b"IDAT", zlib.compress(lines.tobytes(), 3)), (b"IEND", b""))
    return b"\x89PNG\r\n\x1a\n" + b"".join(_chunk(name, content) for name, content in chunks)


def _chunk(name: bytes, content: bytes) -> bytes:
    return struct.pack(">I", len(content)) + name + content + struct.pack(">I", zlib.crc32(name + content))


def _sheet(paper: Paper) -> Shape:
    """The sheet itself, with its margin."""
    right, bottom = paper.width + MARGIN, paper.height + MARGIN
    corners = ((-MARGIN, -MARGIN), (right, -MARGIN), (right, bottom), (-MARGIN, bottom))
    return Shape(corners, True, PAPER, None, 0, False, "")


def _words(renderer: Any, place: "Affine2D", item: Words) -> None:
    from matplotlib.font_manager import FontProperties

    if not item.words:
        return
    font = FontProperties(family=families(item.words), size=item.size, weight="bold" if item.bold else "normal")
    pen = renderer.new_gc()
    pen.set_foreground(item.colour)
    share = {"start": 0.0, "middle": 0.5, "end": 1.0}[item.anchor]
    back = share * width(item.words, item.size, bold=item.bold) * SHARPNESS if share else 0.0
    x, y = place.transform((item.x, item.y))
    x, y = (x, y - back) if item.upright else (x - back, y)
    renderer.draw_text(pen, x, renderer.height - y, item.words, font, 90 if item.upright else 0)
    pen.restore()


def _shape(renderer: Any, place: "Affine2D", item: Shape) -> None:
    from matplotlib.colors import to_rgba
    from matplotlib.path import Path

    pen = renderer.new_gc()
    pen.set_foreground(item.stroke or PAPER)
    pen.set_linewidth(item.weight if item.stroke else 0)
    pen.set_joinstyle("miter")
    if item.dashed:
        pen.set_dashes(0, (4 * item.weight, 3 * item.weight))
    path = Path([*item.points, item.points[0]] if item.closed else item.points, closed=item.closed)
    renderer.draw_path(pen, path, place, to_rgba(item.fill) if item.fill else None)
    pen.restore()
