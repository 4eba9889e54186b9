"""Amounts with their units: money, weights, volumes, degrees, times and percentages, and numbers said bare."""

import re
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from typing import Literal

from notesmith.listening.numbers import Number, read_cents, read_number, shown, tidy

Dimension = Literal["money", "mass", "volume", "count", "degree", "time", "percent", "bare"]


def _table(dimension: Dimension, text: str) -> dict[str, tuple[str, Dimension]]:
    """Every form of a unit to its singular, the first of its forms: `gram grams g|ounce ounces oz`."""
    return {form: (group.split()[0], dimension) for group in text.split("|") for form in group.split()}


UNITS: dict[str, tuple[str, Dimension]] = {
    **_table(
        "money",
        "pound pounds £|quid quids|pence p|euro euros €|cent cents|dollar dollars $|buck bucks|rand rands|"
        "rupee rupees rs ₹|yen ¥|yuan|rmb|renminbi|kuai|lari|tetri|crown crowns|krona kronor|krone kroner|franc francs|"
        "lira|baht|peso pesos|zloty|ringgit|shilling shillings",
    ),
    **_table(
        "mass",
        "gram grams g gramme grammes gm gms|kilo kilos|kilogram kilograms kg|ounce ounces oz|milligram mg|lb lbs",
    ),
    **_table(
        "volume",
        "ml|mil mils mills|millilitre millilitres|milliliter milliliters|mls|cc|cl|centilitre centilitres|"
        "centiliter centiliters|litre litres|liter liters|pint pints",
    ),
    **_table("count", "teaspoon teaspoons tsp|tablespoon tablespoons tbsp|scoop scoops|drop drops|spoonful spoonfuls"),
    **_table("degree", "degree degrees °|celsius|centigrade|fahrenheit"),
    **_table(
        "time",
        "second seconds sec secs|minute minutes min mins|hour hours hr hrs|day days|week weeks|fortnight fortnights|"
        "month months|year years",
    ),
    **_table("percent", "percent %|abv"),
}
MAJOR = frozenset("pound quid euro dollar buck rand lari franc crown rupee".split())
HUNDREDS = frozenset(
    "rand rupee yen yuan rmb renminbi kuai krona krone baht peso lira".split()
)  # currencies in which two parts are hundreds
MINOR = frozenset("pence cent tetri".split())
SMALLER = {
    "hour": ("minute", 60),
    "minute": ("second", 60),
    "day": ("hour", 24),
    "week": ("day", 7),
    "year": ("month", 12),
}
LINKS = frozenset("a an per the each for".split())
GLUED = re.compile(r"(\d+(?:\.\d+)?)([a-z°%]{1,3})")


@dataclass(frozen=True, slots=True)
class Measure:
    """An amount: words `start` to `end`, its number, its unit in the singular, and what one of it buys or fills."""

    start: int
    end: int
    number: Number
    value: float | str
    unit: str
    dimension: Dimension
    per: str = ""  # `gram` in `nine cents a gram`


def measures_of(words: Sequence[str]) -> list[Measure]:
    """Every amount among the lower-case tokens, in order; bare numbers too.

    >>> [(m.value, m.unit, m.per) for m in measures_of("it's nine pound fifty for 100 g , 9 cents a gram".split())]
    [(9.5, 'pound', ''), (100, 'gram', ''), (9, 'cent', 'gram')]
    """
    return list(_measures(words))


def _measures(words: Sequence[str]) -> Iterator[Measure]:
    beginning, past = {word for word in set(words) if may_begin(word)}, 0
    for at in [i for i, word in enumerate(words) if word in beginning]:
        found = _measure(words, at) if at >= past else None
        if found:
            past = found.end
            yield found


def may_begin(word: str) -> bool:
    """Whether an amount may begin with the word."""
    return word in ("a", "an", "£", "$", "€", "₹", "¥", "one", "half", "quarter") or (
        bool(word) and (word[0].isdigit() or word in _NUMBER_WORDS or word in "½¼¾")
    )


def _measure(words: Sequence[str], at: int) -> Measure | None:
    """The amount that begins at word `at`."""
    if words[at] in ("£", "$", "€", "₹", "¥"):
        number = read_number(words, at + 1) if at + 1 < len(words) else None
        return _priced(words, at, number, number.end, UNITS[words[at]][0]) if number else None
    glued = GLUED.fullmatch(words[at])
    if glued and glued[2] in UNITS:
        return _with_unit(words, Number(at, at + 1, (tidy(float(glued[1])),)), at + 1, glued[2])
    number = _article(words, at) or read_number(words, at)
    if not number:
        return None
    unit_at = _unit_at(words, number.end)
    if unit_at is None:
        return None if words[at] in ("a", "an", "half", "quarter") and number.plain < 2 else _bare(number)
    return _with_unit(words, number, unit_at + 1, words[unit_at])


def _article(words: Sequence[str], at: int) -> Number | None:
    """`a` before a unit counts as one (`a pound twenty`, `an hour`); `a couple of` as two."""
    if words[at] not in ("a", "an") or at + 1 >= len(words):
        return None
    if words[at + 1] == "couple":
        return Number(at, at + 3 if words[at + 2 : at + 3] == ["of"] else at + 2, (2,))
    return Number(at, at + 1, (1,)) if words[at + 1] in UNITS and words[at + 1] not in ("p", "g", "second") else None


