"""Facts stated, with the price of 100 g or 100 ml and of a serving where price, weight and dose are sure."""

from collections.abc import Iterator

from notesmith.publishing.show_notes.amounts import UNITS, Amounts, base, currency_of, known_unit, plural
from notesmith.publishing.show_notes.lines import Block, Line, Part, block, once
from notesmith.publishing.show_notes.story import Story
from notesmith.publishing.show_notes.tasted import AMOUNTS
from notesmith.records import Fact, SheetSample
from notesmith.sensory.value import unit_price

Sure = tuple[float, str, tuple[Fact, ...]]
"""An amount, its unit (a currency, `weight` or `volume`), and the facts that state it (none: the sheet)."""


def stated(story: Story) -> Block | None:
    """What was stated of each sample, then of all."""
    amounts = Amounts.of(story.episode.locale)
    lines = [Line(sample, once(_of_sample(story, sample, amounts))) for sample in story.notes.samples]
    rest = [fact for fact in story.notes.facts if fact.sample not in story.notes.samples]
    lines.append(Line("of no one sample", once(_fact(fact, amounts) for fact in rest if not _is_method(fact))))
    return block("stated", "Facts stated", lines, rank=2)


def _is_method(fact: Fact) -> bool:
    """Whether it stands among the preparations."""
    return fact.kind in AMOUNTS and fact.sample is None


def _of_sample(story: Story, sample_id: str, amounts: Amounts) -> Iterator[Part]:
    sample = story.episode.sample(sample_id) or SheetSample.model_validate({"id": sample_id})
    facts = [fact for fact in story.notes.facts if fact.sample == sample_id]
    yield from (_fact(fact, amounts, sample.currency) for fact in facts)
    price, weight = _price(sample, facts), _weight(sample, facts)
    if price and not price[2]:
        yield Part(_money(price[0], price[1], amounts), marks=("sheet", "a pack"))
    if price and weight:
        yield from _worth(story, price, weight, facts, amounts)


def _fact(fact: Fact, amounts: Amounts, currency: str | None = None) -> Part:
    marks = (fact.preparation,) if fact.preparation and fact.kind in AMOUNTS else ()
    return Part(f"{fact.kind.replace('_', ' ')} {amounts.spoken(fact, currency)}", (fact,), marks)


def _worth(story: Story, price: Sure, weight: Sure, facts: list[Fact], amounts: Amounts) -> Iterator[Part]:
    each = unit_price(price[0], weight[0])
    per = amounts.measure(100, "mass-gram" if weight[1] == "weight" else "volume-milliliter")
    proofs = (*price[2], *weight[2])
    yield _computed(f"{_money(each * 100, price[1], amounts)} for {per}", proofs)
    for way, dose in _doses(story, facts, weight[1]):
        text = f"{_money(each * dose[0], price[1], amounts)} a serving"
        yield _computed(text, (*proofs, *dose[2]), way)


def _computed(text: str, proofs: tuple[Fact, ...], way: str = "") -> Part:
    marks = (way, "" if proofs else "sheet", "computed")
    return Part(text, proofs, tuple(mark for mark in marks if mark))


def _price(sample: SheetSample, facts: list[Fact]) -> Sure | None:
    if sample.price is not None and sample.currency:
        return sample.price, sample.currency, ()
    said = [fact for fact in facts if fact.kind == "price"]
    sums = {(fact.value, fact.unit) for fact in said}
    if len(sums) != 1:
        return None
    value, unit = sums.pop()
    plain = unit and " " not in unit and isinstance(value, int | float)
    return (float(value), currency_of(unit, sample.currency) or unit or "", tuple(said)) if plain else None


def _weight(sample: SheetSample, facts: list[Fact]) -> Sure | None:
    if sample.net_weight is not None:
        return sample.net_weight, "weight", ()
    return _only([fact for fact in facts if fact.kind == "net_weight"])


def _doses(story: Story, facts: list[Fact], measures: str) -> Iterator[tuple[str, Sure]]:
    """The dose of every preparation, or the one said of the sample or of all."""
    for way in story.sheet.preparations:
        said = [f for f in story.notes.facts if f.kind == "dose" and f.preparation == way.id and f.sample is None]
        dose = (way.dose, "weight", ()) if way.dose else _only(said)
        if dose and dose[1] == measures:
            yield way.id, dose
    if not story.sheet.preparations:
        own = [fact for fact in facts if fact.kind == "dose"]
        dose = _only(own or [fact for fact in story.notes.facts if fact.kind == "dose" and fact.sample is None])
        if dose and dose[1] == measures:
            yield "", dose


def _only(said: list[Fact]) -> Sure | None:
    """The one amount of weight or volume that all the facts state."""
    found = {base(fact) for fact in said}
    amount = found.pop() if len(found) == 1 else None
    unit = known_unit(said[0].unit) if said else None
    if not amount or not unit or unit.measures == UNITS["second"].measures:
        return None
    return amount, unit.measures, tuple(said)


def _money(value: float, currency: str, amounts: Amounts) -> str:
    is_code = len(currency) == 3 and currency.isupper()
    return amounts.money(round(value, 2), currency) if is_code else f"{amounts.plain_sum(value)} {plural(currency)}"
