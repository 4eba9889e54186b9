"""A chart as PNG, drawn by matplotlib without a screen or a browser."""

import io
import warnings
from typing import TYPE_CHECKING

from notesmith.publishing.charts.letters import families
from notesmith.publishing.charts.paper import Paper, Shape, Words
from notesmith.publishing.charts.signs import PAPER
from notesmith.publishing.charts.svg import MARGIN

if TYPE_CHECKING:
    from matplotlib.axes import Axes

SHARPNESS = 2
"""Dots to a pixel of the page, for screens that have so many."""


def png(paper: Paper) -> bytes:
    """Draw the sheet, the same bytes for the same sheet and version of matplotlib."""
    from matplotlib import rc_context
    from matplotlib.backends.backend_agg import FigureCanvasAgg
    from matplotlib.figure import Figure

    width, height = paper.width + 2 * MARGIN, paper.height + 2 * MARGIN
    # Letters as wide as they are measured.
    with rc_context({"text.hinting": "none", "text.usetex": False}), warnings.catch_warnings():
        # A sign that no font at hand holds is drawn as an empty box; the table beside the chart has it.
        warnings.simplefilter("ignore", UserWarning)
        figure = Figure(figsize=(width / 72, height / 72), dpi=72, facecolor=PAPER)
        axes = figure.add_axes((0, 0, 1, 1))
        axes.set(xlim=(-MARGIN, paper.width + MARGIN), ylim=(paper.height + MARGIN, -MARGIN))
        axes.axis("off")
        for order, item in enumerate(paper.drawn):
            if isinstance(item, Words):
                _words(axes, item, order)
            else:
                _shape(axes, item, order)
        written = io.BytesIO()
        FigureCanvasAgg(figure).print_figure(written, dpi=72 * SHARPNESS, format="png", metadata={"Software": None})
    return written.getvalue()


def _words(axes: "Axes", item: Words, order: int) -> None:
    anchor = {"start": "left", "middle": "center", "end": "right"}[item.anchor]
    axes.text(
        item.x, item.y, item.words, fontsize=item.size, ha=anchor, va="baseline", color=item.colour, zorder=order,
        weight="bold" if item.bold else "normal", family=families(item.words), parse_math=False,
        rotation=90 if item.upright else 0, rotation_mode="anchor",
    )  # fmt: skip


def _shape(axes: "Axes", item: Shape, order: int) -> None:
    from matplotlib.patches import PathPatch
    from matplotlib.path import Path

    axes.add_patch(
        PathPatch(
            Path([*item.points, item.points[0]] if item.closed else item.points, closed=item.closed),
            facecolor=item.fill or "none", edgecolor=item.stroke or "none", linewidth=item.weight,
            linestyle=(0, (4, 3)) if item.dashed else "solid", zorder=order,
        )
    )  # fmt: skip
