"""Which money is a price of what is tasted, and which bare numbers are prices or pack weights too."""

from collections import Counter
from collections.abc import Sequence

from notesmith.listening.hearing import Hearing
from notesmith.listening.measures import HUNDREDS, MAJOR, UNITS, Measure

STATED = frozenset(
    "its thats s is 's was are were it's cost costs paid pay for at says price around about like only just "
    "nearly".split()
)
PRICING = frozenset(
    "price prices priced cost costs costing paid pay pays expensive cheap cheaper cheapest dear dearer costliest "
    "sell sells selling sold bought buy store shop shelf sticker bottle bag tin box pack packet bar cake jar kilo "
    "gram pricey bargain bags".split()
)
CHAT = frozenset(
    "voucher fine fined bet rent fare ticket tickets wage wages salary parking tip tips petrol donate "
    "subscription raffle prize hour owe owes loan lend lent borrowed month day night budget spend spent gave give "
    "gives given won win off better charge hire hired vet bill under another door postage tax fee machine grinder "
    "chairs rule worth save saved saving shipping delivery bathroom toilet".split()
)
FIXING = frozenset("fix fixing repair repaired deposit ransom wedding filter hat shoes".split())


def is_price(norms: Sequence[str], measures: Sequence[Measure], k: int, seen: Counter[str]) -> bool:
    """Whether an amount of money is the price of something tasted: signs for it are weighed against signs of chat."""
    m = measures[k]
    if m.unit == "pound" and _is_weight(norms, measures, k):
        return False
    before = [n for n in norms[max(0, m.start - 6) : m.start] if n and n != ","]
    close = set(norms[max(0, m.start - 8) : m.end + 5])
    beside = _weight_beside(measures, k, 5)
    score = 2.0 * bool(beside or m.per)
    score += 1.2 * (not STATED.isdisjoint(before[-3:]))
    score += 0.8 * (norms[m.start - 1] in (",", ".", "?", "!") if m.start else True)
    score += 0.8 * (not PRICING.isdisjoint(norms[max(0, m.start - 20) : m.end + 12]))
    score += 0.7 * any(
        o.dimension == "money" and o is not m and abs(o.start - m.start) < 25 for o in measures[max(0, k - 5) : k + 6]
    )
    score -= 1.1 * min(2, len(close & CHAT)) + 1.5 * (not FIXING.isdisjoint(close))
    score += 1.0 * (norms[m.end : m.end + 1] == ["each"])
    score -= 1.2 * bool(seen[f"{m.value} {m.unit}"]) + 2 * ("not" in before[-2:] or "under" in before[-2:])
    return score >= 0.8


def _is_weight(norms: Sequence[str], measures: Sequence[Measure], k: int) -> bool:
    """Whether pounds weigh: `a five pound sack`, `six eighty-five a pound`."""
    m = measures[k]
    per = k > 0 and norms[m.start] == "a" and measures[k - 1].end == m.start
    return per or norms[m.end : m.end + 1] in (["sack"], ["bag"], ["jar"], ["of"], ["box"])


def _weight_beside(measures: Sequence[Measure], k: int, reach: int) -> bool:
    m = measures[k]
    return any(
        o.dimension in ("mass", "volume") and (0 <= o.start - m.end <= reach or 0 <= m.start - o.end <= 2)
        for o in (*measures[max(0, k - 2) : k], *measures[k + 1 : k + 3])
    )


def currency_of(hearing: Hearing) -> str:
    """The currency most spoken of, or an empty string."""
    norms, money = hearing.meant, [form for form, (_, dimension) in UNITS.items() if dimension == "money"]
    units = (UNITS[norms[i]][0] for i in hearing.places(money) if norms[max(0, i - 1)] != "not")
    spoken = Counter(unit for unit in units if unit in MAJOR or unit in HUNDREDS)
    return max(sorted(spoken), key=lambda unit: spoken[unit], default="")


