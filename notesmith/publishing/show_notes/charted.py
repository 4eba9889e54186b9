"""The charts of the page, each in words and as a table beside it."""

from notesmith.publishing import charts
from notesmith.publishing.show_notes.lines import Block, Chart
from notesmith.publishing.show_notes.story import Story


def charted(story: Story) -> Block | None:
    """Every chart that has something to show; drawn from what the show notes may tell."""
    drawn = [(chart, chart.draw(story.episode, charts.PAGE)) for chart in charts.CHARTS]
    shown = tuple(_chart(story, chart, wide) for chart, wide in drawn if wide)
    return Block("charts", "Charts", charts=shown, rank=3) if shown else None


def _chart(story: Story, chart: charts.Chart, wide: str) -> Chart:
    narrow = chart.draw(story.episode, charts.PHONE) or wide
    return Chart(chart.title, wide, narrow, chart.describe(story.episode), chart.tabulate(story.episode))
