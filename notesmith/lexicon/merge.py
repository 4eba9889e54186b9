"""Laying the domains over one another: ours by rank, then the user's on top."""

from collections.abc import Iterable, Iterator
from dataclasses import dataclass, field
from typing import Any

from notesmith.errors import LexiconError
from notesmith.lexicon.folders import Domain, Row, concept_of, label_of, wrong_in
from notesmith.lexicon.inflect import inflections
from notesmith.lexicon.model import Concept, Label
from notesmith.lexicon.words import pieces

Key = tuple[str, ...]


@dataclass
class Layers:
    """What the domains read so far say, all taken together."""

    concepts: dict[str, Concept] = field(default_factory=dict)
    labels: dict[Key, Label] = field(default_factory=dict)
    misheard: dict[Key, Label] = field(default_factory=dict)
    removed: set[Key] = field(default_factory=set)


def merged(ours: Iterable[Domain], users: Iterable[Domain]) -> Layers:
    """One lexicon out of many domains.

    Among ours the first to define a concept or claim a label keeps it; a user's domain, and a later one
    before an earlier, replaces the fields of a concept and moves or removes labels.
    Raises LexiconError for the first thing that does not fit.
    """
    layers = Layers()
    ours, users = list(ours), list(users)
    for domain in ours:
        _add_concepts(layers, domain, replace=False)
    for domain in users:
        _add_concepts(layers, domain, replace=True)
    for domain in ours:
        _add_labels(layers, domain, replace=False)
    for domain in users:
        _add_labels(layers, domain, replace=True)
    return layers


def derived(layers: Layers) -> Iterator[tuple[Key, Label]]:
    """The inflections of every listed label, save those that are listed themselves or were taken away."""
    for label in layers.labels.values():
        for text in inflections(label.text, label.form):
            key = pieces(text)
            if key not in layers.labels and key not in layers.removed:
                yield key, Label(text, label.concept, label.kind, label.form, label.guarded, True)


def _add_concepts(layers: Layers, domain: Domain, *, replace: bool) -> None:
    for concept_id, fields in domain.concepts.items():
        known = layers.concepts.get(concept_id)
        if known is None:
            layers.concepts[concept_id] = concept_of(concept_id, fields, domain)
        elif replace:
            before: dict[str, Any] = known.model_dump()
            layers.concepts[concept_id] = concept_of(concept_id, {**before, **fields}, domain)


def _add_labels(layers: Layers, domain: Domain, *, replace: bool) -> None:
    for row in domain.rows:
        if wrong := _misfit(layers, row):
            raise LexiconError(wrong, where=domain.place(row.line))
        key = pieces(row.label)
        if row.kind == "removed":
            _remove(layers, key)
        elif replace:
            _table(layers, row)[key] = label_of(row)
        else:
            _table(layers, row).setdefault(key, label_of(row))


def _misfit(layers: Layers, row: Row) -> str | None:
    if wrong := wrong_in(row):
        return wrong
    known = row.concept in layers.concepts
    return None if known else f"label {row.label!r} is of concept {row.concept!r}, which is defined nowhere"


def _table(layers: Layers, row: Row) -> dict[Key, Label]:
    return layers.misheard if row.kind == "misheard" else layers.labels


def _remove(layers: Layers, key: Key) -> None:
    layers.removed.add(key)
    layers.labels.pop(key, None)
    layers.misheard.pop(key, None)
