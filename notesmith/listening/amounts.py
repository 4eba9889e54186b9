"""What an amount states: a price, a weight, a dose, water, a temperature, a time, a strength or an age; or only chat.

Its unit decides first; where that leaves two readings, the words around it do.
"""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace

from notesmith.listening.hearing import Hearing
from notesmith.listening.measures import Measure, measures_of
from notesmith.records import FactKind

BREWING = frozenset(
    "brew brewed brewing steep steeped steeping steeps infuse infused infusion water kettle boil boiled boiling pour poured "
    "pouring bloom drawdown gaiwan pot teapot ratio dose ice scoop scooped weigh weighed scale scales cooled rinse whisk "
    "whisked sieve sift sifted bowl bowls cup cups each chilled fridge timer draw drew shot grinder grind cupping "
    "celsius fahrenheit degrees degree mug mugs oven bake baked toasted warm milk hot cold".split()
)
STEEPED = frozenset("steep steeped steeping brew brewed brewing infuse infused infusion water timer kettle degrees degree "
                    "pot gaiwan boiling grams gram bloom shot pour poured wants go".split())  # fmt: skip
LEFT = frozenset("sat sitting sit stood standing rest rested resting left leave leaves leaving cooled cooling out "
                 "soak soaked overnight withered wither dried fermented ferment oven bake baked fridge freezer salt "
                 "conch conched poured".split())  # fmt: skip
PACKS = frozenset("bag bags tin tins bottle bottles box pack packs packet packets bar jar jars can cake pouch sack loaf "
                  "wheel tray carton brick tub size".split())  # fmt: skip
PRICING = frozenset("price prices priced cost costs costing paid pay pays expensive cheap cheaper dear dearer worth spend spent "
                    "sell sells selling sold charge charges charged bought buy store shop shelf sticker".split())  # fmt: skip
OTHER_MONEY = frozenset("voucher fine fined bet rent fare ticket tickets wage wages salary parking tip tips petrol donate "
                        "subscription patreon raffle prize hour owe owes loan lend lent borrowed".split())  # fmt: skip
STORY = frozenset("ago later since minute's drive drove driving walk walked bus train flight queue queued wait waited "
                  "last next every once channel episode video married lived living worked holiday session talking talked "
                  "speech meeting phone podcast recording school concert".split())  # fmt: skip
PERSONS = frozenset("i he she i'm he's she's dad mum mom son daughter kid kids brother sister gran grandad granddad wife "
                    "husband he'd she'd girl boy mother father guy man woman who".split())  # fmt: skip
AGED = frozenset("aged age ageing aging barrel barrels cask casks tank oak wood cellar hung matured maturing foudres "
                 "warehouse bottle foudre roast".split())  # fmt: skip
ALCOHOL = frozenset("wine beer cider perry spirit spirits whisky whiskey rum gin mezcal tequila sake brandy mead vermouth port "
                    "sherry liqueur agave stout ale ales lager lagers vodka cognac drinks wines beers ciders saison".split())  # fmt: skip
TURNS = frozenset("turn turned turning angle tilt tilted rotate corner outside weather".split())
EACH = frozenset("each".split())
DAYS = frozenset("day week month year fortnight".split())
TINY_MASS = 60  # grams; a dose of leaf or coffee is rarely more
REACH = 14  # words either side that are the surroundings of an amount


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


class Surroundings:
    """The words around one amount, and the amounts before and after it."""

    def __init__(self, norms: Sequence[str], measures: Sequence[Measure], k: int, alcoholic: bool) -> None:
        self.measure = measures[k]
        self.alcoholic = alcoholic
        start, end = self.measure.start, self.measure.end
        self.wide = frozenset(norms[max(0, start - REACH) : end + REACH])
        self.close = frozenset(norms[max(0, start - 5) : end + 4])
        self.before = _spoken(norms[max(0, start - 8) : start])
        self.after = _spoken(norms[end : end + 8])
        self.earlier = [m for m in measures[max(0, k - 4) : k] if start - m.end <= 2 * REACH]
        self.later = [m for m in measures[k + 1 : k + 4] if m.start - end <= REACH]

    def said(self, *words: str) -> bool:
        """Whether one of the words stands among the wide surroundings."""
        return not self.wide.isdisjoint(words)

    def beside(self, dimension: str, reach: int) -> bool:
        """Whether an amount of the dimension stands within so many words."""
        m = self.measure
        return any(x.dimension == dimension and m.start - x.end <= reach for x in self.earlier) or any(
            x.dimension == dimension and x.start - m.end <= reach for x in self.later
        )


def _spoken(norms: Sequence[str]) -> tuple[str, ...]:
    return tuple(n for n in norms if n and n not in (",", "-", "uh", "um"))


