"""The cautions that the products call for: a footer for the reader; two lists for the author. Their words are data."""

import datetime as dt
import tomllib
from functools import cache
from importlib.resources import files
from typing import Any

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
    also: tuple[str, ...] = Field((), alias="with", description="Words of which one must stand there too.")
    text: str = Field(description="What the reader is told.")
    source: str = Field(description="Where that is from.")


class Listed(Closed):
    """Words by which passages are found for the author."""

    reminder: str = Field(description="What the author is reminded of.")
    source: str = Field(description="Where that is from.")
    within: int = Field(description="Most words between an act and what it acts on.")
    alone: tuple[str, ...] = Field(description="Words that suffice.")
    acts: tuple[str, ...] = Field(description="Acts.")
    on: tuple[str, ...] = Field(description="What they act on.")
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
    denials = frozenset(listed.denials)
    return Wanted(phrases(listed.alone), phrases(listed.acts), phrases(listed.on), listed.within, denials)


def called_for(episode: Episode) -> tuple[Caution, ...]:
    """The cautions that the products of the sheet, or those made known, call for."""
    text = _products(episode)
    return tuple(caution for caution in read_cautions().caution if caution.always or _calls(caution, text))


def _calls(caution: Caution, text: str) -> bool:
    rest = without(text, phrases(caution.unless))
    return holds(rest, phrases(caution.when)) and (not caution.also or holds(rest, phrases(caution.also)))


def _products(episode: Episode) -> str:
    """The words for what is tasted; never what it tastes of."""
    sheet, notes = episode.notes.sheet, episode.notes
    told: list[Any] = [sheet.category]
    told += [word for sample in sheet.samples for word in (sample.id, sample.product, sample.process)]
    told += [reveal.product for reveal in notes.reveals]
    told += [fact.value for fact in notes.facts if fact.kind == "process"]
    return " | ".join(str(word) for word in told if word)
