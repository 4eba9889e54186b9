"""The notes that all forms are tried on."""

from pathlib import Path

import pytest

from notesmith.records import Notes, Sheet

CASES = Path(__file__).parent.parent / "cases" / "notes"


@pytest.fixture
def cases() -> Path:
    """Where the notes and their expected forms lie."""
    return CASES


@pytest.fixture
def small() -> Notes:
    """Notes with one of every record."""
    return Notes.model_validate_json((CASES / "small.notes.json").read_text("utf-8"))


@pytest.fixture
def empty() -> Notes:
    """Notes that say nothing."""
    return Notes(
        transcript="none.vtt", sheet=Sheet(), sheet_drafted=True, samples=(), observations=(), comparisons=(),
        preferences=(), facts=(), reveals=(), sections=(), repairs=(), ignored=(), warnings=(),
    )  # fmt: skip
