"""How a record is told in few words: a line in the list of notes, and a tag at its words in the talk."""

from collections.abc import Sequence
from dataclasses import dataclass

from notesmith.clock import format_clock, seconds_to_ms
from notesmith.records import Comparison, Evidenced, Fact, Notes, Observation, Preference, Repair, Reveal, Section
from notesmith.review.fields import Shown
from notesmith.review.saying import FIELDS, place_of

SIGNS = {"present": "●", "absent": "○", "uncertain": "◐"}
"""Presence by shape; the words beside them say it too."""
PRESENCE = {"present": "", "absent": "no ", "uncertain": "perhaps "}
STRENGTH = {"low": "slight", "high": "strong", None: ""}
COMPARED, SECTIONS, REPAIRS, NOBODY = "Compared and preferred", "Sections", "Repairs", "Of no sample"

_HEADINGS: dict[type[Evidenced], str] = {
    Comparison: COMPARED, Preference: COMPARED, Section: SECTIONS, Repair: REPAIRS,
}  # fmt: skip


@dataclass(frozen=True)
class Line:
    """A record as it is listed."""

    id: str
    kind: str
    group: str
    """The heading that it stands under: a sample's id, or what the kind is called."""
    sign: str
    """A shape that tells its kind or presence; the text tells it too."""
    text: str
    detail: str
    time: str
    tag: str
    """What is written beside its words in the talk."""


def shown_records(notes: Notes) -> tuple[Shown, ...]:
    """All records that are shown, in the order of the talk."""
    found: list[Shown] = [record for name in FIELDS.values() for record in getattr(notes, name)]
    return tuple(sorted(found, key=lambda record: (place_of(record), record.id)))


def line_of(record: Shown, tasters: Sequence[str] = ()) -> Line:
    """The record as one line; who tastes alone need not be named in it."""
    sign, text, detail, tag = _told(record)
    alone = tasters if len(tasters) == 1 else ()
    told = " · ".join(one for one in detail if one and one not in alone)
    return Line(record.id, type(record).__name__.lower(), group_of(record), sign, text, told, clock(record.start), tag)


def group_of(record: Shown) -> str:
    """The heading that a record stands under."""
    fixed = _HEADINGS.get(type(record))
    return fixed or getattr(record, "sample", None) or NOBODY


def clock(seconds: float | None) -> str:
    """A time as people read it; empty without one.

    >>> clock(83.4), clock(None)
    ('1:23', '')
    """
    return "" if seconds is None else format_clock(seconds_to_ms(seconds))


Told = tuple[str, str, tuple[str, ...], str]


def _told(record: Evidenced) -> Told:  # noqa: PLR0911 - seven kinds, an answer each
    match record:
        case Observation():
            return _observation(record)
        case Comparison():
            return _comparison(record)
        case Preference():
            order = " > ".join([record.preferred or "?", *record.over])
            return "♥", f"liked: {order}", (record.scope, record.taster or ""), f"♥ {order}"
        case Fact():
            says = f"{record.value} {record.unit or ''}".strip()
            return "#", f"{record.kind.replace('_', ' ')}: {says}", ("fact",), f"# {says}"
        case Reveal():
            return "=", f"is {record.product}", ("reveal",), f"= {record.sample}"
        case Section():
            told = f"{record.kind} {record.sample or ''}".strip()
            return "§", told, (), ""
        case Repair():
            return "✎", f"{record.heard} → {record.meant}", (), f"✎ {record.meant}"
    raise TypeError(type(record).__name__)


def _observation(record: Observation) -> Told:
    sign = SIGNS[record.presence]
    detail = (
        record.facet, STRENGTH[record.intensity], record.preparation or "", record.taster or "",
        "quoted" if record.voice == "quoted" else "",
    )  # fmt: skip
    text = PRESENCE[record.presence] + record.term
    return sign, text, detail, f"{sign} {record.sample or '–'} {record.facet}"


def _comparison(record: Comparison) -> Told:
    equal = record.relation == "equal"
    pair = " = ".join(record.samples) if equal else f"{record.more or '?'} > {record.less or '?'}"
    return "⇄", f"{record.attribute}: {pair}", (record.degree or "", record.taster or ""), f"⇄ {pair}"


def groups_of(notes: Notes) -> tuple[str, ...]:
    """The headings of the list, in their order: the sheet's samples first."""
    ids = dict.fromkeys([*(sample.id for sample in notes.sheet.samples), *notes.samples])
    return (*ids, NOBODY, COMPARED, SECTIONS, REPAIRS)
