"""Every amount that states a fact: a price, a weight, a dose, water, a temperature, a time, a strength or an age."""

from collections import Counter
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace

from notesmith.listening.hearing import Hearing
from notesmith.listening.measures import Measure, measures_of
from notesmith.listening.pricing import bare_price, bare_weight, currency_of, is_price
from notesmith.listening.telling import Surroundings, tell
from notesmith.records import FactKind

ALCOHOL = frozenset(
    "wine beer cider perry spirit spirits whisky whiskey rum gin mezcal tequila sake brandy mead vermouth port "
    "sherry liqueur agave stout ale ales lager lagers vodka cognac drinks wines beers ciders saison".split()
)


@dataclass(frozen=True, slots=True)
class Amount:
    """An amount that states a fact: its words, kind, value and unit, and the rule that told."""

    start: int
    end: int
    kind: FactKind
    value: float | int | str
    unit: str | None
    rule: str
    score: float


def find_amounts(hearing: Hearing) -> list[Amount]:
    """Every amount of the talk that states a fact, in order."""
    norms = [w.norm for w in hearing.words]
    names = frozenset(i for m in hearing.mentions if m.kind in ("name", "ordinal") for i in range(m.start, m.end))
    measures = _joined_ranges(norms, [m for m in measures_of(norms) if m.unit or m.start not in names])
    alcoholic = not ALCOHOL.isdisjoint(hearing.sheet.category.lower().replace(",", " ").split())
    priced = list(_prices(norms, measures, names))
    taken = {a.start for a in priced}
    others = (Surroundings(norms, measures, k, alcoholic) for k, m in enumerate(measures) if m.start not in taken)
    return [*priced, *(a for around in others if (a := _told(around))), *_boiling(norms, measures)]


def _prices(norms: Sequence[str], measures: Sequence[Measure], names: frozenset[int]) -> Iterator[Amount]:
    """Prices, and the packs they buy where only a number is said."""
    currency, seen = currency_of(norms), Counter[str]()
    last = -100
    for k, m in enumerate(measures):
        if m.dimension == "money" and is_price(norms, measures, k, seen):
            seen[f"{m.value} {m.unit}"] += 1
            last = m.end
            yield Amount(m.start, m.end, "price", m.value, m.unit, "money", 0.8)
        elif m.dimension == "bare" and m.start - last <= 14 and bare_weight(norms, measures, k):
            yield Amount(m.start, m.end, "net_weight", m.number.plain, None, "a number beside a price", 0.6)
        elif m.dimension == "bare":
            price = bare_price(norms, measures, k, currency, names)
            if price is not None:
                last = m.end
                yield Amount(m.start, m.end, "price", price, currency or None, "a number said as a price", 0.6)


def _boiling(norms: Sequence[str], measures: Sequence[Measure]) -> Iterator[Amount]:
    """`boiling` as a temperature, beside a dose, a volume or a time."""
    for i, norm in enumerate(norms):
        if norm == "boiling" and (norms[i + 1 : i + 2] == ["water"] or _method_near(measures, i)):
            yield Amount(i, i + 1, "temperature", "boiling", None, "boiling water", 0.55)


def _method_near(measures: Sequence[Measure], at: int) -> bool:
    return any(m.dimension in ("mass", "volume", "time") and -14 < m.start - at < 14 for m in measures)


def _joined_ranges(norms: Sequence[str], measures: Sequence[Measure]) -> list[Measure]:
    """`eighteen, twenty degrees` is one range; so is `between two and three grams`."""
    joined: list[Measure] = []
    for m in measures:
        low = joined[-1] if joined else None
        between = list(norms[low.end : m.start]) if low else []
        if low and low.dimension == "bare" and m.unit and _spans(norms, low, m, between):
            joined[-1] = replace(m, start=low.start, value=f"{low.number.plain}-{m.number.plain}")
        else:
            joined.append(m)
    return joined


def _spans(norms: Sequence[str], low: Measure, high: Measure, between: list[str]) -> bool:
    near = low.number.plain < high.number.plain <= 2 * low.number.plain and isinstance(high.value, int | float)
    begun = between == ["and"] and low.start > 0 and norms[low.start - 1] == "between"
    return near and high.dimension != "money" and (begun or between in ([","], ["maybe"], [",", "maybe"]))


def _told(around: Surroundings) -> Amount | None:
    m, told = around.measure, tell(around)
    return Amount(m.start, m.end, told[0], m.value, m.unit or None, told[1], told[2]) if told else None
