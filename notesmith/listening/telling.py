"""Which fact an amount states: its unit decides first; where that leaves two readings, the words around it do."""

from collections.abc import Callable, Iterable, Sequence

from notesmith.listening.measures import Dimension, Measure
from notesmith.records import FactKind

Told = tuple[FactKind, str, float] | None  # the kind of fact, the rule that tells it, and how sure it is

BREWING = frozenset(
    "brew brewed brewing steep steeped steeping steeps infuse infused infusion water kettle boil boiled boiling "
    "pour poured pouring bloom drawdown gaiwan pot teapot ratio dose ice scoop scooped weigh weighed scale scales "
    "cooled rinse whisk whisked sieve sift sifted bowl bowls cup cups each chilled fridge timer draw drew shot "
    "grinder grind cupping celsius fahrenheit degrees degree mug mugs oven bake baked "
    "toasted warm milk hot cold".split()
)
STEEPED = frozenset(
    "steep steeped steeping brew brewed brewing infuse infused infusion water timer kettle degrees degree pot "
    "gaiwan boiling grams gram bloom shot pour poured wants go".split()
)
LEFT = frozenset(
    "sat sitting sit stood standing rest rested resting left leave leaves leaving cooled cooling out soak soaked "
    "overnight withered wither dried fermented ferment oven bake baked fridge freezer salt conch conched poured".split()
)
PACKS = frozenset(
    "bag bags tin tins bottle bottles box pack packs packet packets bar jar jars can cake pouch sack loaf wheel "
    "tray carton brick tub size".split()
)
PRICING = frozenset(
    "price prices priced cost costs costing paid pay pays expensive cheap cheaper dear dearer worth spend spent "
    "sell sells selling sold charge charges charged bought buy store shop shelf sticker".split()
)
STORY = frozenset(
    "ago later minute's drive drove driving walk walked bus train flight queue queued wait waited married lived "
    "living worked holiday customs travel travelled".split()
)
CHATTED = frozenset(
    "every once channel episode video session talking talked speech meeting phone podcast recording school "
    "concert longer back until till late early give given moment".split()
)
WAITING = frozenset("sat sit stood stand sitting standing".split())
BREWED = frozenset(
    "steep steeped steeping brew brewed brewing infuse infused infusion timer kettle boiling bloom shot gaiwan "
    "teapot".split()
)
PERSONS = frozenset(
    "i he she i'm he's she's dad mum mom son daughter kid kids brother sister gran grandad granddad wife husband "
    "he'd she'd girl boy mother father guy man woman who".split()
)
AGED = frozenset(
    "aged age ageing aging barrel barrels cask casks tank oak wood cellar hung matured maturing foudres warehouse "
    "bottle foudre roast".split()
)
NO_ALCOHOL = frozenset(
    "off polish polished malt malted wheat rye flour hydration extraction code discount sure moisture".split()
)
TURNS = frozenset(
    "turn turned turning angle tilt tilted rotate corner outside weather morning dough every low out".split()
)
DAYS = frozenset("day week month year fortnight".split())

OF_EACH = (("of", "each"), ("of", "coffee"), ("of", "tea"), ("of", "leaf"))
REACH = 14  # words either side that are the surroundings of an amount
SCORES = frozenset("give gives giving score speed out stars ten go guess seven".split())
HEATED = frozenset("water kettle bake baked baking oven steamed steam charge heat heated warm warmed it's".split())


