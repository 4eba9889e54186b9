"""From what a reviewer pressed to the edits that are written down."""

from collections.abc import Callable, Mapping
from typing import Any

from notesmith.errors import NotesmithError
from notesmith.records import Comparison, Observation, Repair
from notesmith.review.corrections import stamp
from notesmith.review.edits import Alias, Change, Confirm, Edit, Kind, Mend, Move, Replace, Said, Teach, Value
from notesmith.review.fields import Shown, asked_of
from notesmith.review.saying import KINDS, drafted, said, words_at
from notesmith.review.sitting import State
from notesmith.review.words import concept_of, first_guess

Form = Mapping[str, str]


class WishError(NotesmithError):
    """What was asked for cannot be done to these notes."""


def edit_of(state: State, form: Form) -> Edit:
    """The edit that a form asks for.

    Raises:
        WishError: it asks for what there is not.
    """
    ways: dict[str, Callable[[State, Form], Edit]] = {
        "change": _change, "confirm": _confirm, "delete": _delete, "also": _also, "split": _split, "join": _join,
        "add": _add, "term": _term, "turn": _turn, "move": _move, "mend": _mend, "alias": _alias, "teach": _teach,
    }  # fmt: skip
    way = ways.get(form.get("do", ""))
    if way is None:
        raise WishError("nothing of that name can be done")
    try:
        return way(state, form)
    except (ValueError, IndexError) as error:
        raise WishError("what was sent cannot be understood") from error


def chosen(state: State, form: Form) -> tuple[int, int]:
    """The characters of the talk that a form is about.

    Raises:
        WishError: they are none of this talk.
    """
    start, end = _number(form, "from"), _number(form, "to")
    words = state.talk.text[start:end] if 0 <= start < end <= len(state.talk.text) else ""
    if not words.strip():
        raise WishError("those words do not stand in the talk")
    return start + len(words) - len(words.lstrip()), end - len(words) + len(words.rstrip())


def _number(form: Form, name: str) -> int:
    digits = form.get(name, "")
    if not digits.isdecimal() or len(digits) > 9:
        raise WishError("what was sent cannot be understood")
    return int(digits)


def _record(state: State, form: Form, name: str = "id") -> Shown:
    record = state.by_id.get(form.get(name, ""))
    if record is None:
        raise WishError("that note is no longer there: it was changed on another page")
    return record


def _said(state: State, record: Shown) -> Said:
    return said(state.notes, state.talk, record)


def _change(state: State, form: Form) -> Edit:
    record = _record(state, form)
    asked = {one.field: one for one in asked_of(record, state.notes.sheet)}
    one = asked.get(form.get("field", ""))
    if one is None:
        raise WishError("a note of this kind says nothing of the sort")
    value = _toggled(one.value, form["value"]) if one.several else _value(one.field, form["value"])
    return Change(**stamp(), record=_said(state, record), set={one.field: value})


def _toggled(held: Any, sample: str) -> Value:
    return tuple(other for other in held if other != sample) if sample in held else (*held, sample)


def _value(field: str, text: str) -> Value:
    text = text.strip()
    if field == "concept":
        return concept_of(text) if text else None
    if field == "value":
        return _plain_number(text)
    if not text and field in ("attribute", "product", "meant", "facet", "presence", "voice", "kind", "relation"):
        raise WishError("something has to stand there")
    return text or None


def _plain_number(text: str) -> Value:
    for kind in (int, float):
        try:
            return kind(text)
        except ValueError:
            continue
    return text


def _confirm(state: State, form: Form) -> Edit:
    return Confirm(**stamp(), record=_said(state, _record(state, form)))


def _turn(state: State, form: Form) -> Edit:
    """What has more has less, and the other way round."""
    record = _record(state, form)
    if not isinstance(record, Comparison):
        raise WishError("only a comparison can be turned round")
    return Change(**stamp(), record=_said(state, record), set={"more": record.less, "less": record.more})


