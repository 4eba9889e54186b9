"""Notes as JSON: everything they hold, in the form that the schema describes."""

import json

from notesmith.records import Notes


def render(notes: Notes) -> str:
    """Write the notes as JSON, the same bytes for the same notes."""
    return notes.model_dump_json(indent=1) + "\n"


def schema() -> str:
    """The JSON Schema (draft 2020-12) of what `render` writes."""
    described = Notes.model_json_schema(mode="serialization")
    return json.dumps({"$schema": "https://json-schema.org/draft/2020-12/schema", **described}, indent=1) + "\n"
