"""Amounts as spoken and as the sheet gives them: converted where the unit is sure, written by the locale."""

from dataclasses import dataclass
from typing import NamedTuple

from babel import Locale, UnknownLocaleError
from babel.numbers import format_currency, format_decimal, format_percent
from babel.units import format_unit

from notesmith.errors import OutputError
from notesmith.records import Fact


class Unit(NamedTuple):
    """A unit: what it measures, how many of the base unit it is (g, ml, s), and its name in the locale data."""

    measures: str
    factor: float
    name: str


# An ounce of water, a bare `degree` and a `pound` of money are left as spoken: each could be one of several.
UNITS = {
    "gram": Unit("weight", 1, "mass-gram"), "g": Unit("weight", 1, "mass-gram"),
    "kilo": Unit("weight", 1000, "mass-kilogram"), "kilogram": Unit("weight", 1000, "mass-kilogram"),
    "milligram": Unit("weight", 0.001, "mass-milligram"),
    "mil": Unit("volume", 1, "volume-milliliter"), "ml": Unit("volume", 1, "volume-milliliter"),
    "millilitre": Unit("volume", 1, "volume-milliliter"), "milliliter": Unit("volume", 1, "volume-milliliter"),
    "centilitre": Unit("volume", 10, "volume-centiliter"), "centiliter": Unit("volume", 10, "volume-centiliter"),
    "litre": Unit("volume", 1000, "volume-liter"), "liter": Unit("volume", 1000, "volume-liter"),
    "second": Unit("time", 1, "duration-second"), "minute": Unit("time", 60, "duration-minute"),
    "hour": Unit("time", 3600, "duration-hour"), "day": Unit("time", 86400, "duration-day"),
}  # fmt: skip
CURRENCIES = {"euro": "EUR", "yuan": "CNY", "yen": "JPY", "rand": "ZAR", "ringgit": "MYR", "lari": "GEL"}
UNCOUNTED = frozenset("mil ml g p pence quid yen yuan rand ringgit lari won baht percent Fahrenheit Celsius".split())
"""Units that stay as they are after any number."""


@dataclass(frozen=True)
class Amounts:
    """Writes amounts as one locale does."""

    locale: Locale

    @classmethod
    def of(cls, name: str) -> "Amounts":
        """Amounts of a locale such as `en_GB`.

        Raises:
            OutputError: there is no such locale.
        """
        try:
            return cls(Locale.parse(name.replace("-", "_")))
        except (UnknownLocaleError, ValueError):
            raise OutputError(f"no locale is called {name!r}", mend="name one such as en_GB or de") from None

    def number(self, value: float, digits: int = 2) -> str:
        """A number without idle zeros.

        >>> Amounts.of("de").number(2.50)
        '2,5'
        """
        return str(format_decimal(round(value, digits), locale=self.locale))

    def money(self, value: float, currency: str) -> str:
        """A sum in an ISO 4217 currency, with decimals only where there are any.

        >>> Amounts.of("en").money(14, "EUR"), Amounts.of("en").money(0.5, "EUR")
        ('€14', '€0.50')
        """
        if value == int(value):
            plain = format_currency(value, currency, "¤#,##0" if self._before(currency) else "#,##0\xa0¤",
                                    locale=self.locale, currency_digits=False)  # fmt: skip
            return str(plain)
        return str(format_currency(value, currency, locale=self.locale))

    def measure(self, value: float, name: str) -> str:
        """A number with a unit of the locale data.

        >>> Amounts.of("en").measure(96, "temperature-celsius")
        '96°C'
        """
        return str(format_unit(round(value, 2), name, length="short", locale=self.locale))

    def strength(self, grams: float) -> str:
        """Grams to 100 ml.

        >>> Amounts.of("en_GB").strength(1.2)
        '1.2 g/100 ml'
        """
        return f"{self.number(grams)} g/{self.measure(100, 'volume-milliliter')}"

    def duration(self, seconds: float) -> str:
        """A time in the largest unit that leaves no more than one decimal.

        >>> Amounts.of("en").duration(25), Amounts.of("en").duration(32400)
        ('25 sec', '9 hr')
        """
        for name, factor in (("day", 86400), ("hour", 3600), ("minute", 60)):
            if seconds >= factor and (seconds / factor * 10) % 5 == 0:
                return self.measure(seconds / factor, f"duration-{name}")
        return self.measure(seconds, "duration-second")

    def spoken(self, fact: Fact, currency: str | None = None) -> str:
        """What a fact says, in its own unit; `currency` is what the sheet counts in."""
        value, unit = fact.value, fact.unit
        if fact.kind == "harvest":  # a year is no amount
            value = str(value)
        if isinstance(value, str):
            return f"{value} {plural(unit)}" if unit else value
        if fact.kind == "price":
            return self._price(value, unit, currency)
        if fact.kind == "abv":
            return str(format_percent(value / 100, "#,##0.##%", locale=self.locale))
        known = known_unit(unit)
        if known:
            return self.measure(value, known.name)
        return f"{self.number(value)} {unit if value == 1 else plural(unit)}" if unit else self.number(value)

    def _price(self, value: float, unit: str | None, currency: str | None) -> str:
        code = currency_of(unit, currency)
        if code:
            return self.money(value, code)
        return f"{self.plain_sum(value)} {unit if value == 1 else plural(unit)}" if unit else self.plain_sum(value)

    def plain_sum(self, value: float) -> str:
        """A sum in no sure currency, with decimals only where there are any.

        >>> Amounts.of("en").plain_sum(2), Amounts.of("en").plain_sum(1.6)
        ('2', '1.60')
        """
        return str(format_decimal(value, "#,##0" if value == int(value) else "#,##0.00", locale=self.locale))

    def _before(self, currency: str) -> bool:
        return not str(format_currency(1, currency, locale=self.locale))[0].isdigit()


def known_unit(unit: str | None) -> Unit | None:
    """The unit of weight, volume or time that a spoken word stands for, where it stands for one only."""
    spoken = (unit or "").casefold()
    return UNITS.get(spoken) or UNITS.get(spoken.removesuffix("s"))


def currency_of(unit: str | None, sheet: str | None = None) -> str | None:
    """The currency that a spoken word stands for; `pound` and `dollar` only where the sheet says which.

    >>> currency_of("euro"), currency_of("pound"), currency_of("pound", "GBP")
    ('EUR', None, 'GBP')
    """
    spoken = (unit or "").casefold()
    code = CURRENCIES.get(spoken) or CURRENCIES.get(spoken.removesuffix("s"))
    named = {"GBP": ("pound", "quid"), "USD": ("dollar", "buck"), "AUD": ("dollar", "buck"), "CAD": ("dollar", "buck")}
    if not code and sheet and spoken.removesuffix("s") in named.get(sheet, ()):
        return sheet
    return code


def plural(unit: str | None) -> str:
    """The plural of a unit as spoken.

    >>> plural("pound"), plural("mil"), plural("pound a jar"), plural("grams")
    ('pounds', 'mil', 'pounds a jar', 'grams')
    """
    first, space, rest = (unit or "").partition(" ")
    kept = first in UNCOUNTED or first.endswith("s") or not first
    return f"{first}{'' if kept else 's'}{space}{rest}"


def base(fact: Fact) -> float | None:
    """A fact's amount in grams, millilitres or seconds, where its unit is sure."""
    unit = known_unit(fact.unit)
    return float(fact.value) * unit.factor if unit and isinstance(fact.value, int | float) else None
