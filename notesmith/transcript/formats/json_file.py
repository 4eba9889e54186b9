"""JSON transcripts: told apart by their keys, never by the file's name."""

import re

from notesmith.errors import CaptionError
from notesmith.transcript.formats.json_shapes import SHAPES
from notesmith.transcript.formats.located_json import load
from notesmith.transcript.passages import Reading

_OPENING = re.compile(r'\s*(?:\{\s*(?:["}]|\Z)|\[\s*(?:[{\]]|\Z))')


def recognises(text: str) -> bool:
    """Whether the text opens as a JSON object or a list of objects."""
    return _OPENING.match(text) is not None


def read(text: str) -> Reading:
    """Read whichever shape the keys show. Raises CaptionError where they show none, or two."""
    document = load(text)
    shapes = [shape for shape in SHAPES if shape.fits(document)]
    if not shapes:
        raise CaptionError("JSON, but of no known transcript shape", mend="export WebVTT or SubRip instead")
    if len(shapes) > 1:
        readings = " or ".join(shape.name for shape in shapes)
        raise CaptionError(f"JSON that could be read as {readings}", mend="keep one of the two")
    return Reading(shapes[0].name, shapes[0].passages(text, document))
