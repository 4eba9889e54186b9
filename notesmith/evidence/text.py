"""Results as text for a terminal or a file."""

import json
import textwrap
from collections.abc import Sequence

from notesmith.evidence.results import Result
from notesmith.publishing.plain import one_line

PIPE_WIDTH = 100


def as_json(results: Sequence[Result]) -> str:
    """The same for other programs."""
    return json.dumps([result.model_dump() for result in results], ensure_ascii=False, indent=2) + "\n"


def render(results: Sequence[Result], width: int) -> str:
    """Each result under its title, its figures first and then what may be claimed."""
    return "\n".join(_block(result, width) for result in results)


def _block(result: Result, width: int) -> str:
    lines = [one_line(result.title), *(f"  {one_line(figure)}" for figure in result.figures)]
    claim = textwrap.wrap(one_line(result.claim), max(40, width - 2), break_long_words=False)
    return "\n".join((*lines, *(f"  {line}" for line in claim), ""))