def find_amounts(hearing: Hearing) -> list[Amount]:
    """Every amount of the talk that states a fact, in order."""
    norms = [w.norm for w in hearing.words]
    names = {i for m in hearing.mentions if m.kind in ("name", "ordinal") for i in range(m.start, m.end)}
    measures = [m for m in measures_of(norms) if m.unit or m.start not in names]
    alcoholic = not ALCOHOL.isdisjoint(hearing.sheet.category.lower().replace(",", " ").split())
    return list(_amounts(norms, _joined_ranges(norms, measures), alcoholic))


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


def _amounts(norms: Sequence[str], measures: Sequence[Measure], alcoholic: bool) -> Iterator[Amount]:
    for k, m in enumerate(measures):
        around = Surroundings(norms, measures, k, alcoholic)
        told = _tell(around)
        if told:
            kind, rule, score = told
            yield Amount(m.start, m.end, kind, _value(m, kind), m.unit or None, rule, score)


def _value(m: Measure, kind: FactKind) -> float | int | str:
    """Two parts without a unit are money with its pence, or hundreds."""
    return m.number.decimal if kind == "price" and not m.unit else m.value


Told = tuple[FactKind, str, float] | None


def _tell(around: Surroundings) -> Told:
    """Which fact the amount states, by the rule of its dimension."""
    return {
        "money": _tell_money, "mass": _tell_mass, "volume": _tell_volume, "count": _tell_count, "degree": _tell_degree,
        "time": _tell_time, "percent": _tell_percent, "bare": _tell_bare,
    }[around.measure.dimension](around)  # fmt: skip


def _tell_money(around: Surroundings) -> Told:
    m = around.measure
    if not around.close.isdisjoint(OTHER_MONEY) or m.unit == "pound" and around.after[:1] in (("of",), ("sack",), ("bag",)):
        return None
    return "price", "money", 0.85


def _tell_mass(around: Surroundings) -> Told:
    if around.beside("money", 4) or not PACKS.isdisjoint(around.after[:2]):
        return "net_weight", "a weight beside a price or a pack", 0.8
    if around.after[:1] == ("each",) or around.said("water", "brewing", "steep", "dose") or around.beside("volume", 6):
        return "dose", "a weight beside water or brewing", 0.75
    if around.beside("money", 2 * REACH) or not around.wide.isdisjoint(PACKS | PRICING):
        return "net_weight", "a weight near a price or a pack", 0.6
    if not around.wide.isdisjoint(BREWING):
        return "dose", "a weight near brewing", 0.6
    return None


def _tell_volume(around: Surroundings) -> Told:
    if around.beside("money", 4) or not PACKS.isdisjoint(around.after[:2]):
        return "net_weight", "a volume beside a price or a pack", 0.8
    if not around.close.isdisjoint(("water", "ice", "soda", "milk")) or around.beside("mass", 6) or around.beside("degree", 8):
        return "water", "a volume beside a dose or water", 0.75
    if not around.close.isdisjoint(("each", "pour", "poured", "pouring", "glass", "glasses")):
        return "dose", "a volume poured", 0.6
    if around.beside("money", 2 * REACH) or not around.wide.isdisjoint(PACKS):
        return "net_weight", "a volume near a price or a pack", 0.6
    return ("water", "a volume near brewing", 0.5) if not around.wide.isdisjoint(STEEPED) else None


def _tell_count(around: Surroundings) -> Told:
    return ("dose", "a spoonful", 0.6) if around.measure.start else None


def _tell_degree(around: Surroundings) -> Told:
    return ("temperature", "degrees", 0.8) if around.close.isdisjoint(TURNS) else None


def _tell_time(around: Surroundings) -> Told:
    m = around.measure
    if "old" in around.after[:2]:
        return ("age", "so old", 0.7) if around.close.isdisjoint(PERSONS) else None
    if m.unit in ("month", "year", "week", "day") and not around.close.isdisjoint(AGED):
        return "age", "so long in wood", 0.7
    if not around.close.isdisjoint(STORY | PERSONS - {"i"}):
        return None
    if m.unit in DAYS:
        return ("time", "left so long", 0.5) if not around.close.isdisjoint(LEFT) else None
    if around.beside("degree", 10) or around.beside("mass", 12) or around.beside("volume", 12):
        return "time", "a time beside a dose or a temperature", 0.75
    if not around.close.isdisjoint(STEEPED | LEFT):
        return "time", "a time of brewing or resting", 0.6
    return None


def _tell_percent(around: Surroundings) -> Told:
    named = not around.close.isdisjoint(("alcohol", "abv", "volume", "proof"))
    return ("abv", "percent of alcohol", 0.8) if named or around.alcoholic else None


def _tell_bare(around: Surroundings) -> Told:
    m, after = around.measure, around.after
    before = around.before[-1:] or ("",)
    if around.alcoholic and isinstance(m.value, float) and not m.value.is_integer() and 0 < m.value < 75:
        return "abv", "a decimal number in a tasting of alcohol", 0.6
    if before[0] == "at" and 40 <= m.number.plain <= 100 and around.said("water", "grams", "kettle", "brew", "steep", "ml", "mil"):
        return "temperature", "water at so many", 0.65
    return None
