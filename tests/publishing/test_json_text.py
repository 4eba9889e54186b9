"""Notes as JSON, and the schema that promises their form."""

import json
from pathlib import Path

import jsonschema
import pytest

from notesmith.publishing.json_text import render, schema
from notesmith.records import Notes

COMMITTED = Path(__file__).parents[2] / "schema" / "notes.schema.json"


def test_the_committed_schema_is_the_records_own() -> None:
    """A change of the records is a change of schema/notes.schema.json: `notesmith schema --output … --force`."""
    assert schema() == COMMITTED.read_text("utf-8")


def test_written_notes_keep_the_schema(small: Notes, empty: Notes) -> None:
    """What is written validates, full or empty."""
    for notes in (small, empty):
        jsonschema.validate(json.loads(render(notes)), json.loads(schema()), jsonschema.Draft202012Validator)


def test_the_schema_refuses_an_unknown_field(small: Notes) -> None:
    """The records are closed."""
    with pytest.raises(jsonschema.ValidationError):
        jsonschema.validate({**json.loads(render(small)), "mood": "merry"}, json.loads(schema()))


def test_written_notes_read_back(small: Notes, cases: Path) -> None:
    """JSON loses nothing, and the same notes are the same bytes."""
    assert render(small) == (cases / "small.notes.json").read_text("utf-8")
    assert Notes.model_validate_json(render(small)) == small
