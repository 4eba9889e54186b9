"""The order of sensations drawn, a chart for each product."""

import re
from collections.abc import Sequence
from pathlib import Path

from notesmith.evidence.profile import sips
from notesmith.evidence.sessions import comparable
from notesmith.publishing.charts.dominance import Curve, dominance_chart
from notesmith.publishing.charts.svg import svg
from notesmith.publishing.files import make_folder, write_file
from notesmith.records import Notes
from notesmith.sensory.dominance import dominance

FEWEST = 2


def draw_curves(notes: Sequence[Notes], folder: Path, *, force: bool) -> list[Path]:
    """Draw the sensations of each product of which there are two sips or more; returns the files written."""
    make_folder(folder)
    written = []
    for number, (product, taken) in enumerate(sorted(sips(comparable(notes)).items()), start=1):
        if len(taken) < FEWEST:
            continue
        found = dominance(taken)
        curves = [Curve(name, [float(share) for share in shares]) for name, shares in found.curves.items()]
        paper = dominance_chart(
            curves, f"The order of sensations: {product}", found.sips, found.chance, found.significant
        )
        if paper:
            plain = re.sub(r"[^a-z0-9]+", "-", product.casefold()).strip("-")[:40]
            written.append(folder / f"{number:02}-{plain or 'sample'}.order.svg")
            write_file(written[-1], svg(paper), force=force)
    return written
