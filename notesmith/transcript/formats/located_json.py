"""JSON whose strings know where they stand in the source, which the standard library's reader does not tell."""

import json
import re
from collections.abc import Iterator
from typing import Any

from notesmith.errors import CaptionError
from notesmith.transcript.passages import Piece

_STRING = re.compile(r'"((?:[^"\\]|\\.)*)"', re.DOTALL)
_HALF_PAIR = re.compile("[\ud800-\udfff]")
_SURROGATES = r"\\u[dD][89abAB][0-9a-fA-F]{2}\\u[dD][c-fC-F][0-9a-fA-F]{2}"
_ESCAPE = re.compile(rf"{_SURROGATES}|\\u[0-9a-fA-F]{{4}}|\\.|[^\\]+", re.DOTALL)


_MOST = 4_000_000


class Located(str):
    """A string of a JSON text, with the span of its raw characters between the quotes."""

    start: int
    end: int

    @classmethod
    def at(cls, text: str, start: int, end: int) -> "Located":
        """Make the string that stands at a span of the source."""
        located = cls(text)
        located.start, located.end = start, end
        return located


def load(source: str) -> Any:
    """Parse JSON into plain values whose strings (keys aside) are Located.

    Raises CaptionError for broken or truncated JSON, NaN, a key given twice, and for nesting or
    lists without end.
    """
    if source.count("{") + source.count("[") > _MOST:
        raise CaptionError(f"JSON of more than {_MOST:,} objects and lists", mend="split the recording")
    try:
        value = json.loads(source, parse_constant=_refuse_constant, object_pairs_hook=_unique)
        return _locate(value, _STRING.finditer(source))
    except json.JSONDecodeError as error:
        where, what = f"line {error.lineno}", f"broken or truncated JSON ({error.msg.lower()})"
        raise CaptionError(what, where=where, mend="export the captions again") from None
    except RecursionError:
        raise CaptionError("JSON nested too deep", mend="export the captions again") from None
    except ValueError as error:
        raise CaptionError(f"JSON that cannot be read ({error})", mend="export the captions again") from None


def pieces_of(source: str, string: str) -> Iterator[Piece]:
    """The pieces of a Located string, each escape a piece of its own; nothing for any other string."""
    if not isinstance(string, Located):
        return
    if "\\" not in source[string.start : string.end]:
        yield Piece(str(string), string.start, string.end)
        return
    for part in _ESCAPE.finditer(source, string.start, string.end):
        raw = part.group()
        yield Piece(_whole(json.loads(f'"{raw}"')) if raw.startswith("\\") else raw, *part.span())


def _locate(value: Any, strings: Iterator[re.Match[str]]) -> Any:
    """Pair the strings of the parsed value with those of the source: both come in document order."""
    if isinstance(value, dict):
        located = {}
        for key, item in value.items():
            next(strings)
            located[key] = _locate(item, strings)
        return located
    if isinstance(value, list):
        return [_locate(item, strings) for item in value]
    return Located.at(_whole(value), *next(strings).span(1)) if isinstance(value, str) else value


def _whole(text: str) -> str:
    """Half of a surrogate pair is no character and could not be written again."""
    return text if text.isascii() else _HALF_PAIR.sub("\ufffd", text)


def _unique(pairs: list[tuple[str, Any]]) -> dict[str, Any]:
    found = dict(pairs)
    if len(found) < len(pairs):
        keys = [key for key, _value in pairs]
        twice = next(key for key in keys if keys.count(key) > 1)
        raise CaptionError(f"the key {twice!r} is given twice in one object", mend="keep one of the two")
    return found


def _refuse_constant(name: str) -> Any:
    raise CaptionError(f"{name} is no time", mend="export the captions again")
