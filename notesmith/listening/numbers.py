"""Numbers as they are said: in digits or words, with halves, points and hundreds, or as two spoken side by side.

`six eighty-five` stays two parts, for only its unit tells whether it is 6.85, 6:85 or 685.
"""

import re
from collections.abc import Sequence
from dataclasses import dataclass

UNITS = {w: i for i, w in enumerate("zero one two three four five six seven eight nine".split())} | {"nought": 0}
TEENS = {w: i + 10 for i, w in enumerate("ten eleven twelve thirteen fourteen fifteen sixteen seventeen eighteen "
                                          "nineteen".split())}  # fmt: skip
TENS = {w: 10 * i + 20 for i, w in enumerate("twenty thirty forty fifty sixty seventy eighty ninety".split())}
JOINED = {ten + unit: TENS[ten] + UNITS[unit] for ten in TENS for unit in UNITS if UNITS[unit]}
SMALL = UNITS | TEENS | TENS | JOINED
FRACTIONS = {"half": 0.5, "quarter": 0.25, "third": 0.333}
DIGITS = re.compile(r"(\d{1,3}(?:,\d{3})+|\d+)(\.\d+)?")
CLOCK = re.compile(r"(\d{1,2}):(\d\d)")
RANGE = re.compile(r"(\d+(?:\.\d+)?)[-–—](\d+(?:\.\d+)?)")
TYPED_FRACTIONS = {"½": 0.5, "¼": 0.25, "¾": 0.75}
DASHES = ("-", "–", "—")


@dataclass(frozen=True, slots=True)
class Number:
    """A spoken number: words `start` to `end`, its parts, and the other end where it is a range."""

    start: int
    end: int
    parts: tuple[float, ...]
    high: float | None = None

    @property
    def plain(self) -> float:
        """Two parts read as hundreds: `two fifty` is 250, `twenty nineteen` 2019."""
        return self.parts[0] if len(self.parts) == 1 else tidy(self.parts[0] * 100 + self.parts[1])

    @property
    def decimal(self) -> float:
        """Two parts read as money: `two fifty` is 2.5."""
        return self.parts[0] if len(self.parts) == 1 else tidy(self.parts[0] + self.parts[1] / 100)

    @property
    def clock(self) -> float:
        """Two parts read as minutes and seconds (or hours and minutes), in the smaller unit: `two fifty` is 170."""
        return self.parts[0] if len(self.parts) == 1 else self.parts[0] * 60 + self.parts[1]


def tidy(value: float) -> float:
    """A whole number without its fraction, and no dust of binary arithmetic.

    >>> tidy(6.8500000001), tidy(4.0)
    (6.85, 4)
    """
    rounded = round(value, 6)
    return int(rounded) if rounded == int(rounded) else rounded


def shown(low: float, high: float) -> str:
    """A range as it is noted.

    >>> shown(9, 10.5)
    '9-10.5'
    """
    return f"{tidy(low)}-{tidy(high)}"


def read_number(words: Sequence[str], at: int) -> Number | None:
    """The longest number or range that begins at word `at`, or None. `words` are lower-case tokens.

    >>> read_number("two and a half to three grams".split(), 0)
    Number(start=0, end=6, parts=(2.5,), high=3)
    >>> read_number("six eighty - five a pound".split(), 0).decimal
    6.85
    """
    typed = _typed_range(words, at)
    if typed:
        return typed
    first = _parts(words, at)
    if not first:
        return None
    parts, end = first
    second = _range_end(words, end, parts)
    return Number(at, second[1], parts, second[0]) if second else Number(at, end, parts)


def _typed_range(words: Sequence[str], at: int) -> Number | None:
    found = RANGE.fullmatch(words[at])
    return Number(at, at + 1, (tidy(float(found[1])),), tidy(float(found[2]))) if found else None


def _range_end(words: Sequence[str], end: int, parts: tuple[float, ...]) -> tuple[float, int] | None:
    """The other end of a range (`two to three`, `9-10`, `four or five`), if one follows and is the greater."""
    if len(parts) > 1 or end + 1 >= len(words) or words[end] not in ("to", "or", "till", *DASHES):
        return None
    second = _parts(words, end + 1)
    if second and len(second[0]) == 1 and parts[0] < second[0][0] <= 3 * parts[0] + 3:
        return second[0][0], second[1]
    return None


def _parts(words: Sequence[str], at: int) -> tuple[tuple[float, ...], int] | None:
    """One number, or two said side by side (`two fifty`, `two oh five`, `8:50`)."""
    clock = CLOCK.fullmatch(words[at])
    if clock:
        return (int(clock[1]), int(clock[2])), at + 1
    first = _single(words, at)
    if not first:
        return None
    value, end = first
    if not _may_have_second(words, at, value, end):
        return (tidy(value),), end
    second = read_cents(words, end)
    if second is None or (_single(words, second[1]) and words[second[1]] not in ("a", "half", "quarter")):
        return (tidy(value),), end
    return (tidy(value), second[0]), second[1]


