"""What all charts have alike: a title above, the samples' signs explained, notes below."""

from collections.abc import Iterable

from notesmith.publishing.arrange import title
from notesmith.publishing.charts.letters import width
from notesmith.publishing.charts.paper import HEADING, TEXT, Paper
from notesmith.publishing.charts.said import samples_of
from notesmith.publishing.charts.signs import FAINT, Sign, signs_for
from notesmith.publishing.episode import Episode

PAGE, PHONE = 880, 358
"""Widths in pixels: of a page's text, and of a telephone's screen of 390 pixels within its margins."""

MARK = 6.0
GAP = 22.0


def begin(episode: Episode, name: str, says: str, page: int) -> Paper:
    """A sheet that many pixels wide, with the chart's name and the episode's title on it."""
    paper = Paper(page - 16, f"{name}: {title(episode.notes)}", says)
    paper.height = paper.paragraph(0, name, size=HEADING, bold=True)
    paper.height = paper.paragraph(paper.height + 2, title(episode.notes), size=TEXT, colour=FAINT) + 8
    return paper


def signs_of(episode: Episode) -> dict[str, Sign]:
    """The sign of each sample: the same in every chart of an episode."""
    samples = samples_of(episode)
    return dict(zip(samples, signs_for(samples), strict=True))


def explain(paper: Paper, episode: Episode, shown: Iterable[str]) -> None:
    """Say below what is drawn so far which sign stands for which sample."""
    signs, left, top = signs_of(episode), 0.0, paper.height + TEXT
    for sample in shown:
        name = episode.name(sample)
        needs = min(GAP + width(name[:300], TEXT), paper.width)
        if left and left + needs > paper.width:
            left, top = 0.0, top + TEXT * 1.6
        paper.mark(left + MARK + 1, top - 4.5, signs[sample], MARK)
        paper.text(left + GAP, top, name, paper.width - GAP)
        left += needs + GAP
    paper.height = top + 12


def end(paper: Paper, notes: Iterable[str]) -> Paper:
    """Put the notes under the chart."""
    paper.height += 4
    for note in notes:
        paper.height = paper.note(paper.height, note)
    paper.height += 4
    return paper
