"""The cautions that the products call for: a footer for the reader; two lists for the author. Their words are data."""

import datetime as dt
import tomllib
from functools import cache
from importlib.resources import files

from pydantic import BaseModel, ConfigDict, Field

from notesmith.publishing.episode import Episode
from notesmith.publishing.show_notes.phrases import Wanted, holds, phrases, without


class Closed(BaseModel):
    """A closed, unchangeable record of cautions.toml."""

    model_config = ConfigDict(frozen=True, extra="forbid")


class Caution(Closed):
    """One caution, and the products that call for it."""

    id: str = Field(description="Its name.")
    always: bool = Field(False, description="Whether every product calls for it.")
    when: tuple[str, ...] = Field((), description="Words for products that call for it.")
    unless: tuple[str, ...] = Field((), description="Names that hold such a word and are no such product.")
    made: tuple[str, ...] = Field((), description="Words of which one must be said of how they are made.")
    text: str = Field(description="What the reader is told.")
    source: str = Field(description="Where that is from.")


class Pair(Closed):
    """Two lists of words, one of each to stand in one passage."""

    acts: tuple[str, ...] = Field(description="Acts.")
    on: tuple[str, ...] = Field(description="What they act on.")


class Listed(Closed):
    """Words by which passages are found for the author."""

    reminder: str = Field(description="What the author is reminded of.")
    source: str = Field(description="Where that is from.")
    within: int = Field(description="Most words between an act and what it acts on.")
    alone: tuple[str, ...] = Field(description="Words that suffice.")
    pair: tuple[Pair, ...] = Field(description="Words that count only near one another.")
    denials: tuple[str, ...] = Field((), description="Words that, shortly before, say that it is not so.")


class Cautions(Closed):
    """All of cautions.toml."""

    as_of: dt.date = Field(description="When they were last looked at.")
    defers: str = Field(description="That local rules hold.")
    caution: tuple[Caution, ...] = Field(description="The cautions, in order.")
    health: Listed = Field(description="What sounds like a health claim.")
    connection: Listed = Field(description="What suggests a connection to a seller.")


@cache
def read_cautions() -> Cautions:
    """The cautions as listed beside this file."""
    text = files("notesmith.publishing.show_notes").joinpath("cautions.toml").read_text(encoding="utf-8")
    return Cautions.model_validate(tomllib.loads(text))


@cache
def health_words() -> Wanted:
    """What sounds like a health claim."""
    return _wanted(read_cautions().health)


@cache
def connection_words() -> Wanted:
    """What suggests a connection to a seller."""
    return _wanted(read_cautions().connection)


def _wanted(listed: Listed) -> Wanted:
    pairs = tuple((phrases(pair.acts), phrases(pair.on)) for pair in listed.pair)
    return Wanted(phrases(listed.alone), pairs, listed.within, frozenset(listed.denials))


def called_for(episode: Episode) -> tuple[Caution, ...]:
    """The cautions that the products of the sheet, or those made known, call for."""
    products, making = _products(episode), _making(episode)
    listed = read_cautions().caution
    return tuple(caution for caution in listed if caution.always or _calls(caution, products, making))


def _calls(caution: Caution, products: str, making: str) -> bool:
    named = holds(without(products, phrases(caution.unless)), phrases(caution.when))
    return named and (not caution.made or holds(f"{products} | {making}", phrases(caution.made)))


def _products(episode: Episode) -> str:
    """The words for what is tasted; never what it tastes of."""
    sheet = episode.notes.sheet
    told = [sheet.category, *(word for sample in sheet.samples for word in (sample.id, sample.product))]
    told += [reveal.product for reveal in episode.notes.reveals]
    return " | ".join(word for word in told if word)


def _making(episode: Episode) -> str:
    """What is said of how it is made."""
    told = [sample.process for sample in episode.notes.sheet.samples]
    told += [str(fact.value) for fact in episode.notes.facts if fact.kind == "process"]
    return " | ".join(word for word in told if word)
