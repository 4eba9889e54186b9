"""Every amount that may state a fact: a price, a weight, a dose, water, a temperature, a time, a strength or an age."""

from collections import Counter
from collections.abc import Iterator, Sequence
from dataclasses import replace
from itertools import pairwise

from notesmith.listening.fact_signs import Scene
from notesmith.listening.hearing import Amount, Hearing
from notesmith.listening.measures import HUNDREDS, Dimension, Measure, measures_of
from notesmith.listening.pricing import bare_price, bare_weight, currency_of, is_price
from notesmith.listening.telling import Surroundings, tell
from notesmith.records import FactKind

ALCOHOL = frozenset(
    "wine beer cider perry spirit spirits whisky whiskey rum gin mezcal tequila sake brandy mead vermouth port "
    "sherry liqueur agave stout ale ales lager lagers vodka cognac drinks wines beers ciders saison".split()
)
MAY_STATE: dict[Dimension, tuple[FactKind, ...]] = {
    "money": ("price",),
    "mass": ("net_weight", "dose", "water"),
    "volume": ("net_weight", "water", "dose"),
    "count": ("dose",),
    "degree": ("temperature",),
    "time": ("time", "age"),
    "percent": ("abv",),
    "bare": ("price", "net_weight", "temperature", "abv", "time", "dose", "water"),
}


def all_measures(hearing: Hearing) -> list[Measure]:
    """Every amount of the talk, in order; numbers that name a sample are none."""
    names = _named(hearing)
    norms = hearing.meant
    return _joined_ranges(norms, [m for m in measures_of(norms) if m.unit or m.start not in names])


def _named(hearing: Hearing) -> frozenset[int]:
    return frozenset(i for m in hearing.mentions if m.kind in ("name", "ordinal") for i in range(m.start, m.end))


def amounts_of(hearing: Hearing, scene: Scene) -> Iterator[Amount]:
    """Every amount once for each kind of fact that its dimension may state."""
    alcoholic = not ALCOHOL.isdisjoint(hearing.sheet.category.lower().replace(",", " ").split())
    currency = currency_of(hearing)
    told = dict(_prices(scene.norms, scene.measures, _named(hearing), currency))
    talk = (
        "of alcohol" if alcoholic else "no alcohol",
        "hundreds currency" if currency in HUNDREDS else "small currency" if currency else "no currency",
    )
    for k, m in enumerate(scene.measures):
        reading = told.get(m.start) or _told(Surroundings(scene.norms, scene.measures, k, alcoholic))
        if _counts_off(scene.measures, k) or (reading == UNTOLD and m.dimension == "bare" and m.number.plain == 1):
            continue
        signs = (*scene.signs(m.start, m.end), *scene.amount_signs(k), *talk, *_reading_signs(reading))
        for kind in MAY_STATE[m.dimension]:
            value, unit = _value(m, kind, currency), _unit(m, kind, currency)
            yield Amount(m.start, m.end, kind, value, unit, reading[1], signs, kind == reading[0])
    yield from _boiling(scene)


def _counts_off(measures: Sequence[Measure], k: int) -> bool:
    """Whether a bare number stands in a row of them: a telephone number, or counting."""
    row = measures[max(0, k - 2) : k + 3]
    beside = [b.start - a.end <= 1 for a, b in pairwise(row) if a.dimension == b.dimension == "bare"]
    return measures[k].dimension == "bare" and sum(beside) >= 2


def _reading_signs(reading: tuple[str, str]) -> tuple[str, str]:
    kind, rule = reading
    return f"told {rule}", f"told {kind}"


def _value(m: Measure, kind: FactKind, currency: str) -> float | int | str:
    """A bare number is read as the kind has it: 2.5 as a price, 170 seconds as a time."""
    if m.dimension == "bare" and m.number.high is None:
        if kind == "price":
            return m.number.plain if currency in HUNDREDS else m.number.decimal
        if kind == "time":
            return m.number.clock
    return m.value


def _unit(m: Measure, kind: FactKind, currency: str) -> str | None:
    return (currency if kind == "price" and m.dimension == "bare" else m.unit) or None


UNTOLD = ("no kind", "an amount in its place")


def _told(around: Surroundings) -> tuple[str, str]:
    """The kind and the rule that the words around an amount tell."""
    told = tell(around)
    return (told[0], told[1]) if told else UNTOLD


def _prices(
    norms: Sequence[str], measures: Sequence[Measure], names: frozenset[int], currency: str
) -> Iterator[tuple[int, tuple[str, str]]]:
    """Where the rules tell a price, or the pack it buys where only a number is said."""
    seen, last = Counter[str](), -100
    for k, m in enumerate(measures):
        if m.dimension == "money" and is_price(norms, measures, k, seen):
            seen[f"{m.value} {m.unit}"] += 1
            last = m.end
            yield m.start, ("price", "money")
        elif m.dimension == "bare" and m.start - last <= 14 and bare_weight(norms, measures, k):
            yield m.start, ("net_weight", "a number beside a price")
        elif m.dimension == "bare" and bare_price(norms, measures, k, currency, names) is not None:
            last = m.end
            yield m.start, ("price", "a number said as a price")


def _boiling(scene: Scene) -> Iterator[Amount]:
    """`boiling` as a temperature, beside a dose, a volume or a time."""
    for i in scene.hearing.places(["boiling"]):
        marks = (
            ("told boiling water", scene.norms[i + 1 : i + 2] == ["water"]),
            ("told boiling beside a dose", _method_near(scene.measures, i)),
        )
        told = tuple(sign for sign, there in marks if there)
        signs = (*scene.signs(i, i + 1), "told boiling", *told)
        yield Amount(i, i + 1, "temperature", "boiling", None, "boiling water", signs, bool(told))


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
