"""A tasting sheet proposed from the talk alone."""

import re
from collections import Counter, defaultdict
from collections.abc import Iterable, Iterator, Mapping, Sequence
from itertools import pairwise

from notesmith.lexicon import Lexicon
from notesmith.listening.calling import CALLED, find_bare, find_called, find_proper_names, name_after
from notesmith.listening.naming import Key, Naming, Said, Series, Sign, find_namings, said_words
from notesmith.listening.vocabulary import CONTAINERS, GRADERS, LOW
from notesmith.records import Sheet, SheetPreparation, SheetSample
from notesmith.sheet import COMMON_WORDS, POINTING_WORDS
from notesmith.transcript import Talk

Signs = Counter[Sign]
Named = dict[Key, Signs]
CODES: tuple[Series, ...] = ("letter", "number", "colour", "place", "day")
# By these somebody introduces or singles out; the others are said of any subject too.
TELLING: tuple[Sign, ...] = ("carried", "introduced", "set against", "called", "with article")
ENOUGH = 4  # namings by which a row of codes is believed
SURE = 4  # times that a product is pointed at
RARE = 4  # a code said so many times more seldom than another is none
REACH = 12  # words from a code to what it is called
# What a tasting talks about that is no sample.
NAMELESS = COMMON_WORDS | POINTING_WORDS | GRADERS | frozenset(CONTAINERS) | frozenset(
    "guy new old big tall short long hot cold warm empty young cheap expensive day end point way time mouth tongue "
    "nose water bread pretty kettle price word idea problem question trick result bottom top side lid bench table "
    "timer mine phone dog cat light house people man woman kid weather rest only first".split()
)  # fmt: skip
PRODUCTS = frozenset(
    "tea oolong puer coffee espresso wine beer cider perry mead sake whisky whiskey rum gin mezcal tequila brandy "
    "stout chocolate cheese honey oil vinegar jam ham soda juice".split()
)
SEVERAL = {**{f"{word}s": word for word in PRODUCTS}, "whiskies": "whisky", "brandies": "brandy"}
POINTS = frozenset("the this that these my our of more first second next each".split())
BLIND = re.compile(
    r"\b(?:blind|blindfold\w*|(?:which is|which was|which's) which|what's what|who's who|n't know (?:which|what)"
    r"|(?:an|the) envelope|slips?)\b", re.IGNORECASE,
)  # fmt: skip
OTHERS = re.compile(
    r"\b(?:the other|both|(?:the|a) (?:second|third|next|last) (?:one|cup|glass|bottle)"
    r"|(?:two|three|four|five|six) of)\b", re.IGNORECASE,
)  # fmt: skip
SELF = re.compile(r"\b(?:[Mm]y name is|[Mm]y name's|I'm|I am) ([A-Z][a-z]+)\b")
PEOPLES = frozenset("English Irish Scottish Welsh American Canadian Indian German French Italian Dutch".split())
UNNAMED = re.compile(r"(?:speaker|spk|unknown|voice|person|guest|host)[\s_-]*\w{0,3}", re.IGNORECASE)
# Preparations that are set against each other, and the words that tell of each (common practice, no source).
CONTRASTS = tuple(
    {name: re.compile(rf"\b(?:{words})\b", re.IGNORECASE) for name, words in contrast.items()}
    for contrast in (
        {"hot": "hot|warm", "cold": r"cold[ -]brew\w*|(?:from|out of) the fridge|iced|on ice"},
        {"plain": "without milk|no milk|plain|black", "milk": "with milk|in milk|the milk round|flat white"},
        {"neat": "neat|straight|by itself", "long": "with soda|highball|with tonic", "water": "drops? of water"},
        {"gongfu": "gong ?fu|gaiwan", "western": "western style|western|big pot|mug"},
        {"spoon": "(?:off|on) (?:a|the) spoon", "bread": "on (?:the )?bread"},
    )
)


