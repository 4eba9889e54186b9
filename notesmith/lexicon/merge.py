"""Laying the domains over one another: ours by rank, then the user's on top."""

from collections.abc import Iterable, Mapping
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


def derived(layers: Layers) -> dict[Key, Label]:
    """The inflections of every listed label, save those that are listed themselves or were taken away."""
    found: dict[Key, Label] = {}
    for label in layers.labels.values():
        for text in inflections(label.text, label.form):
            key = pieces(text)
            if key not in layers.labels and key not in found and key not in layers.removed:
                found[key] = Label(text, label.concept, label.kind, label.form, label.guarded, True)
    return found


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
        if wrong := wrong_in(row) or _astray(row, layers.concepts):
            raise LexiconError(wrong, where=domain.place(row.line))
        key = pieces(row.label)
        table = layers.misheard if row.kind == "misheard" else layers.labels
        if row.kind == "removed":
            _remove(layers, key)
        elif replace or key not in table:
            table[key] = label_of(row)


def _astray(row: Row, concepts: Mapping[str, Concept]) -> str | None:
    if row.concept in concepts:
        return None
    return f"label {row.label!r} is of concept {row.concept!r}, which is defined nowhere"


def _remove(layers: Layers, key: Key) -> None:
    layers.removed.add(key)
    layers.labels.pop(key, None)
    layers.misheard.pop(key, None)
