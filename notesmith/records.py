"""The published records: everything the notes of one recording may say.

Every time is in seconds from the start of the recording, or null where the captions carry no times.
Every `span` is a pair of character offsets into the talk, the recording's text as one string.
"""

from typing import Literal

from pydantic import BaseModel, ConfigDict, Field

Facet = Literal["appearance", "aroma", "flavour", "mouthfeel", "finish", "overall"]
Presence = Literal["present", "absent", "uncertain"]
Intensity = Literal["low", "high"]
Voice = Literal["taster", "quoted"]
Degree = Literal["low", "high"]
Balance = Literal["full", "partial"]
FactKind = Literal[
    "price", "net_weight", "dose", "water", "temperature", "time",
    "harvest", "origin", "cultivar", "process", "abv", "age",
]  # fmt: skip
SectionKind = Literal[
    "opening", "method", "appearance", "aroma", "tasting", "comparison",
    "verdict", "quoted", "reveal", "background", "sponsor", "closing",
]  # fmt: skip


class Record(BaseModel):
    """A closed, unchangeable record."""

    model_config = ConfigDict(frozen=True, extra="forbid")


class SheetSample(Record):
    """One thing that is tasted."""

    id: str = Field(description="What the sample is called while its identity is hidden: a letter, a number, a colour.")
    aliases: tuple[str, ...] = Field((), description="Other names it is called by on the recording.")
    product: str | None = Field(None, description="What it is, or null while that is sealed.")
    price: float | None = Field(None, ge=0, description="Price of one pack, in `currency`.")
    currency: str | None = Field(None, description="Currency of the price, as an ISO 4217 code.")
    net_weight: float | None = Field(None, gt=0, description="Net weight of one pack in grams.")
    harvest: str | None = Field(None, description="When it was picked or made.")
    origin: str | None = Field(None, description="Where it was grown or made.")
    cultivar: str | None = Field(None, description="Cultivar, grape variety or breed.")
    process: str | None = Field(None, description="How it was made.")
    description: str | None = Field(None, description="What its maker or seller says of it.")


class SheetPreparation(Record):
    """One way in which samples are prepared."""

    id: str = Field(description="Short name of the preparation.")
    aliases: tuple[str, ...] = Field((), description="Other names it is called by on the recording.")
    dose: float | None = Field(None, gt=0, description="Amount of the product in grams.")
    water: float | None = Field(None, gt=0, description="Amount of water or milk in millilitres.")
    temperature: float | None = Field(None, description="Temperature in degrees Celsius.")
    time: float | None = Field(None, gt=0, description="Time in seconds.")


class SheetServing(Record):
    """The order in which one taster is handed the samples."""

    taster: str = Field(description="Who tastes them.")
    preparation: str | None = Field(None, description="The preparation, where the sheet lists any.")
    order: tuple[str, ...] = Field(description="Ids of the samples, first to last.")


class Sheet(Record):
    """What was set up before recording."""

    title: str = Field("", description="What the session is called.")
    category: str = Field("", description="What kind of product is tasted.")
    samples: tuple[SheetSample, ...] = Field((), description="The samples of the session.")
    tasters: tuple[str, ...] = Field((), description="Who tastes.")
    preparations: tuple[SheetPreparation, ...] = Field((), description="The preparations, where there are several.")
    blind: bool = Field(False, description="Whether the tasters do not know which sample is which.")
    servings: tuple[SheetServing, ...] = Field((), description="Who is handed what in which order, if planned.")
    balance: Balance | None = Field(
        None,
        description="Whether each sample comes as often at each place and after each other one; null if unplanned.",
    )
    commitment: str | None = Field(None, description="Salted SHA-256 of the sealed key, by which its reveal is proved.")


class Why(Record):
    """What a judgement rests on."""

    rule: str = Field(description="Name of the rule or score that decided.")
    words: str = Field("", description="The words it rests on, verbatim; empty where it rests on other records.")


class Evidenced(Record):
    """What every record carries: where it was said and why it is believed."""

    id: str = Field(description="Identity of the record: the same for the same words on every run.")
    start: float | None = Field(description="Seconds: the start of the cue, or of the word where words are timed.")
    end: float | None = Field(description="Seconds: the end of the cue in which the words end.")
    quote: str = Field(description="The words, verbatim.")
    span: tuple[int, int] = Field(description="Where the quote stands in the talk, in characters.")
    confidence: float = Field(ge=0, le=1, description="How sure the listener is, from 0 to 1.")
    why: tuple[Why, ...] = Field(description="The rules or scores that decided, each with its words.")