class Surroundings:
    """The words around one amount, and the amounts before and after it."""

    def __init__(self, norms: Sequence[str], measures: Sequence[Measure], k: int, alcoholic: bool) -> None:
        self.measure = measures[k]
        self.alcoholic = alcoholic
        start, end = self.measure.start, self.measure.end
        self.wide = frozenset(norms[max(0, start - REACH) : end + REACH])
        self.stands = start > 0 and norms[start - 1] in (".", ",", ";")  # begins a phrase of its own
        self.plural = norms[end - 1].endswith("s")
        self.long_before = frozenset(norms[max(0, start - 45) : start])
        self.close = frozenset(norms[max(0, start - 5) : end + 4])
        self.before = _spoken(norms[max(0, start - 8) : start])
        self.after = _spoken(norms[end : end + 8])
        self.earlier = [m for m in measures[max(0, k - 4) : k] if start - m.end <= 2 * REACH]
        self.later = [m for m in measures[k + 1 : k + 4] if m.start - end <= REACH]

    def near(self, words: Iterable[str]) -> bool:
        """Whether one of the words stands among the wide surroundings."""
        return not self.wide.isdisjoint(words)

    def at_hand(self, words: Iterable[str]) -> bool:
        """Whether one of the words stands among the close surroundings."""
        return not self.close.isdisjoint(words)

    def packed(self) -> bool:
        """Whether a pack follows (`a ten ounce bag`)."""
        return not PACKS.isdisjoint(self.after[:2])

    def priced(self, reach: int) -> bool:
        """Whether money stands within so many words."""
        return self.beside("money", reach)

    def beside(self, dimension: str, reach: int) -> bool:
        """Whether an amount of the dimension stands within so many words."""
        m = self.measure
        return any(x.dimension == dimension and m.start - x.end <= reach for x in self.earlier) or any(
            x.dimension == dimension and x.start - m.end <= reach for x in self.later
        )


def _spoken(norms: Sequence[str]) -> tuple[str, ...]:
    return tuple(n for n in norms if n and n not in (",", "-", "uh", "um"))


def tell(around: Surroundings) -> Told:
    """Which fact the amount states, by the rules of its dimension; None where it is chat."""
    rules = RULES.get(around.measure.dimension)
    return rules(around) if rules else None


def _first(*readings: tuple[bool, Told]) -> Told:
    """The first reading whose sign is there."""
    return next((told for there, told in readings if there), None)


def _tell_mass(around: Surroundings) -> Told:
    after = around.after
    return _first(
        (after[:2] in (("of", "water"), ("of", "ice")), ("water", "a weight of water", 0.75)),
        (after[:2] == ("of", "milk"), None),
        (after[:1] in (("each",), ("in",)) or after[:2] in OF_EACH, ("dose", "a weight in each", 0.75)),
        (around.priced(4) or around.packed(), ("net_weight", "a weight beside a price or a pack", 0.8)),
        (
            around.near(("water", "brewing", "steep", "dose")) or around.beside("volume", 6),
            ("dose", "a weight beside water or brewing", 0.75),
        ),
        (
            around.priced(REACH) or around.near(PACKS | PRICING),
            ("net_weight", "a weight near a price or a pack", 0.6),
        ),
        (around.near(BREWING), ("dose", "a weight near brewing", 0.6)),
    )


def _tell_volume(around: Surroundings) -> Told:
    poured = around.at_hand(("each", "pour", "poured", "pouring", "glass", "glasses"))
    watery = around.at_hand(("water", "ice", "soda", "milk"))
    return _first(
        (around.priced(4) or around.packed(), ("net_weight", "a volume beside a price or a pack", 0.8)),
        (
            watery or around.beside("mass", 6) or around.beside("degree", 8),
            ("water", "a volume beside a dose or water", 0.75),
        ),
        (poured, ("dose", "a volume poured", 0.6)),
        (around.priced(REACH) or around.near(PACKS), ("net_weight", "a volume near a price or a pack", 0.6)),
        (around.near(STEEPED), ("water", "a volume near brewing", 0.5)),
    )


def _tell_count(around: Surroundings) -> Told:
    """Spoonfuls and scoops; drops only of something that is put in."""
    if around.measure.unit == "drop":
        added = around.after[:1] == ("of",) and around.at_hand(("put", "add", "added", "saline", "with"))
        return ("dose", "so many drops", 0.5) if added else None
    put = around.beside("volume", 12) or around.near(("scoops", "dose", "doing", "put", "water", "each", "off"))
    return ("dose", "a spoonful", 0.6) if put else None