def bare_price(
    norms: Sequence[str], measures: Sequence[Measure], k: int, currency: str, named: frozenset[int]
) -> float | None:
    """The price that a number without a unit states (`the peony's twenty-six`, `nine ninety-nine`), or None."""
    m = measures[k]
    before = [n for n in norms[max(0, m.start - 12) : m.start] if n and n != ","]
    after = [n for n in norms[m.end : m.end + 3] if n and n != "-"]
    value = m.number.plain if currency in HUNDREDS else m.number.decimal
    if (
        m.number.high is not None
        or _is_year(m, currency)
        or value < 0.5
        or (norms[m.start] == "one" and m.end == m.start + 1)
    ):
        return None
    for_weight = after[:1] == ["for"] and any(
        o.dimension in ("mass", "volume") and 0 < o.start - m.end <= 3 for o in measures[k + 1 : k + 2]
    )
    per_kilo = (
        after[:1] in (["a"], ["per"])
        and after[1:2]
        and after[1] in ("kilo", "bottle", "gram", "litre", "liter", "bag", "pack")
    )
    if for_weight or per_kilo:
        return value
    if (
        not SPENT.isdisjoint((*before[-6:], *after))
        or _counts_something(after)
        or (before[-1:] == ["at"] and not _cents(m))
    ):
        return None
    money_near = any(o.dimension == "money" and 0 < m.start - o.end < 22 for o in measures[max(0, k - 4) : k])
    of_sample = any(i in named for i in range(max(0, m.start - 4), m.start)) and not STATED.isdisjoint(before[-2:])
    if money_near and of_sample:
        return value
    if (
        m.number.parts[-1] in (15, 30, 45)
        and not money_near
        and PRICED.isdisjoint(norms[max(0, m.start - 8) : m.start])
    ):
        return None  # a time of day
    priced = money_near or not PRICED.isdisjoint(norms[max(0, m.start - 18) : m.start])
    return (
        value
        if _cents(m)
        and (priced or not STATED.isdisjoint(before[-2:]))
        and not TIMED & set(norms[max(0, m.start - 14) : m.end + 6])
        else None
    )


PRICED = frozenset("price prices cost costs paid expensive cheap cheaper sticker money".split())
SPENT = frozenset("spent spend budget want".split())
TIMED = frozenset(
    "minutes minute seconds second timer brew water grams temperature degrees oven bake track bloom crack".split()
)
COUNTED = frozenset(
    "of percent point degrees minutes seconds cups bags years times people points out o'clock am pm".split()
)


def _cents(m: Measure) -> bool:
    """Two parts, the second of which looks like cents: `four ninety-nine`, `two fifty`."""
    return len(m.number.parts) == 2 and (m.number.parts[1] % 5 == 0 or m.number.parts[1] in (49, 79, 89, 99))


def _is_year(m: Measure, currency: str) -> bool:
    year = 1950 <= m.number.plain < 2040 and (len(m.number.parts) == 1 or m.number.parts[0] == 20)
    return year and currency not in HUNDREDS


def _counts_something(after: Sequence[str]) -> bool:
    return bool(after) and after[0] in COUNTED


def bare_weight(norms: Sequence[str], measures: Sequence[Measure], k: int) -> bool:
    """Whether a number without a unit tells the pack (`for a hundred`, `the seven fifty`), next to its price."""
    m = measures[k]
    before = [n for n in norms[max(0, m.start - 3) : m.start] if n and n != ","]
    after = norms[m.end] if m.end < len(norms) else ""
    if before[-1:] == ["the"] and len(m.number.parts) == 2 and after not in COUNTED:
        return any(o.dimension == "money" and 0 <= m.start - o.end <= 14 for o in measures[max(0, k - 2) : k])
    priced = any(
        o.dimension in ("money", "bare") and 0 <= m.start - o.end <= 4 and o.number.plain < 100000
        for o in measures[max(0, k - 1) : k]
    )
    return (
        priced
        and before[-1:] in (["for"], ["the"], ["a"])
        and 10 <= m.number.plain <= 3000
        and after not in COUNTED | OBJECTS
    )


OBJECTS = frozenset("bits tall little loaves pieces small bars cans bottles cup glass big".split())
