"""Episodes made of sections alone."""

from collections.abc import Callable, Iterable
from pathlib import Path
from typing import Any

import pytest

from notesmith.publishing.episode import Episode, Media
from notesmith.records import (
    Notes,
    Observation,
    Reveal,
    Section,
    Sheet,
    SheetPreparation,
    SheetSample,
)

Described = dict[str, Any]
PLACES = 1000
"""Characters that a section of a case takes in its talk."""


def said(number: int, start: float | None, end: float | None) -> Described:
    """What every record needs."""
    where = {"start": start, "end": end, "quote": "x", "span": (number, number + 1)}
    return {"id": f"r{number}", "confidence": 1.0, "why": (), **where}


@pytest.fixture
def episode() -> Callable[..., Episode]:
    """Make an episode as a case describes it."""

    def make(case: Described) -> Episode:
        sections = list(_sections(case["sections"]))
        observations = tuple(_observations(case["sections"]))
        reveals = tuple(_reveal(case, told) for told in case.get("reveals", ()))
        notes = Notes(
            transcript="case.vtt", sheet=_sheet(case), sheet_drafted=False, samples=tuple(case["samples"]),
            observations=observations, comparisons=(), preferences=(), facts=(), reveals=reveals,
            sections=tuple(sections), repairs=(), ignored=(), warnings=(),
        )  # fmt: skip
        media = Media(Path("case.mp4"), case["length"] * 1000) if "length" in case else None
        return Episode(notes, media=media)

    return make


def _sheet(case: Described) -> Sheet:
    products = case.get("products", {})
    samples = tuple(SheetSample(id=name, product=products.get(name)) for name in case["samples"])
    preparations = tuple(SheetPreparation(id=name) for name in case.get("preparations", ()))
    return Sheet(samples=samples, preparations=preparations, blind=case.get("blind", False))


def _sections(described: Iterable[Described]) -> Iterable[Section]:
    for number, told in enumerate(described):
        record = said(number * PLACES, told["from"], told["to"]) | {"span": (number * PLACES, (number + 1) * PLACES)}
        yield Section(**record, kind=told["kind"], sample=told.get("sample"))


def _observations(described: Iterable[Described]) -> Iterable[Observation]:
    for number, told in enumerate(described):
        for place, seen in enumerate(told.get("seen", ()), start=1):
            sample, _, preparation = seen.partition("/")
            record = said(number * PLACES + place, told["from"], told["to"])
            yield Observation(
                **record, term="x", term_span=record["span"], concept=None, facet="flavour", presence="present",
                intensity=None, sample=sample, taster=None, preparation=preparation or None, voice="taster",
                after_reveal=False,
            )  # fmt: skip


def _reveal(case: Described, told: Described) -> Reveal:
    within = next(k for k, section in enumerate(case["sections"]) if section["from"] <= told["at"] < section["to"])
    record = said(within * PLACES + 500, told["at"], told["at"] + 1)
    return Reveal(**record, sample=told["sample"], product=told["product"])