def _unit_at(words: Sequence[str], at: int) -> int | None:
    """Where the unit of the number that ends at `at` stands: after a hyphen, `a`, `of a`, or at once."""
    for between in (("-",), ("of", "a"), ("of", "an"), ("a",), ("an",), ("per",), ()):
        end = at + len(between)
        if end < len(words) and tuple(words[at:end]) == between and _is_unit(words, end):
            half = words[at - 1] in ("half", "quarter", "quarters")
            if (
                between in ((), ("-",))
                or (between == ("per",) and words[end] == "cent")
                or (half and between != ("per",))
            ):
                return end
    return None


def _is_unit(words: Sequence[str], at: int) -> bool:
    return words[at] in UNITS and not (words[at] in ("second", "seconds") and words[at + 1 : at + 2] == ["flush"])


def _bare(number: Number) -> Measure:
    value: float | str = number.plain if number.high is None else shown(number.plain, number.high)
    return Measure(number.start, number.end, number, value, "", "bare")


def _with_unit(words: Sequence[str], number: Number, end: int, form: str) -> Measure:
    unit, dimension = UNITS[form]
    if words[end - 2 : end] == ["per", "cent"]:
        unit, dimension = "percent", "percent"
    if dimension == "money":
        return _priced(words, number.start, number, end, unit)
    if dimension == "time":
        return _timed(words, number, end, unit)
    if dimension == "degree":
        end, unit = _degree(words, end, unit)
    value: float | str = number.plain if number.high is None else shown(number.plain, number.high)
    return Measure(number.start, end, number, value, unit, dimension)


def _degree(words: Sequence[str], end: int, unit: str) -> tuple[int, str]:
    """The scale said after `degrees`, taken into the stretch."""
    if end < len(words) and words[end] in ("c", "celsius", "centigrade", "f", "fahrenheit"):
        return end + 1, unit
    return end, unit


def _priced(words: Sequence[str], start: int, number: Number, end: int, unit: str) -> Measure:
    """Money with its pence (`nine pound fifty`, `fifteen euros and sixty cents`) and what it buys (`a gram`)."""
    low = number.plain if unit in HUNDREDS or unit in MINOR else number.decimal
    if unit in MAJOR and number.high is None and len(number.parts) == 1 and low == int(low):
        low, end = _cents(words, low, end)
    per, end = _per(words, end)
    value: float | str = tidy(low) if number.high is None else shown(low, number.high)
    return Measure(start, end, number, value, unit, "money", per)


def _cents(words: Sequence[str], whole: float, end: int) -> tuple[float, int]:
    at = end + 1 if words[end : end + 1] == ["and"] else end
    if words[at : at + 1] == ["a"] and words[at + 1 : at + 2] in (["half"], ["quarter"]) and at > end:
        return whole + (0.5 if words[at + 1] == "half" else 0.25), at + 2
    cents = read_cents(words, at)
    if not cents and at < len(words) and words[at] in ("five", "nine") and at == end:
        cents = (5 if words[at] == "five" else 9, at + 1)
    if not cents:
        return whole, end
    after = words[cents[1]] if cents[1] < len(words) else ""
    minor = UNITS.get(after, ("", ""))[0] in MINOR
    if (after in UNITS and not minor) or (at > end and not minor) or (after == "for" and cents[0] < 5):
        return whole, end
    return whole + cents[0] / 100, cents[1] + minor


def _per(words: Sequence[str], end: int) -> tuple[str, int]:
    """What the money buys: `a gram`, `per 100 g` is left to stand as a weight."""
    if end + 1 < len(words) and words[end] in ("a", "per", "an", "the", "/"):
        unit, dimension = UNITS.get(words[end + 1], ("", "bare"))
        if dimension in ("mass", "volume") or unit == "pound":
            return unit, end + 2
    return "", end


def _timed(words: Sequence[str], number: Number, end: int, unit: str) -> Measure:
    """A duration; mixed ones in the smaller unit (`two minutes forty`: 160 seconds)."""
    if number.high is not None:
        return Measure(number.start, end, number, shown(number.plain, number.high), unit, "time")
    value = number.plain
    if words[end : end + 3] == ["and", "a", "half"] or words[end : end + 3] == ["and", "a", "quarter"]:
        return Measure(number.start, end + 3, number, value + (0.5 if words[end + 2] == "half" else 0.25), unit, "time")
    if unit in SMALLER:
        smaller, times = SMALLER[unit]
        at = end + 1 if words[end : end + 1] == ["and"] else end
        rest = read_number(words, at) if at < len(words) else None
        if rest and len(rest.parts) == 1 and rest.high is None and rest.plain < times:
            follows = UNITS.get(words[rest.end] if rest.end < len(words) else "", ("", ""))[0]
            if follows == smaller or (at == end and not follows and unit == "minute" and rest.plain >= 5):
                return Measure(
                    number.start, rest.end + (follows == smaller), number, value * times + rest.plain, smaller, "time"
                )
    if len(number.parts) == 2 and (unit != "minute" or number.parts[0] < number.parts[1] <= 2 * number.parts[0]):
        return Measure(number.start, end, number, shown(*number.parts), unit, "time")
    if len(number.parts) == 2:
        return Measure(number.start, end, number, f"{number.parts[0]}:{number.parts[1]:02}", unit, "time")
    return Measure(number.start, end, number, value, unit, "time")


_NUMBER_WORDS = frozenset(
    "zero nought one two three four five six seven eight nine ten eleven twelve thirteen fourteen fifteen sixteen "
    "seventeen eighteen nineteen twenty thirty forty fifty sixty seventy eighty ninety hundred".split()
)