def _delete(state: State, form: Form) -> Edit:
    return Replace(**stamp(), do="delete", records=(_said(state, _record(state, form)),))


def _also(state: State, form: Form) -> Edit:
    """The same of another sample too: one record becomes two."""
    kept = _said(state, _record(state, form))
    other = kept.model_copy(update={"id": "", "beside": (), "says": {**kept.says, "sample": form["value"]}})
    return Replace(**stamp(), do="add", by=(other,))


def _observation(state: State, form: Form, name: str = "id") -> Observation:
    record = _record(state, form, name)
    if not isinstance(record, Observation):
        raise WishError("only what was perceived has a term")
    return record


def _anew(state: State, record: Observation, term_span: tuple[int, int], **says: Value) -> Said:
    """The observation with another term of the same talk, and the words that carry both."""
    span = min(record.span[0], term_span[0]), max(record.span[1], term_span[1])
    kept = {**_said(state, record).says, "concept": concept_of(state.talk.text[slice(*term_span)], strict=False)}
    return drafted(state.talk, "observation", span, kept | says, term_span=term_span)


def _split(state: State, form: Form) -> Edit:
    record = _observation(state, form)
    start, end = record.term_span
    place = start + _number(form, "value")
    if not start < place < end:
        raise WishError("the term cannot be cut there")
    left = state.talk.text[start:place].rstrip()
    parts = (start, start + len(left)), (place, end)
    by = tuple(_anew(state, record, part) for part in parts)
    return Replace(**stamp(), do="split", records=(_said(state, record),), by=by)


def _join(state: State, form: Form) -> Edit:
    one, other = _observation(state, form), _observation(state, form, "value")
    term = min(one.term_span[0], other.term_span[0]), max(one.term_span[1], other.term_span[1])
    return Replace(
        **stamp(), do="join", records=(_said(state, one), _said(state, other)), by=(_anew(state, one, term),)
    )


def _term(state: State, form: Form) -> Edit:
    """The observation is of the chosen words instead."""
    record = _observation(state, form)
    return Replace(
        **stamp(), do="join", records=(_said(state, record),), by=(_anew(state, record, chosen(state, form)),)
    )


def _add(state: State, form: Form) -> Edit:
    kind: Kind = form["kind"]  # type: ignore[assignment]  # looked up in the next line
    if kind not in KINDS:
        raise WishError("there is no such kind of note")
    span = chosen(state, form)
    says, term = first_guess(state, kind, span)
    return Replace(**stamp(), do="add", by=(drafted(state.talk, kind, span, says, term_span=term),))


def _move(state: State, form: Form) -> Edit:
    start, end = chosen(state, form)
    inside = [word for word in state.talk.words if start <= word.start < end]
    first, last = inside[0], inside[-1]
    return Move(
        **stamp(),
        first=words_at(state.talk, start, min(first.end, end)),
        last=words_at(state.talk, last.start, min(last.end, end)),
        sample=form["value"] or None,
    )


def _mend(state: State, form: Form) -> Edit:
    if "from" in form:
        span, meant = chosen(state, form), form["meant"].strip()
        if not meant:
            raise WishError("write what was meant")
        return Mend(**stamp(), heard=state.talk.text[slice(*span)], meant=meant, words=words_at(state.talk, *span))
    record = _record(state, form)
    if not isinstance(record, Repair):
        raise WishError("only a repair can be made everywhere")
    return Mend(**stamp(), heard=record.heard, meant=record.meant, words=words_at(state.talk, *record.span))


def _alias(_: State, form: Form) -> Edit:
    return Alias(**stamp(), of=form["of"], alias=form["alias"].strip())


def _teach(_: State, form: Form) -> Edit:
    return Teach(
        **stamp(), label=form["label"].strip(), concept=concept_of(form["concept"]) or "",
        misheard=form.get("misheard") == "on",
    )  # fmt: skip
