"""The charts as files to post: each as SVG and PNG, and all of them in words and tables beside them.

Like the show notes, they leave out what sounds like a health claim, unless it is kept on purpose.
"""

from collections.abc import Callable

from notesmith.publishing.arrange import title
from notesmith.publishing.charts import CHARTS, PAGE, Chart
from notesmith.publishing.episode import Episode
from notesmith.publishing.markdown import escaped, row
from notesmith.publishing.show_notes.story import Story


def svg_of(chart: Chart) -> Callable[[Episode], str | None]:
    """What draws that chart as SVG, as wide as a page."""
    return lambda episode: chart.draw(episode.once(Story.of).episode, PAGE)


def png_of(chart: Chart, width: int = PAGE) -> Callable[[Episode], bytes | None]:
    """What draws that chart as PNG, that many pixels wide, with two dots to each."""
    return lambda episode: chart.png(episode.once(Story.of).episode, width)


def in_words(episode: Episode) -> str | None:
    """Every chart in words and as a table, as Markdown, for those who cannot see it; None where there is none."""
    told = episode.once(Story.of).episode
    shown = [chart for chart in CHARTS if told.once(chart.lay_out, PAGE)]
    blocks = [f"# {escaped(title(told.notes))}", *(block for chart in shown for block in _blocks(chart, told))]
    return "\n\n".join(blocks) + "\n" if shown else None


def _blocks(chart: Chart, episode: Episode) -> tuple[str, str, str]:
    table = chart.tabulate(episode)
    head, *body = (row([escaped(cell) for cell in line]) for line in (table.columns, *table.rows))
    lines = "\n".join((head, row(["---"] * len(table.columns)), *body))
    return f"## {escaped(chart.title)}", escaped(chart.describe(episode)), lines
