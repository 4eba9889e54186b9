"""Files that people fill in: TOML or JSON, read into a record, and every fault told in one line."""

import json
import math
import tomllib
from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass
from pathlib import Path
from typing import Any, Generic, TypeVar

from pydantic import BaseModel, ValidationError
from rapidfuzz import process

from notesmith.errors import SheetError

Filled = TypeVar("Filled", bound=BaseModel)


@dataclass(frozen=True)
class Form(Generic[Filled]):
    """What such a file holds: a record, the tables in it, what it is called and what writes an empty one."""

    model: type[Filled]
    tables: Mapping[str, type[BaseModel]]
    called: str
    begun_with: str


def read_filled_in(path: Path, form: Form[Filled]) -> Filled:
    """Read the record from a TOML or JSON file.

    Raises:
        SheetError: it cannot be read, or holds what the form does not know.
    """
    data = _load(path, form)
    _refuse_unknown(data, path, form)
    _refuse_not_finite(data, path, form)
    return _validate(data, path, form)


def _load(path: Path, form: Form[Filled]) -> dict[str, Any]:
    try:
        data = _parser(path, form)(path.read_text("utf-8-sig"))
    except OSError as error:
        raise SheetError(f"cannot be read: {error.strerror}", where=str(path)) from error
    except UnicodeDecodeError as error:
        raise SheetError("is not UTF-8 text", where=str(path), mend="save it as UTF-8") from error
    except (ValueError, RecursionError) as error:
        raise SheetError(f"is no {path.suffix[1:].upper()}: {error}", where=str(path)) from error
    if not isinstance(data, dict):
        mend = f'begin with {{ "{next(iter(form.tables))}": [ … ] }}'
        raise SheetError("holds no fields", where=str(path), mend=mend)
    return data


def _parser(path: Path, form: Form[Filled]) -> Callable[[str], Any]:
    match path.suffix.lower():
        case ".toml":
            return tomllib.loads
        case ".json":
            return lambda text: json.loads(text, object_pairs_hook=_refuse_twice)
    raise SheetError("is neither .toml nor .json", where=str(path), mend=f"see `{form.begun_with}`")


def _refuse_twice(pairs: list[tuple[str, Any]]) -> dict[str, Any]:
    fields = dict(pairs)
    if len(fields) < len(pairs):
        twice = next(name for name in fields if sum(name == other for other, _ in pairs) > 1)
        raise ValueError(f"the field `{twice}` stands twice")
    return fields


def _tables(data: dict[str, Any], form: Form[Filled]) -> Iterator[tuple[str, type[BaseModel], dict[str, Any]]]:
    yield form.called, form.model, data
    for name, model in form.tables.items():
        items = data.get(name)
        for number, item in enumerate(items if isinstance(items, list) else [], start=1):
            if isinstance(item, dict):
                yield f"{name} {number}", model, item


def _refuse_unknown(data: dict[str, Any], path: Path, form: Form[Filled]) -> None:
    for place, model, fields in _tables(data, form):
        for name in fields:
            if name not in model.model_fields:
                nearest = process.extractOne(name, list(model.model_fields), score_cutoff=60)
                mend = f"did you mean `{nearest[0]}`?" if nearest else "its fields: " + ", ".join(model.model_fields)
                raise SheetError(f"{place}: unknown field `{name}`", where=str(path), mend=mend)


def _refuse_not_finite(data: dict[str, Any], path: Path, form: Form[Filled]) -> None:
    for place, _, fields in _tables(data, form):
        for name, value in fields.items():
            if isinstance(value, float) and not math.isfinite(value):
                raise SheetError(f"{place}: `{name}` is no number", where=str(path), mend="write one or leave it out")


def _validate(data: dict[str, Any], path: Path, form: Form[Filled]) -> Filled:
    try:
        # By way of JSON, where strict still takes an array for a tuple; TOML's dates become their text.
        return form.model.model_validate_json(json.dumps(data, default=str), strict=True)
    except ValidationError as error:
        first = error.errors(include_url=False)[0]
        place = " ".join(str(part + 1) if isinstance(part, int) else part for part in first["loc"])
        raise SheetError(f"{place}: {_complaint(first['type'], first['msg'])}", where=str(path)) from error


def _complaint(kind: str, message: str) -> str:
    plain = {
        "missing": "is missing",
        "string_type": 'must be text; put it between quotation marks, such as "1"',
        "tuple_type": 'must be a list, such as ["one name", "another"]',
        "float_type": "must be a number; write it without quotation marks",
        "int_type": "must be a whole number; write it without quotation marks",
        "bool_type": "must be true or false",
        "model_type": "must be a table of fields",
    }
    return plain.get(kind, message[:1].lower() + message[1:])
