"""What a record may be asked: its fields, each with a key, a name, and the answers that there are."""

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Any, get_args

from notesmith.records import (
    Comparison,
    Degree,
    Evidenced,
    Facet,
    Fact,
    FactKind,
    Intensity,
    Observation,
    Preference,
    Presence,
    Repair,
    Reveal,
    Section,
    SectionKind,
    Sheet,
    Voice,
)
from notesmith.review.edits import Value

Shown = Observation | Comparison | Preference | Fact | Reveal | Section | Repair
"""The seven records that are shown and corrected; what was ignored is not."""

MOST_KEYS = 10


@dataclass(frozen=True)
class Answer:
    """One thing that a field can say."""

    value: Value
    name: str
    digit: str
    """The digit that chooses it; empty where there are more answers than digits."""
    holds: bool
    """Whether the field says so now."""


@dataclass(frozen=True)
class Asked:
    """One field of a record, put as a question with its answers; without answers it is written."""

    field: str
    key: str
    name: str
    value: Value
    answers: tuple[Answer, ...] = ()
    several: bool = False
    """Whether the field holds several at once, in the order they were chosen."""


@dataclass(frozen=True)
class _Field:
    field: str
    key: str
    name: str
    among: str = ""
    """Where its answers come from; empty for words that are written."""
    none: str = ""
    """What it is called that none of them holds; empty where one must."""


_AMONG: dict[str, tuple[Value, ...]] = {
    "facet": get_args(Facet), "presence": get_args(Presence), "intensity": get_args(Intensity),
    "voice": get_args(Voice), "degree": get_args(Degree), "fact": get_args(FactKind), "section": get_args(SectionKind),
    "relation": ("more", "equal"),
}  # fmt: skip
_NAMES: dict[Value, str] = {"low": "slight", "high": "strong"}
_SAMPLE = _Field("sample", "s", "Sample", "sample", "none of them")
_TASTER = _Field("taster", "t", "Taster", "taster", "nobody")
_PREPARATION = _Field("preparation", "b", "Prepared", "preparation", "not said")
_DEGREE = _Field("degree", "i", "By how much", "degree", "unmarked")
_FIELDS: dict[type[Evidenced], tuple[_Field, ...]] = {
    Observation: (
        _SAMPLE, _Field("presence", "p", "Presence", "presence"), _Field("facet", "f", "Facet", "facet"),
        _Field("intensity", "i", "Intensity", "intensity", "unmarked"), _TASTER, _PREPARATION,
        _Field("voice", "v", "Voice", "voice"), _Field("concept", "c", "Concept"),
    ),
    Comparison: (
        _Field("more", "s", "Has more", "sample", "not said"), _Field("less", "l", "Has less", "sample", "not said"),
        _Field("samples", "q", "Equal", "sample"), _Field("relation", "p", "Relation", "relation"), _DEGREE, _TASTER,
        _Field("attribute", "e", "Property"),
    ),
    Preference: (
        _Field("preferred", "s", "Liked best", "sample", "not said"), _Field("over", "l", "Before", "sample"),
        _Field("scope", "f", "In what", "scope"), _DEGREE, _TASTER,
    ),
    Fact: (
        _SAMPLE, _Field("kind", "f", "Kind", "fact"), _PREPARATION, _Field("value", "e", "Value"),
        _Field("unit", "c", "Unit"),
    ),
    Reveal: (_Field("sample", "s", "Sample", "sample"), _Field("product", "e", "Product")),
    Section: (_SAMPLE, _Field("kind", "f", "Kind", "section")),
    Repair: (_Field("meant", "e", "Meant"),),
}  # fmt: skip


def asked_of(record: Shown, sheet: Sheet) -> tuple[Asked, ...]:
    """The questions that a record answers; what can only be answered so is not put."""
    asked = (_asked(field, getattr(record, field.field), sheet) for field in _FIELDS[type(record)])
    return tuple(one for one in asked if len(one.answers) != 1 and not _goes_without_saying(one, sheet))


def _goes_without_saying(one: Asked, sheet: Sheet) -> bool:
    return one.field == "taster" and (one.value,) == sheet.tasters


def asks(kind: type[Evidenced]) -> tuple[str, ...]:
    """The fields of a kind of record that a reviewer may change."""
    return tuple(field.field for field in _FIELDS[kind])


def _asked(field: _Field, value: Any, sheet: Sheet) -> Asked:
    if not field.among:
        return Asked(field.field, field.key, field.name, value)
    several = isinstance(value, tuple)
    values = list(_among(field.among, sheet))
    held = list(value) if several else [value]
    values += [other for other in held if other is not None and other not in values]
    answers = [_answer(one, number, held) for number, one in enumerate(values, 1)]
    if field.none:
        answers.append(Answer(None, field.none, "0", value is None))
    return Asked(field.field, field.key, field.name, value, tuple(answers), several)


def _answer(value: Value, number: int, held: Sequence[Value]) -> Answer:
    place = f" ({held.index(value) + 1})" if value in held and len(held) > 1 else ""
    digit = str(number) if number < MOST_KEYS else ""
    return Answer(value, _NAMES.get(value, str(value)) + place, digit, value in held)


def _among(name: str, sheet: Sheet) -> tuple[Value, ...]:
    samples, preparations = (tuple(one.id for one in several) for several in (sheet.samples, sheet.preparations))
    of_sheet: dict[str, tuple[Value, ...]] = {
        "sample": samples, "taster": sheet.tasters, "preparation": preparations,
        "scope": ("overall", *_AMONG["facet"][:-1], *preparations),
    }  # fmt: skip
    return of_sheet.get(name) or _AMONG.get(name, ())
