"""Regular English inflection, so that the data need list each word only once."""

import re

VOWELS = re.compile(r"[aeiouy]+")
NOT_ONE_WORD = re.compile(r"[^a-z]")
COMPARED_WITH_ER = re.compile(r"(y|le|ow|er)$")
SILENT_E = re.compile(r"([^aeioul]|[aeiou]l)e$|[^aeioutd]ed$")
SYLLABIC_LE = re.compile(r"[^aeiou]le$")
DROPPED_E = re.compile(r"[^eoy]e$")
CLOSED = re.compile(r"(^|[^aeiou]|qu)[aeiouy][bdfgklmnprtvz]$")

IRREGULAR_PLURALS = {"leaf": "leaves", "loaf": "loaves", "shelf": "shelves", "half": "halves", "calf": "calves",
                     "knife": "knives", "tomato": "tomatoes", "potato": "potatoes", "mango": "mangoes",
                     "foot": "feet", "tooth": "teeth", "goose": "geese", "mouse": "mice", "ox": "oxen"}  # fmt: skip
# Past tense and -ing form.
IRREGULAR_VERBS = {
    "bite": ("bit", "biting"), "bring": ("brought", "bringing"), "build": ("built", "building"),
    "burn": ("burnt", "burning"), "burst": ("burst", "bursting"), "catch": ("caught", "catching"),
    "cling": ("clung", "clinging"), "come": ("came", "coming"), "cut": ("cut", "cutting"),
    "fall": ("fell", "falling"), "hang": ("hung", "hanging"), "hit": ("hit", "hitting"),
    "hold": ("held", "holding"), "leave": ("left", "leaving"), "rise": ("rose", "rising"),
    "shine": ("shone", "shining"), "spread": ("spread", "spreading"), "stick": ("stuck", "sticking"),
    "sting": ("stung", "stinging"),
}  # fmt: skip
# Words that only look like the inflection of an adjective, and adverbs that tell how much rather than what.
MISLEADING = frozenset((
    "barely", "briefly", "business", "clearly", "closely", "corner", "deeply", "entirely", "evenly", "fairly",
    "freshly", "fully", "hardly", "harness", "heavily", "highly", "honestly", "hugely", "intensely",
    "largely", "lately", "lightly", "likely", "lowly", "matter", "mildly", "nearly", "newly", "number",
    "offer", "properly", "purely", "quickly", "rarely", "really", "roughly", "sharply", "shortly", "simply",
    "slightly", "slowly", "strongly", "suddenly", "supply", "totally", "truly", "under", "usually", "wholly",
    "witness", "wrongly",
))  # fmt: skip


def inflections(label: str, form: str) -> tuple[str, ...]:
    """Every regular inflection of a label, the label itself left out.

    >>> inflections("burnt cherry", "noun"), inflections("dry", "adjective"), inflections("grip", "verb")
    (('burnt cherries',), ('drier', 'driest', 'dryness', 'dryly'), ('grips', 'gripped', 'gripping'))
    >>> inflections("like wet stone", "phrase")
    ()
    """
    forms = _MAKERS[form](label) if form in _MAKERS else ()
    return tuple(text for text in forms if text != label and text not in MISLEADING)


def noun_forms(label: str) -> tuple[str, ...]:
    """The plural, unless the label seems to be one.

    >>> noun_forms("bay leaf"), noun_forms("peach"), noun_forms("old books"), noun_forms("grass")
    (('bay leaves',), ('peaches',), (), ('grasses',))
    """
    start = max(label.rfind(" "), label.rfind("-")) + 1
    last = label[start:]
    if last.endswith("s") and not last.endswith(("ss", "us", "is")):
        return ()
    return (label[:start] + plural(last),)


def plural(noun: str) -> str:
    """The regular plural of one noun, or the irregular one of a few that tasters use.

    >>> plural("lemon"), plural("cherry"), plural("tomato"), plural("honey")
    ('lemons', 'cherries', 'tomatoes', 'honeys')
    """
    if noun in IRREGULAR_PLURALS:
        return IRREGULAR_PLURALS[noun]
    return _with_s(noun)


