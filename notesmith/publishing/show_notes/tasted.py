"""What was tasted, and how it was prepared."""

from collections.abc import Iterator

from notesmith.publishing.show_notes.amounts import UNITS, Amounts, base, known_unit
from notesmith.publishing.show_notes.lines import Block, Group, Line, Part, once
from notesmith.publishing.show_notes.story import Story
from notesmith.records import Fact, SheetPreparation
from notesmith.sensory.value import dose_per_100_ml

AMOUNTS = ("dose", "water", "temperature", "time")
SHEET = "sheet"


def tasted(story: Story) -> Block | None:
    """The samples, then each preparation with its dose, water, temperature, time and strength."""
    groups = (Group("Samples", tuple(_samples(story))), Group("Preparations", tuple(_preparations(story))))
    kept = tuple(group for group in groups if group.lines)
    return Block("tasted", "What was tasted, and how", kept, rank=1) if kept else None


def _samples(story: Story) -> Iterator[Line]:
    for sample_id in story.notes.samples:
        sample, reveal = story.episode.sample(sample_id), story.episode.reveal(sample_id)
        parts = []
        if reveal:
            parts.append(Part(reveal.product, (reveal,), ("made known",)))
        elif sample and sample.product and sample.product.casefold() != sample_id.casefold():
            parts.append(Part(sample.product, marks=(SHEET,)))
        told = (sample.origin, sample.cultivar, sample.process, sample.harvest) if sample else ()
        parts += [Part(text, marks=(SHEET,)) for text in told if text]
        yield Line(sample_id, tuple(parts) or (Part("not made known", marks=(SHEET,)),))


def _preparations(story: Story) -> Iterator[Line]:
    amounts = Amounts.of(story.episode.locale)
    for preparation in story.sheet.preparations:
        said = [fact for fact in story.notes.facts if fact.preparation == preparation.id and fact.sample is None]
        parts = once(_parts(preparation, said, amounts))
        if parts:
            yield Line(preparation.id, parts)
    said = [fact for fact in story.notes.facts if fact.preparation is None and fact.sample is None]
    parts = once(_said(fact, amounts) for fact in said if fact.kind in AMOUNTS)
    if parts:
        yield Line("said of all", parts)


def _parts(preparation: SheetPreparation, said: list[Fact], amounts: Amounts) -> Iterator[Part]:
    for kind in AMOUNTS:
        value = getattr(preparation, kind)
        facts = [fact for fact in said if fact.kind == kind]
        same = tuple(fact for fact in facts if value is not None and _amount(fact) == value)
        if value is not None:
            yield Part(_written(kind, value, amounts), same, () if same else (SHEET,))
        yield from (_said(fact, amounts) for fact in facts if fact not in same)
    yield from _strength(preparation, said, amounts)


def _strength(preparation: SheetPreparation, said: list[Fact], amounts: Amounts) -> Iterator[Part]:
    """Grams to 100 ml, of the sheet's amounts or of those said if only one was said of each."""
    dose, water = (_one(preparation, said, kind) for kind in ("dose", "water"))
    if dose and water and dose[0] >= 0 and water[0] > 0:
        proofs = (*dose[1], *water[1])
        text = amounts.strength(dose_per_100_ml(dose[0], water[0]))
        yield Part(text, proofs, ("computed",) if proofs else (SHEET, "computed"))


def _one(preparation: SheetPreparation, said: list[Fact], kind: str) -> tuple[float, tuple[Fact, ...]] | None:
    measures = {"dose": "gram", "water": "mil"}[kind]
    facts = [fact for fact in said if fact.kind == kind]
    value = getattr(preparation, kind)
    if value is not None:
        return value, tuple(fact for fact in facts if _amount(fact) == value)
    sure = [fact for fact in facts if _measures_as(fact, measures)]
    amount = {base(fact) for fact in sure}
    return (amount.pop() or 0.0, tuple(sure)) if len(amount) == 1 and len(sure) == len(facts) else None


def _measures_as(fact: Fact, unit: str) -> bool:
    known = known_unit(fact.unit)
    return known is not None and known.measures == UNITS[unit].measures


def _amount(fact: Fact) -> float | None:
    if fact.kind == "temperature" and isinstance(fact.value, int | float):
        return None if (fact.unit or "").casefold() == "fahrenheit" else float(fact.value)
    return base(fact)


def _said(fact: Fact, amounts: Amounts) -> Part:
    return Part(f"{fact.kind} {amounts.spoken(fact)}", (fact,))


def _written(kind: str, value: float, amounts: Amounts) -> str:
    if kind == "time":
        return amounts.duration(value)
    unit = {"dose": "mass-gram", "water": "volume-milliliter", "temperature": "temperature-celsius"}[kind]
    return amounts.measure(value, unit)
