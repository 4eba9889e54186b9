"""The notes while edits are made to them: records kept in the order of their words, found again and replaced."""

from bisect import bisect_left, insort
from collections.abc import Iterable, Mapping
from typing import Any

from notesmith.records import Evidenced, Ignored, Notes, Observation, Reveal
from notesmith.review.edits import Kind, Said, Value
from notesmith.review.finding import Span
from notesmith.review.saying import FIELDS, IDENTIFYING, because, evidence, identity_of, place_of
from notesmith.transcript import Talk

LONGEST = 1_000
"""Characters before a stretch in which a record that reaches into it may begin."""


class Desk:
    """The records of one recording, laid out for editing."""

    def __init__(self, notes: Notes, talk: Talk) -> None:
        self.notes, self.talk = notes, talk
        self.records: dict[Kind, list[Evidenced]] = {
            kind: sorted(getattr(notes, name), key=place_of) for kind, name in FIELDS.items()
        }
        self.ignored: list[Ignored] = list(notes.ignored)

    def within(self, kind: Kind, span: Span) -> list[Evidenced]:
        """The records of a kind whose telling words reach into a stretch, in order."""
        records, (start, end) = self.records[kind], span
        first = bisect_left(records, (start - LONGEST, 0), key=place_of)
        last = bisect_left(records, (end, 0), key=place_of)
        return [record for record in records[first:last] if place_of(record)[1] > start]

    def match(self, record: Said, place: Span) -> Evidenced | None:
        """The record that an edit was about, as these notes have it: of several of the same words the most alike.

        What was another record of these words already then is not it, though it may be the only one now. One that said
        just the same as this does not tell them apart.
        """
        others = [one for one in record.beside if not all(record.says.get(name) == one[name] for name in one)]
        found = [r for r in self.within(record.kind, place) if not _is_among(r, others)]
        return max(found, key=lambda r: _resemblance(r, record, place), default=None)

    def covered(self, record: Said, place: Span) -> list[Evidenced]:
        """The record that an edit took out, with others of the same that tell parts of its words only."""
        found = self.match(record, place)
        return [
            r for r in self.within(record.kind, place)
            if r is found or (found and identity_of(r) == identity_of(found) and _lies_within(r, place))
        ]  # fmt: skip

    def twin(self, record: Said, place: Span) -> Evidenced | None:
        """A record that already says the same thing of the same words as one that is to be added."""
        names = IDENTIFYING[record.kind]
        same = [r for r in self.within(record.kind, place) if all(getattr(r, n) == record.says.get(n) for n in names)]
        return max(same, key=lambda r: _resemblance(r, record, place), default=None)

    def put(self, kind: Kind, record: Evidenced) -> None:
        """Add a record where its words stand."""
        insort(self.records[kind], record, key=place_of)

    def take(self, kind: Kind, record: Evidenced) -> None:
        """Take a record out."""
        self.records[kind] = [other for other in self.records[kind] if other is not record]

    def alter(self, kind: Kind, record: Evidenced, edit: str, fields: Mapping[str, Any], *, sure: bool = True) -> None:
        """Change fields of a record, and say in it why. Raises ValueError where no such record can say that."""
        why = (*record.why, because(edit, self.talk.text[slice(*place_of(record))]))
        changed = {**dict(record), **fields, "why": why}
        new = type(record).model_validate(changed | {"confidence": 1.0} if sure else changed)
        self.check(new)
        self.take(kind, record)
        insort(self.records[kind], new, key=place_of)

    def ignore(self, kind: Kind, record: Evidenced, edit: str) -> None:
        """Take a record out and list it among what was left out, so that the notes tell what was done to them."""
        self.take(kind, record)
        words = self.talk.text[slice(*place_of(record))]
        basis = {name: getattr(record, name) for name in Evidenced.model_fields}
        why, reason = (because(edit, words),), f"{kind} deleted in review"
        left_out = {**basis, "id": f"ignored-{record.id}", "why": why, "confidence": 1.0, "term": words}
        self.ignored.append(Ignored.model_validate(left_out | {"reason": reason}))

    def lay_out_sections(self) -> None:
        """Let every section last until the next one begins, as they do in notes."""
        sections = self.records["section"]
        starts = [section.span[0] for section in sections[1:]]
        ends = [len(self.talk.text[:start].rstrip()) for start in starts] + [len(self.talk.text)]
        self.records["section"] = [
            section.model_copy(update=evidence(self.talk, (section.span[0], max(end, section.span[0] + 1))))
            for section, end in zip(sections, ends, strict=False)
        ]

    def result(self) -> Notes:
        """The notes as edited."""
        self._tell_revealed()
        records = {FIELDS[kind]: tuple(records) for kind, records in self.records.items()}
        return self.notes.model_copy(update={**records, "ignored": tuple(sorted(self.ignored, key=lambda i: i.span))})

    def _tell_revealed(self) -> None:
        """Observations are after the reveal where the one of their sample is now."""
        revealed = {r.sample: r.span[0] for r in reversed(self.records["reveal"]) if isinstance(r, Reveal)}
        self.records["observation"] = [
            _told_revealed(o, revealed) if isinstance(o, Observation) else o for o in self.records["observation"]
        ]

    def check(self, record: Evidenced) -> None:
        """Raise ValueError where the record names a sample or a preparation that the sheet has not."""
        fields = dict(record)
        named = [fields.get(name) for name in ("sample", "more", "less", "preferred")]
        named += [*fields.get("samples", ()), *fields.get("over", ())]
        for sample in named:
            if sample is not None and sample not in self.notes.samples:
                raise ValueError(f"the sheet has no sample {sample!r}")
        preparation = fields.get("preparation")
        if preparation is not None and preparation not in {p.id for p in self.notes.sheet.preparations}:
            raise ValueError(f"the sheet has no preparation {preparation!r}")


def _told_revealed(o: Observation, revealed: Mapping[str, int]) -> Observation:
    after = o.sample is not None and o.term_span[0] > revealed.get(o.sample, o.term_span[0])
    return o if after == o.after_reveal else o.model_copy(update={"after_reveal": after})


def _lies_within(record: Evidenced, place: Span) -> bool:
    start, end = place_of(record)
    return place[0] <= start and end <= place[1]


def _is_among(record: Evidenced, identities: Iterable[Mapping[str, Value]]) -> bool:
    return any(all(getattr(record, name) == value for name, value in one.items()) for one in identities)


def _resemblance(record: Evidenced, edited: Said, place: Span) -> tuple[bool, int, bool, int]:
    """How much a record is the one that was edited: what identifies it first, then how much of its words it shares."""
    start, end = place_of(record)
    names = IDENTIFYING[edited.kind]
    return (
        all(getattr(record, name) == edited.says.get(name) for name in names),
        min(end, place[1]) - max(start, place[0]),
        record.id == edited.id,
        sum(getattr(record, name, None) == value for name, value in edited.says.items()),
    )