class Observation(Evidenced):
    """One sensory term, said of one sample."""

    term: str = Field(description="The sensory word or phrase as spoken, without its modifiers.")
    term_span: tuple[int, int] = Field(description="Where the term stands in the talk, in characters.")
    concept: str | None = Field(description="The lexicon's concept it stands for; null for a word the lexicon lacks.")
    facet: Facet = Field(description="Which side of the sample is perceived.")
    presence: Presence = Field(description="Said to be there, not there, or unsure.")
    intensity: Intensity | None = Field(description="low, high, or null where unmarked.")
    sample: str | None = Field(description="The sample it is said of; null for none of this session.")
    taster: str | None = Field(description="Who perceived it.")
    preparation: str | None = Field(description="The preparation, where the sheet lists several.")
    voice: Voice = Field(description="The taster's own perception, or somebody else's words.")
    after_reveal: bool = Field(description="Whether it was said after the sample's identity was made known.")


class Comparison(Evidenced):
    """Two samples set beside each other on one property."""

    attribute: str = Field(description="The property, in its plain form.")
    more: str | None = Field(description="The sample that has more of it.")
    less: str | None = Field(description="The sample that has less of it.")
    samples: tuple[str, ...] = Field(description="The samples that are equal; empty otherwise.")
    relation: Literal["more", "equal"] = Field(description="Whether one has more, or both the same.")
    degree: Degree | None = Field(description="By a little, by a lot, or unmarked.")
    taster: str | None = Field(description="Who compared.")


class Preference(Evidenced):
    """Which sample is liked better, or a ranking."""

    preferred: str | None = Field(description="The sample liked best.")
    over: tuple[str, ...] = Field(description="The samples it is preferred to, best first.")
    scope: str = Field(description="`overall`, a facet, or a preparation.")
    degree: Degree | None = Field(description="By a little, by a lot, or unmarked.")
    taster: str | None = Field(description="Who prefers it.")


class Fact(Evidenced):
    """Something stated of a sample or a preparation that is no perception."""

    kind: FactKind = Field(description="What kind of fact.")
    value: float | int | str = Field(description="The number where it is one, a range as `9-10`, else the words meant.")
    unit: str | None = Field(description="The unit as spoken, in the singular.")
    sample: str | None = Field(description="The sample it is said of; null where it holds for all.")
    preparation: str | None = Field(description="The preparation it is said of.")


class Reveal(Evidenced):
    """Where the identity of a blind sample is first made known."""

    sample: str = Field(description="The sample whose identity is made known.")
    product: str = Field(description="What it turns out to be.")


class Section(Evidenced):
    """A stretch of the recording that a viewer would want a chapter for."""

    kind: SectionKind = Field(description="What the stretch is about.")
    sample: str | None = Field(description="The sample it is about, where it is about one.")


class Repair(Evidenced):
    """A trade word, a sample's name or a sensory term that the captions got wrong."""

    heard: str = Field(description="The words as the captions print them.")
    meant: str = Field(description="What was said.")


class Ignored(Evidenced):
    """Words that look like an observation and were left out."""

    term: str = Field(description="The words left out.")
    reason: str = Field(description="Why they are no observation.")


class Notes(Record):
    """All records of one recording, with their evidence."""

    transcript: str = Field(description="Name of the caption file.")
    sheet: Sheet = Field(description="The tasting sheet used, or the draft made from the talk.")
    sheet_drafted: bool = Field(description="Whether the sheet was drafted from the talk alone.")
    samples: tuple[str, ...] = Field(description="Ids of the samples.")
    observations: tuple[Observation, ...] = Field(description="What was perceived.")
    comparisons: tuple[Comparison, ...] = Field(description="What was set beside what.")
    preferences: tuple[Preference, ...] = Field(description="What was liked better; the verdict among them.")
    facts: tuple[Fact, ...] = Field(description="What was stated.")
    reveals: tuple[Reveal, ...] = Field(description="What the samples turned out to be.")
    sections: tuple[Section, ...] = Field(description="The stretches of the recording, in order.")
    repairs: tuple[Repair, ...] = Field(description="What the captions got wrong.")
    ignored: tuple[Ignored, ...] = Field(description="What was left out and why.")
    warnings: tuple[str, ...] = Field(description="What the reader of the captions had to guess.")
