"""Published ways of preparing what is tasted, each with its source."""

import tomllib
from collections.abc import Mapping
from functools import cache
from pathlib import Path
from types import MappingProxyType

from pydantic import Field

from notesmith.records import Record


class Method(Record):
    """One published way: how much is weighed and heated, for how long, in what."""

    id: str = Field(description="The name a plan asks for it by.")
    name: str = Field(description="What it is.")
    source: str = Field(description="Where it is published.")
    seen: bool = Field(True, description="Whether the figures were seen in a text of the source; else from memory.")
    dose: float | None = Field(None, description="Amount of the product in grams.")
    tolerance: float | None = Field(None, description="By how many grams the dose may be off.")
    water: float | None = Field(None, description="Amount of water in millilitres.")
    pour: float | None = Field(None, description="Amount poured of a drink as it is, in millilitres.")
    temperature: float | None = Field(None, description="Temperature in degrees Celsius.")
    time: float | None = Field(None, description="Time in seconds.")
    infusions: tuple[float, ...] = Field((), description="Seconds of each infusion, where there are several.")
    vessel: str = Field("", description="What it is prepared in.")
    pots: int | None = Field(None, description="How many are made of each sample, where the method says so.")


@cache
def every_method() -> Mapping[str, Method]:
    """All methods by name, as `methods.toml` lists them.

    >>> method = every_method()["iso-3103-large"]
    >>> method.dose, method.water, method.temperature, method.time
    (5.6, 285.0, 100.0, 360.0)
    """
    data = tomllib.loads(Path(__file__).with_name("methods.toml").read_text("utf-8"))
    return MappingProxyType({entry["id"]: Method.model_validate(entry) for entry in data["methods"]})
