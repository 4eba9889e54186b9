"""What the lexicon holds: concepts, and the labels by which people call them."""

from typing import Literal, NamedTuple

from pydantic import BaseModel, ConfigDict, Field

from notesmith.records import Facet

Sort = Literal["descriptor", "vessel", "product", "cultivar", "origin", "process", "harvest", "grade", "practice"]
Kind = Literal["preferred", "synonym", "misheard", "removed"]
Form = Literal["noun", "adjective", "verb", "phrase", ""]


class Concept(BaseModel):
    """One thing that can be meant, whatever it is called."""

    model_config = ConfigDict(frozen=True, extra="forbid")

    id: str = Field(description="Its name inside the lexicon: lower-case words joined by hyphens.")
    broader: str | None = Field(None, description="The concept it is a kind of; null at the top.")
    sort: Sort = Field(description="A descriptor (something perceived) or another sort of trade word.")
    facets: tuple[Facet, ...] = Field((), description="The facets a descriptor can be said of, most usual first.")
    definition: str = Field(min_length=1, description="What it means, in one sentence.")
    source: str = Field(min_length=1, description="Id of the source that names it.")
    domain: str = Field(description="The folder it comes from.")


class Label(NamedTuple):
    """One word or phrase that stands for a concept; a plain tuple, for there are tens of thousands.

    `guarded` labels are everyday words with other senses: they count only where a perception is talked about.
    `derived` labels are listed nowhere: they are regular inflections of a listed one.
    """

    text: str
    concept: str
    kind: Kind
    form: Form
    guarded: bool
    derived: bool


class Hit(NamedTuple):
    """Where a label stands among the words matched: from word `start` up to, but not including, word `end`."""

    start: int
    end: int
    label: Label