def draft_from_talk(talk: Talk, lexicon: Lexicon) -> Sheet:
    """Propose samples, preparations and tasters from the talk.

    A sample is proposed where it is named twice and more, once of these where somebody introduces it or singles it
    out; where nothing is so named, one sample called 1 stands for whatever is tasted.
    """
    said = said_words(talk)
    namings = list(find_namings(said))
    samples, coded = _samples(said, namings, lexicon)
    if len(samples) == 1 and len(OTHERS.findall(talk.text)) > 1:
        samples = []  # what is said of the others would be noted of the one
    return Sheet(
        category=_category(said, lexicon),
        samples=tuple(samples) or (SheetSample(id="1"),),
        tasters=_tasters(talk),
        preparations=tuple(_preparations(talk.text)),
        blind=bool(samples) and len(BLIND.findall(talk.text)) > 1 - coded,
    )


def _samples(said: Sequence[Said], namings: Sequence[Naming], lexicon: Lexicon) -> tuple[list[SheetSample], bool]:
    """The samples, and whether they go by codes."""
    signs = _count(namings)
    codes = max((_series(signs, series) for series in CODES), key=_weight)
    names = _names(said, signs, lexicon)
    if _weight(codes) >= max(ENOUGH, _weight(names)):
        aliases = _called(said, [naming for naming in namings if naming.key in codes])
        return [SheetSample(id=" ".join(key), aliases=aliases.get(key, ())) for key in codes], True
    return [SheetSample(id=_printed(said, key)) for key in names], False


def _count(namings: Iterable[Naming]) -> dict[tuple[Series, Key], Signs]:
    signs: dict[tuple[Series, Key], Signs] = defaultdict(Counter)
    for naming in namings:
        signs[naming.series, naming.key][naming.sign] += 1
    return signs


def _weight(named: Named) -> int:
    return sum(signs.total() for signs in named.values())


def _series(signs: Mapping[tuple[Series, Key], Signs], series: Series) -> Named:
    """The codes of one series that are named twice and more; none where there is only one."""
    named = {key: found for (kind, key), found in signs.items() if kind == series and found.total() > 1}
    kept = {key: found for key, found in named.items() if found.total() > found["set against"]}
    if series == "number":
        kept = _counted(kept)
    if series == "place":
        kept = _places(kept)
    most = max((found.total() for found in kept.values()), default=0)
    kept = {key: found for key, found in kept.items() if series == "number" or found.total() * RARE > most}
    alone = any(found.total() > found["row"] for found in kept.values())
    return kept if len(kept) > 1 and alone else {}


def _places(named: Named) -> Named:
    """Places of two words (`back left`) where there are such; `right` without a left only begins sentences."""
    paired = {key: found for key, found in named.items() if len(key) > 1}
    return paired or (named if ("left",) in named else {})


def _counted(named: Named) -> Named:
    """Numbers from one to the highest that is named, or those with an article (`the ten is …`) where these are more.

    Numbers only ever counted in a row (`two, three cups`) name nothing.
    """
    numbers = sorted(int(key[0]) for key, found in named.items() if found.total() > found["row"])
    while numbers and len(numbers) * 3 < numbers[-1] * 2:
        numbers.pop()
    from_one: Named = {(str(n),): named.get((str(n),), Counter()) for n in range(1, max(numbers, default=0) + 1)}
    pointed = {key: found for key, found in named.items() if found["with article"] > 1}
    return max(pointed, from_one, key=_weight)


def _called(said: Sequence[Said], codes: Sequence[Naming]) -> dict[Key, tuple[str, ...]]:
    """What each code is said to be called (`number one is the one called …`); no name for two codes."""
    aliases: dict[Key, tuple[str, ...]] = {}
    for i, word in enumerate(said[:-1]):
        before = [naming for naming in codes if i - REACH < naming.at < i] if word.norm in CALLED else []
        name = name_after(said, i + 1) if before else ()
        if name and before[-1].key not in aliases and (" ".join(name),) not in aliases.values():
            aliases[before[-1].key] = (" ".join(name),)
    return aliases


def _names(said: Sequence[Said], signs: Mapping[tuple[Series, Key], Signs], lexicon: Lexicon) -> Named:
    """Names and things that stand for samples; of those that share a word, the surest kind."""
    names: Named = {}
    for key, found in _candidates(said, signs, lexicon):
        if not any(set(key) & set(other) for other in names):
            names[key] = found
    order = {word.norm: i for i, word in reversed(list(enumerate(said)))}
    return dict(sorted(names.items(), key=lambda item: order[item[0][0]]))