def adjective_forms(label: str) -> tuple[str, ...]:
    """Comparison (of short adjectives), quality and manner of a one-word adjective.

    >>> adjective_forms("smoky"), adjective_forms("big"), adjective_forms("astringent"), adjective_forms("wine-like")
    (('smokier', 'smokiest', 'smokiness', 'smokily'), ('bigger', 'biggest', 'bigness', 'bigly'), ('astringently',), ())
    """
    if NOT_ONE_WORD.search(label):
        return ()
    compared = (_compared(label, "er"), _compared(label, "est")) if is_short(label) else ()
    named = (quality(label),) if syllables(label) < 3 or label.endswith("y") else ()
    return (*compared, *named, *manner(label))


def is_short(adjective: str) -> bool:
    """Whether the comparative is made with -er.

    >>> [word for word in ("dry", "smoky", "mellow", "floral", "baked", "red", "astringent") if is_short(word)]
    ['dry', 'smoky', 'mellow', 'red']
    """
    if adjective.endswith("ed") and len(adjective) > 3:
        return False
    count = syllables(adjective)
    return count == 1 or (count == 2 and bool(COMPARED_WITH_ER.search(adjective)))


def syllables(word: str) -> int:
    """How many syllables a word has, judged by its spelling.

    >>> [syllables(word) for word in ("big", "smoky", "simple", "stale", "savoury", "baked", "roasted")]
    [1, 2, 2, 1, 3, 1, 2]
    """
    groups = len(VOWELS.findall(word))
    silent = SILENT_E.search(word)
    return max(1, groups - bool(silent))


def quality(adjective: str) -> str:
    """The noun in -ness.

    >>> quality("smoky"), quality("dry"), quality("sweet"), quality("grey")
    ('smokiness', 'dryness', 'sweetness', 'greyness')
    """
    return _soft_y(adjective) + "ness"


def manner(adjective: str) -> tuple[str, ...]:
    """The adverb in -ly, where there is one.

    >>> manner("sweet"), manner("smoky"), manner("subtle"), manner("metallic"), manner("dull"), manner("lively")
    (('sweetly',), ('smokily',), ('subtly',), ('metallically',), ('dully',), ())
    """
    if adjective.endswith("ly"):
        return ()
    if SYLLABIC_LE.search(adjective):
        return (adjective[:-1] + "y",)
    if adjective.endswith("ic"):
        return (adjective + "ally",)
    return ((adjective[:-1] if adjective.endswith("ll") else _soft_y(adjective)) + "ly",)


def verb_forms(label: str) -> tuple[str, ...]:
    """Third person, past and -ing form of the label's first word, unless that is inflected already.

    >>> verb_forms("coat the mouth"), verb_forms("dry"), verb_forms("cling")
    (('coats the mouth', 'coated the mouth', 'coating the mouth'), ('dries', 'dried', 'drying'), ('clings', 'clung', 'clinging'))
    """  # noqa: E501
    verb, gap, rest = label.partition(" ")
    if verb.endswith("s") and not verb.endswith("ss"):
        return ()
    past, ing = IRREGULAR_VERBS.get(verb) or (_compared(verb, "ed"), _going(verb))
    return tuple(form + gap + rest for form in (_with_s(verb), past, ing))


def _with_s(word: str) -> str:
    if word.endswith(("s", "x", "z", "ch", "sh")):
        return word + "es"
    if _has_soft_y(word):
        return word[:-1] + "ies"
    return word + "s"


def _compared(word: str, ending: str) -> str:
    """The word with -er, -est or -ed: drier, paler, bigger."""
    if word.endswith("e"):
        return word[:-1] + ending
    if _has_soft_y(word):
        return word[:-1] + "i" + ending
    return _doubled(word) + ending


def _going(verb: str) -> str:
    return (verb[:-1] if DROPPED_E.search(verb) else _doubled(verb)) + "ing"


def _doubled(word: str) -> str:
    closed = CLOSED.search(word)
    return word + word[-1] if closed and syllables(word) == 1 else word


def _has_soft_y(word: str) -> bool:
    return word.endswith("y") and word[-2:-1] not in "aeiou"


def _soft_y(adjective: str) -> str:
    """Smoky becomes smoki- before an ending, but dry stays dry-."""
    return adjective[:-1] + "i" if _has_soft_y(adjective) and syllables(adjective) > 1 else adjective


_MAKERS = {"noun": noun_forms, "adjective": adjective_forms, "verb": verb_forms}
