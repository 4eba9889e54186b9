"""Charts of an episode, without a browser: as SVG for a page, as PNG to post, in words, and as a table beside them.

A chart is laid out once on a sheet measured in pixels (`paper.py`), for one of two widths, then written by `svg.py` or
`png.py`. To add one: a module with functions that draw, describe and tabulate it, and a line in `CHARTS`.
"""

from collections.abc import Callable
from dataclasses import dataclass

from notesmith.publishing.charts import dots, presence, profile, timeline
from notesmith.publishing.charts.dots import describe_dot_plot, draw_dot_plot, tabulate_dot_plot
from notesmith.publishing.charts.frame import PAGE, PHONE
from notesmith.publishing.charts.paper import Paper
from notesmith.publishing.charts.png import png
from notesmith.publishing.charts.presence import (
    describe_presence_matrix,
    draw_presence_matrix,
    tabulate_presence_matrix,
)
from notesmith.publishing.charts.profile import describe_profile, draw_profile, tabulate_profile
from notesmith.publishing.charts.said import Table
from notesmith.publishing.charts.timeline import describe_timeline, draw_timeline, tabulate_timeline
from notesmith.publishing.episode import Episode

__all__ = [
    "CHARTS", "PAGE", "PHONE", "Chart", "Table",
    "describe_dot_plot", "describe_presence_matrix", "describe_profile", "describe_timeline",
    "draw_dot_plot", "draw_presence_matrix", "draw_profile", "draw_timeline",
    "tabulate_dot_plot", "tabulate_presence_matrix", "tabulate_profile", "tabulate_timeline",
]  # fmt: skip


@dataclass(frozen=True)
class Chart:
    """One kind of chart."""

    name: str
    """What files are called after it: small letters joined by hyphens."""
    title: str
    says: str
    """What it is, on part of a line."""
    lay_out: Callable[[Episode, int], Paper | None]
    """Draws it on a sheet so many pixels wide; None where there is nothing to show."""
    draw: Callable[[Episode, int], str | None]
    """The same as SVG, to stand in a page: it holds no id and nothing that runs."""
    describe: Callable[[Episode], str]
    """Says in words what it shows."""
    tabulate: Callable[[Episode], Table]
    """Gives the table to stand beside it."""

    def png(self, episode: Episode, width: int = PAGE) -> bytes | None:
        """The chart as PNG, with two dots to each of so many pixels; None where there is nothing to show."""
        paper = episode.once(self.lay_out, width)
        return png(paper) if paper else None


CHARTS = (
    Chart("dot-plot", dots.NAME, "a dot plot of intensity by term and sample",
          dots.dot_plot, draw_dot_plot, describe_dot_plot, tabulate_dot_plot),
    Chart("profile", profile.NAME, "a profile with a spoke for each attribute",
          profile.profile_plot, draw_profile, describe_profile, tabulate_profile),
    Chart("timeline", timeline.NAME, "a timeline of the recording",
          timeline.timeline, draw_timeline, describe_timeline, tabulate_timeline),
    Chart("presence", presence.NAME, "a matrix of terms found and denied",
          presence.presence_matrix, draw_presence_matrix, describe_presence_matrix, tabulate_presence_matrix),
)  # fmt: skip
"""The charts, the default one first."""