def _may_have_second(words: Sequence[str], at: int, value: float, end: int) -> bool:
    """Only a whole number in words, below a hundred, is followed by a second part."""
    return value == int(value) and 0 < value < 100 and words[end - 1] in SMALL and words[at] != "a"


def read_cents(words: Sequence[str], at: int) -> tuple[int, int] | None:
    """A number from 1 to 99 that can stand as cents: tens, teens, or a unit after `oh`; with where it ends."""
    if at < len(words) and words[at] in DASHES:
        at += 1
    if at >= len(words):
        return None
    if words[at] in ("oh", "o") and at + 1 < len(words) and words[at + 1] in UNITS:
        return UNITS[words[at + 1]], at + 2
    if words[at].isdigit() and len(words[at]) == 2:
        return int(words[at]), at + 1
    if words[at] in UNITS:
        return None
    found = _below_hundred(words, at)
    if found and found[1] < len(words) and words[found[1]] in ("hundred", "thousand", "point"):
        return None
    return found


def _single(words: Sequence[str], at: int) -> tuple[float, int] | None:
    """One number with its fraction: `six point eight`, `five and a half`, `three quarters`, `half`."""
    if at >= len(words):
        return None
    found = _digits(words, at) or _whole(words, at)
    if not found:
        return _fraction(words, at)
    value, end = found
    if end < len(words) and words[end] == "point":
        return _point(words, value, end)
    if end < len(words) and words[end] == "quarters":
        return value / 4, end + 1
    added = _fraction(words, end + 1) if words[end : end + 1] == ["and"] else None
    return (value + added[0], added[1]) if added else (value, end)


def _digits(words: Sequence[str], at: int) -> tuple[float, int] | None:
    word = words[at]
    if word in TYPED_FRACTIONS:
        return TYPED_FRACTIONS[word], at + 1
    if len(word) > 1 and word[-1] in TYPED_FRACTIONS and word[:-1].isdigit():
        return int(word[:-1]) + TYPED_FRACTIONS[word[-1]], at + 1
    return (float(word.replace(",", "")), at + 1) if DIGITS.fullmatch(word) else None


def _fraction(words: Sequence[str], at: int) -> tuple[float, int] | None:
    """`half`, `a half`, `a quarter`, `three quarters`."""
    if at < len(words) and words[at] in ("a", "one"):
        at += 1
    if at < len(words) and words[at] in FRACTIONS:
        return FRACTIONS[words[at]], at + 1
    if at + 1 < len(words) and words[at] == "three" and words[at + 1] == "quarters":
        return 0.75, at + 2
    return None


def _point(words: Sequence[str], whole: float, at: int) -> tuple[float, int]:
    """The digits after `point`."""
    digits, end = "", at + 1
    while end < len(words) and (words[end] in SMALL or words[end].isdigit()):
        digits += words[end] if words[end].isdigit() else str(SMALL[words[end]])
        end += 1
    return (float(f"{int(whole)}.{digits}"), end) if digits else (whole, at)


def _whole(words: Sequence[str], at: int) -> tuple[float, int] | None:
    """A whole number in words, up to thousands."""
    below = _below_thousand(words, at)
    if not below:
        return None
    value, end = below
    if end < len(words) and words[end] == "thousand":
        rest = _below_thousand(words, end + 2 if words[end + 1 : end + 2] == ["and"] else end + 1)
        return (value * 1000 + rest[0], rest[1]) if rest else (value * 1000, end + 1)
    return value, end


def _below_thousand(words: Sequence[str], at: int) -> tuple[int, int] | None:
    """Up to 999, and `nineteen hundred`; `a` counts as one before `hundred` and `thousand` alone."""
    if at + 1 < len(words) and words[at] == "a" and words[at + 1] in ("hundred", "thousand"):
        below: tuple[int, int] | None = (1, at + 1)
    else:
        below = _below_hundred(words, at)
    if not below and at < len(words) and words[at] == "hundred":
        below = (1, at)
    if not below or below[1] >= len(words) or words[below[1]] != "hundred":
        return below
    value, end = below[0] * 100, below[1] + 1
    rest = _below_hundred(words, end + 1 if words[end : end + 1] == ["and"] else end)
    return (value + rest[0], rest[1]) if rest else (value, end)


def _below_hundred(words: Sequence[str], at: int) -> tuple[int, int] | None:
    """Up to 99: `seven`, `twenty`, `twenty - five`."""
    if at >= len(words) or words[at] not in SMALL:
        return None
    value, end = SMALL[words[at]], at + 1
    if words[at] in TENS:
        unit = end + 1 if words[end : end + 1] == ["-"] else end
        if unit < len(words) and UNITS.get(words[unit], 0):
            return value + UNITS[words[unit]], unit + 1
    return value, end
