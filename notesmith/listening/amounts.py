"""What an amount states: a price, a weight, a dose, water, a temperature, a time, a strength or an age; or only chat.

Its unit decides first; where that leaves two readings, the words around it do.
"""

from collections import Counter
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace

from notesmith.listening.hearing import Hearing
from notesmith.listening.measures import Measure, measures_of
from notesmith.listening.pricing import bare_price, bare_weight, currency_of, is_price
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
STORY = frozenset("ago later minute's drive drove driving walk walked bus train flight queue queued wait waited married lived living "
                  "worked holiday customs travel travelled".split())  # fmt: skip
CHATTED = frozenset("every once channel episode video session talking talked speech meeting phone podcast recording school "
                    "concert longer back until till late early give given moment".split())  # fmt: skip
BREWED = frozenset("steep steeped steeping brew brewed brewing infuse infused infusion timer kettle boiling bloom "
                   "shot gaiwan teapot".split())  # fmt: skip
PERSONS = frozenset("i he she i'm he's she's dad mum mom son daughter kid kids brother sister gran grandad granddad wife "
                    "husband he'd she'd girl boy mother father guy man woman who".split())  # fmt: skip
AGED = frozenset("aged age ageing aging barrel barrels cask casks tank oak wood cellar hung matured maturing foudres "
                 "warehouse bottle foudre roast".split())  # fmt: skip
ALCOHOL = frozenset("wine beer cider perry spirit spirits whisky whiskey rum gin mezcal tequila sake brandy mead vermouth port "
                    "sherry liqueur agave stout ale ales lager lagers vodka cognac drinks wines beers ciders saison".split())  # fmt: skip
NO_ALCOHOL = frozenset("off polish polished malt malted wheat rye flour hydration extraction code discount sure moisture".split())
TURNS = frozenset("turn turned turning angle tilt tilted rotate corner outside weather morning dough every low out".split())
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
        self.plural = norms[end - 1].endswith("s")
        self.long_before = frozenset(norms[max(0, start - 45) : start])
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
    names = frozenset(i for m in hearing.mentions if m.kind in ("name", "ordinal") for i in range(m.start, m.end))
    measures = _joined_ranges(norms, [m for m in measures_of(norms) if m.unit or m.start not in names])
    alcoholic = not ALCOHOL.isdisjoint(hearing.sheet.category.lower().replace(",", " ").split())
    priced = list(_prices(norms, measures, names))
    taken = {a.start for a in priced}
    told = (_told(Surroundings(norms, measures, k, alcoholic)) for k, m in enumerate(measures) if m.start not in taken)
    return [*priced, *(a for a in told if a), *_boiling(norms, measures)]


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
        near = [m for m in measures if m.dimension in ("mass", "volume", "time") and -14 < m.start - i < 14] if norm == "boiling" else []
        if near or norm == "boiling" and norms[i + 1 : i + 2] == ["water"]:
            yield Amount(i, i + 1, "temperature", "boiling", None, "boiling water", 0.55)


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
    m, told = around.measure, _tell(around)
    return Amount(m.start, m.end, told[0], m.value, m.unit or None, told[1], told[2]) if told else None


Told = tuple[FactKind, str, float] | None


def _tell(around: Surroundings) -> Told:
    """Which fact the amount states, by the rule of its dimension."""
    if around.measure.dimension == "money":
        return None
    return {
        "mass": _tell_mass, "volume": _tell_volume, "count": _tell_count, "degree": _tell_degree,
        "time": _tell_time, "percent": _tell_percent, "bare": _tell_bare,
    }[around.measure.dimension](around)  # fmt: skip


def _tell_mass(around: Surroundings) -> Told:
    after = around.after
    if after[:1] == ("of",) and after[1:2] in (("water",), ("ice",), ("milk",)):
        return ("water", "a weight of water", 0.75) if after[1] != "milk" else None
    if after[:1] in (("each",), ("in",)) or after[:2] in (("of", "each"), ("of", "coffee"), ("of", "tea"), ("of", "leaf")):
        return "dose", "a weight in each", 0.75
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
    """Spoonfuls and scoops; drops only of something that is put in."""
    m = around.measure
    if m.unit == "drop":
        return ("dose", "so many drops", 0.5) if around.after[:1] == ("of",) and not around.close.isdisjoint(("put", "add", "added", "saline", "with")) else None
    put = around.beside("volume", 12) or not around.wide.isdisjoint(("scoops", "dose", "doing", "put", "water", "each", "off"))
    return ("dose", "a spoonful", 0.6) if put else None


def _tell_degree(around: Surroundings) -> Told:
    return ("temperature", "degrees", 0.8) if around.close.isdisjoint(TURNS) else None


def _tell_time(around: Surroundings) -> Told:
    m = around.measure
    if "old" in around.after[:2]:
        return ("age", "so old", 0.7) if around.close.isdisjoint(PERSONS) and (around.plural or m.value == 1) else None
    if not around.close.isdisjoint(STORY):
        return None
    if m.unit in ("month", "year", "week") and not around.close.isdisjoint(AGED | LEFT):
        return "age", "kept so long", 0.65
    if m.unit == "day" and "roast" in around.after[:3]:
        return "age", "so long off roast", 0.65
    if m.unit in ("month", "year", "week") and "old" in around.long_before and around.close.isdisjoint(PERSONS | CHATTED):
        return "age", "an age after another", 0.5
    if m.unit in DAYS:
        return ("time", "left so long", 0.5) if not around.close.isdisjoint(LEFT) else None
    if not around.close.isdisjoint(CHATTED) or m.value == 1 and m.unit in ("minute", "second"):
        return None
    if around.beside("degree", 12) or around.beside("mass", 14) or around.beside("volume", 14):
        return "time", "a time beside a dose or a temperature", 0.75
    if not around.close.isdisjoint(STEEPED | LEFT):
        return "time", "a time of brewing or resting", 0.6
    precise = m.unit == "second" and isinstance(m.value, int | float) and m.value >= 10
    return ("time", "a time near brewing", 0.5) if precise or not around.wide.isdisjoint(BREWED) else None


def _tell_percent(around: Surroundings) -> Told:
    named = not around.close.isdisjoint(("alcohol", "abv", "volume", "proof"))
    other = not around.close.isdisjoint(NO_ALCOHOL) or isinstance(around.measure.value, int) and around.measure.value > 75
    return ("abv", "percent of alcohol", 0.8) if named or around.alcoholic and not other else None


def _tell_bare(around: Surroundings) -> Told:
    m, before = around.measure, around.before
    decimal = isinstance(m.value, float) and not float(m.value).is_integer() and 2 < m.value < 75
    if around.alcoholic and decimal and around.close.isdisjoint(SCORES) and around.after[:1] != ("out",):
        return "abv", "a decimal number in a tasting of alcohol", 0.6
    heated = not HEATED.isdisjoint(before[-6:]) and 30 <= m.number.plain <= 500
    if before[-1:] in (("at",), ("to",)) and heated:
        return "temperature", "water or an oven at so many", 0.65
    return None


SCORES = frozenset("give gives giving score speed out stars ten go guess seven".split())
HEATED = frozenset("water kettle bake baked baking oven steamed steam charge heat heated warm warmed it's".split())
