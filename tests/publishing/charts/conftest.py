"""Episodes that charts are drawn of."""

from collections.abc import Callable
from typing import Any

import pytest

from notesmith.publishing.episode import Episode
from notesmith.records import Notes, Observation, Sheet, SheetSample

Said = dict[str, Any]
Make = Callable[..., Episode]


def observation(number: int, said: Said) -> Observation:
    """An observation of which only what matters is given."""
    usual: Said = {
        "id": f"o{number}", "start": 10.0 * number, "end": 10.0 * number + 2, "quote": "…",
        "span": (number, number + 1),
        "confidence": 0.9, "why": (), "term": "plum", "term_span": (number, number + 1), "concept": None,
        "facet": "flavour", "presence": "present", "intensity": None, "sample": "A", "taster": None,
        "preparation": None, "voice": "taster", "after_reveal": False,
    }  # fmt: skip
    return Observation(**(usual | said))


@pytest.fixture
def episode_of(empty: Notes) -> Make:
    """Makes an episode of these observations, with samples A and B unless others are named."""

    def make(*said: Said, samples: tuple[str, ...] = ("A", "B"), **fields: Any) -> Episode:
        observations = tuple(observation(number, one) for number, one in enumerate(said, start=1))
        sheet = Sheet(samples=tuple(SheetSample(id=sample) for sample in samples))
        told = {"observations": observations, "samples": samples, "sheet": sheet} | fields
        return Episode(empty.model_copy(update=told))

    return make
