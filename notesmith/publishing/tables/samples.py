"""The wide table: one row for each sample, preparation and taster, a few columns for each term of each facet."""

from collections.abc import Iterable, Iterator
from typing import get_args

from notesmith.publishing.episode import Episode
from notesmith.publishing.tables.model import Column, Table, Value
from notesmith.records import Facet, Observation

CUP = (
    Column("transcript", "text", "Name of the caption file."),
    Column("sample", "text", "The sample."),
    Column("product", "text", "What it is, where that was made known."),
    Column("preparation", "text", "How it was prepared."),
    Column("taster", "text", "Who perceived it."),
)
Cup = tuple[str, str | None, str | None]
Term = tuple[Facet, str]


def samples(episode: Episode) -> Table:
    """What the tasters themselves perceived; words of others and of other samples stand in the long table only.

    A term said several times of one cup has as many values in each of its three columns, in the order of time.
    """
    said: dict[tuple[Cup, Term], list[Observation]] = {}
    for seen in _own(episode):
        said.setdefault((_cup(seen), _term(seen)), []).append(seen)
    terms = sorted(dict.fromkeys(term for _, term in said), key=lambda term: get_args(Facet).index(term[0]))
    cups = _cups(episode, dict.fromkeys(cup for cup, _ in said))
    rows = (
        (*_named(episode, cup), *(value for term in terms for value in _values(said.get((cup, term), ()))))
        for cup in cups
    )
    return Table((*CUP, *(column for term in terms for column in _columns(term))), tuple(rows))


def _own(episode: Episode) -> list[Observation]:
    return [seen for seen in episode.notes.observations if seen.voice == "taster" and seen.sample is not None]


def _cup(seen: Observation) -> Cup:
    return seen.sample or "", seen.preparation, seen.taster


def _term(seen: Observation) -> Term:
    return seen.facet, seen.concept or seen.term.casefold()


def _cups(episode: Episode, said: Iterable[Cup]) -> list[Cup]:
    """The cups in the sheet's order of samples; a sample of which nothing was said has a row all the same."""
    known = list(said)
    spoken = {sample for sample, _, _ in known}
    known += [(sample, None, None) for sample in episode.notes.samples if sample not in spoken]
    order = {sample: place for place, sample in enumerate(episode.notes.samples)}
    return sorted(known, key=lambda cup: order.get(cup[0], len(order)))


def _named(episode: Episode, cup: Cup) -> tuple[Value, ...]:
    sample, preparation, taster = cup
    product = episode.product(sample) if episode.is_known(sample) else None
    return episode.notes.transcript, sample, product, preparation, taster


def _columns(term: Term) -> Iterator[Column]:
    name = ".".join(term)
    yield Column(f"{name}.presence", "texts", "Present, absent or uncertain.")
    yield Column(f"{name}.intensity", "texts", "Low, high, or nothing where unmarked.")
    yield Column(f"{name}.start", "numbers", "When it was said, in seconds from the start of the recording.")


def _values(records: Iterable[Observation]) -> tuple[Value, Value, Value]:
    seen = tuple(records)
    if not seen:
        return None, None, None
    return tuple(at.presence for at in seen), tuple(at.intensity for at in seen), tuple(at.start for at in seen)