def _candidates(
    said: Sequence[Said], signs: Mapping[tuple[Series, Key], Signs], lexicon: Lexicon
) -> Iterator[tuple[Key, Signs]]:
    for (_, key), found in _count(find_proper_names(said)).items():
        if _names_a_product(key, found, lexicon):
            yield key, found
    for (_, key), found in _count(find_called(said)).items():
        yield key, found
    bare = {key: found for (_, key), found in _count(find_bare(said)).items() if _stands_alone(key, found, lexicon)}
    yield from bare.items() if len(bare) > 1 else ()
    for (series, key), found in signs.items():
        if series in ("thing", "colour") and _names_a_thing(key, found, lexicon):
            yield key, found


def _names_a_product(key: Key, found: Signs, lexicon: Lexicon) -> bool:
    """A name with a capital that is introduced, or has an article as no person has; the trade's own words oftener."""
    enough = 4 if lexicon.look_up(" ".join(key)) else 2
    told = sum(found[sign] for sign in TELLING)
    return found.total() > enough and told > (found.total() < 6)


def _stands_alone(key: Key, found: Signs, lexicon: Lexicon) -> bool:
    return (
        found["subject"] > 1
        and found.total() > 4
        and not set(key) & (NAMELESS - LOW)
        and lexicon.look_up(key[0]) is None
    )


def _names_a_thing(key: Key, found: Signs, lexicon: Lexicon) -> bool:
    """A thing that is introduced, stands in a row or is set against another, and is talked about on its own too."""
    if set(key) & NAMELESS:
        return False
    if found["carried"] > 2:
        return True
    label = lexicon.look_up(key[0])
    if label and lexicon.concepts[label.concept].sort == "descriptor":
        return False
    singled_out = found["row"] or found["introduced"] or found["set against"]
    return found.total() > 3 and singled_out > 0 and found.total() > found["row"]


def _printed(said: Sequence[Said], key: Key) -> str:
    """The name as it is printed most often."""
    n = len(key)
    forms = Counter(
        " ".join(word.printed for word in said[i : i + n])
        for i, word in enumerate(said)
        if word.norm == key[0] and tuple(w.norm for w in said[i : i + n]) == key
    )
    return min(forms, key=lambda form: (-forms[form], form))


def _category(said: Sequence[Said], lexicon: Lexicon) -> str:
    """The product most pointed at (`this tea`, `three teas`), with the word before it where both are a product too."""
    heads: Counter[str] = Counter()
    for before, word in pairwise(said):
        head = SEVERAL.get(word.norm, word.norm)
        if head in PRODUCTS and (word.norm in SEVERAL or before.norm in POINTS):
            heads[head] += 4 if word.norm in SEVERAL else 1
    best = min(heads, key=lambda head: (-heads[head], head), default="")
    if heads[best] < SURE:
        return ""
    pairs = Counter(f"{a.norm} {best}" for a, b in pairwise(said) if SEVERAL.get(b.norm, b.norm) == best)
    kinds = [pair for pair, times in pairs.most_common(3) if times > 2 and _is_product(pair, lexicon)]
    return kinds[0] if kinds else best


def _is_product(text: str, lexicon: Lexicon) -> bool:
    label = lexicon.look_up(text)
    return label is not None and lexicon.concepts[label.concept].sort == "product"


def _tasters(talk: Talk) -> tuple[str, ...]:
    """Who speaks, where the captions tell; else who says his own name."""
    speakers = dict.fromkeys(cue.speaker for cue in talk.cues if cue.speaker)
    if speakers:
        return tuple(speaker for speaker in speakers if not UNNAMED.fullmatch(speaker))
    own = dict.fromkeys(SELF.findall(talk.text.replace("’", "'")))
    return tuple(name for name in own if name.lower() not in talk.text and name not in PEOPLES)


def _preparations(text: str) -> Iterable[SheetPreparation]:
    """Preparations that are set against each other, each told of twice and more."""
    for contrast in CONTRASTS:
        told = [name for name, words in contrast.items() if len(words.findall(text)) > 1]
        if len(told) > 1:
            return [SheetPreparation(id=name) for name in told]
    return []
