"""The order of sensations: in what share of sips each dominates, from the start of a sip to its end."""

from collections.abc import Sequence
from dataclasses import dataclass
from math import isfinite

from notesmith.publishing.charts.paper import HEADING, SMALL, TEXT, Paper
from notesmith.publishing.charts.signs import FAINT, GRID, INK, sign

MOST = 8
TALL = 260.0
LEFT = 46.0
ROW = 20.0


@dataclass(frozen=True)
class Curve:
    """One sensation: its share of sips at even steps from 0, where sips begin, to 1, where they end."""

    name: str
    shares: Sequence[float]


def dominance_chart(
    curves: Sequence[Curve], title: str, sips: int, chance: float, significant: float, page: int = 880
) -> Paper | None:
    """Draw the curves that rise highest on a sheet that many pixels wide; None where there are none."""
    if not curves:
        return None
    highest = sorted(curves, key=lambda at: -max(at.shares))[:MOST]
    shown = [at for at in curves if at in highest]
    paper = Paper(page - 16, title, describe_dominance(shown, sips))
    paper.height = paper.paragraph(0, title, size=HEADING, bold=True) + 2 * TEXT
    _draw(paper, shown, chance, significant)
    notes = [
        f"Share of {sips} sips, laid upon each other from start to end.",
        "The lower dashed line: what chance gives.",
    ]
    notes += ["The upper one: what is more than chance at one time."] if significant <= 1 else []
    notes += [f"{MOST} of {len(curves)} sensations, those that rise highest."] if len(shown) < len(curves) else []
    for note in notes:
        paper.height = paper.note(paper.height, note)
    return paper


def describe_dominance(curves: Sequence[Curve], sips: int) -> str:
    """The chart in words, for those who cannot see it."""
    told = (f"{at.name} most at {_peak(at):.0%}, in {max(at.shares):.0%}" for at in curves)
    return f"Share of {sips} sips that each sensation dominates, over the sip: {'; '.join(told)}."


def _draw(paper: Paper, curves: Sequence[Curve], chance: float, significant: float) -> None:
    top, right = paper.height, paper.width - 18
    bottom = top + TALL

    def at(time: float, share: float) -> tuple[float, float]:
        return LEFT + time * (right - LEFT), bottom - share * TALL

    for step in range(5):
        paper.line((at(0, step / 4), at(1, step / 4)), GRID)
        paper.text(LEFT - 6, at(0, step / 4)[1] + 4, f"{step / 4:.0%}", LEFT, size=SMALL, anchor="end", colour=FAINT)
        paper.text(at(step / 4, 0)[0], bottom + 16, f"{step / 4:.0%}", 60, size=SMALL, anchor="middle", colour=FAINT)
    for share in (chance, significant):
        if isfinite(share):
            paper.line((at(0, share), at(1, share)), INK, 1.0, dashed=True)
    for number, curve in enumerate(curves):
        last = len(curve.shares) - 1
        paper.line([at(place / last, share) for place, share in enumerate(curve.shares)], sign(number).colour, 2.0)
        paper.mark(*at(_peak(curve), max(curve.shares)), sign(number), 5, tip=curve.name)
    paper.height = _names(paper, curves, bottom + 30)


def _names(paper: Paper, curves: Sequence[Curve], top: float) -> float:
    """The sensations with their signs, in the order of their peaks."""
    columns = max(1, int(paper.width // 200))
    room = paper.width / columns
    for number, curve in enumerate(curves):
        x, y = number % columns * room + 8, top + number // columns * ROW
        paper.mark(x, y, sign(number), 5)
        paper.text(x + 14, y + 4.5, curve.name, room - 26)
    return top + -(-len(curves) // columns) * ROW


def _peak(curve: Curve) -> float:
    """When a sensation dominates the most sips, from 0 to 1."""
    return list(curve.shares).index(max(curve.shares)) / (len(curve.shares) - 1)