def _tell_degree(around: Surroundings) -> Told:
    return None if around.at_hand(TURNS) else ("temperature", "degrees", 0.8)


def _tell_time(around: Surroundings) -> Told:
    m = around.measure
    waits = not WAITING.isdisjoint(around.before[-5:]) and not {"i", "he", "she", "we"}.isdisjoint(around.before[-6:])
    story, chat = (
        around.at_hand(STORY) or waits,
        around.at_hand(CHATTED) or (m.value == 1 and m.unit in ("minute", "second")),
    )
    aged = _tell_age(around)
    return _first(
        ("old" in around.after[:2] or (bool(aged) and not story), aged),
        (story, None),
        (m.unit in DAYS, ("time", "left so long", 0.5) if around.at_hand(LEFT) else None),
        (chat, None),
        (
            around.beside("degree", 12) or around.beside("mass", 14) or around.beside("volume", 14),
            ("time", "a time beside a dose or a temperature", 0.75),
        ),
        (around.at_hand(STEEPED | LEFT), ("time", "a time of brewing or resting", 0.6)),
        (around.near(BREWED) or (_is_precise(m) and around.stands), ("time", "a time near brewing", 0.5)),
    )


def _tell_age(around: Surroundings) -> Told:
    """An age of what is tasted: `five years old`, `ten months in oak`, `twelve days off roast`; not of a person."""
    m, of_person = around.measure, around.at_hand(PERSONS)
    long = m.unit in ("month", "year", "week")
    whole = around.plural or m.value == 1  # `a sixteen-year-old` is a person, or another bottle
    alone = around.stands and around.after[:1] in ((",",), (".",), ())
    return _first(
        (around.alcoholic and m.unit == "year" and alone and not of_person, ("age", "so many years", 0.6)),
        ("old" in around.after[:2], None if of_person or not whole else ("age", "so old", 0.7)),
        (long and around.at_hand(AGED | LEFT), ("age", "kept so long", 0.65)),
        (m.unit == "day" and "roast" in around.after[:3], ("age", "so long off roast", 0.65)),
        (
            long and "old" in around.long_before and not of_person and not around.at_hand(CHATTED),
            ("age", "an age after another", 0.5),
        ),
    )


def _is_precise(m: Measure) -> bool:
    """Seconds from ten up: nobody chats in them."""
    return m.unit == "second" and isinstance(m.value, int | float) and m.value >= 10


def _tell_percent(around: Surroundings) -> Told:
    value = around.measure.value
    named = around.at_hand(("alcohol", "abv", "volume", "proof"))
    other = around.at_hand(NO_ALCOHOL) or (isinstance(value, int) and value > 75)
    return ("abv", "percent of alcohol", 0.8) if named or (around.alcoholic and not other) else None


def _tell_bare(around: Surroundings) -> Told:
    m, before = around.measure, around.before
    decimal = isinstance(m.value, float) and not m.value.is_integer() and 2 < m.value < 75
    scored = around.at_hand(SCORES) or around.after[:1] == ("out",)
    heated = not HEATED.isdisjoint(before[-6:]) and 30 <= m.number.plain <= 500
    return _first(
        (around.alcoholic and decimal and not scored, ("abv", "a decimal number in a tasting of alcohol", 0.6)),
        (before[-1:] in (("at",), ("to",)) and heated, ("temperature", "water or an oven at so many", 0.65)),
    )


RULES: dict[Dimension, Callable[[Surroundings], Told]] = {
    "mass": _tell_mass,
    "volume": _tell_volume,
    "count": _tell_count,
    "degree": _tell_degree,
    "time": _tell_time,
    "percent": _tell_percent,
    "bare": _tell_bare,
}
