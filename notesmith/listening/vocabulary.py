"""The small closed sets of words that several questions share: they grade, contain or evaluate, and name nothing."""

from notesmith.records import Facet

HIGH = frozenset(
    "very so really super huge massive massively heavy heavily loads lots tons incredibly extremely intensely intense "
    "hugely proper properly too way absolutely completely totally seriously dead wildly strongly strong big "
    "ridiculously insanely ever full deeply plenty crazy bags buckets heaps packed bursting dominant powerful total "
    "pure".split()
)
LOW = frozenset(
    "hint hints touch slight slightly little bit faint faintly whisper trace traces suggestion barely hardly scarcely "
    "mild mildly subtle subtly whiff tad fraction edge tinge ghost shade smidge smidgen dash dusting lick background "
    "small tiny wee scant softly lightly gently sliver mere spot teeny shadow smattering".split()
)
MIDDLE = frozenset(
    "quite pretty fairly rather kind sort kinda sorta almost nearly just only more less some any also still again "
    "actually definitely certainly maybe perhaps possibly probably now then even real well mostly mainly sweetly "
    "particularly noticeably clearly obviously suddenly immediately".split()
)
LIKING = frozenset(
    "nice lovely good great beautiful gorgeous delicious amazing wonderful brilliant fantastic perfect excellent "
    "horrible awful terrible bad weird strange odd interesting funny pleasant unpleasant decent fine okay ok cool "
    "incredible stunning superb tasty yummy yucky disgusting gross fabulous favourite favorite best better worse "
    "worst ordinary normal usual typical certain particular same different whole other another such own right main "
    "first last second third next new".split()
)
GRADERS = HIGH | LOW | MIDDLE | LIKING
DETERMINERS = frozenset(
    "a an the some any that this these those my your its his her our their no all every each".split()
)
FILLERS = frozenset("um uh er erm hmm mm ah oh like you know i mean well sort kind of , what sorta kinda".split())
# Heads that only carry what is said of them: `a smoky aftertaste` is about smoke, in the finish.
_CARRYING: dict[Facet | None, str] = {
    None: "note notes hint hints taste tastes flavour flavor flavours flavors thing things character quality element "
    "edge side tone tones undertone undertones overtone overtones vibe undercurrent profile sensation feeling feel "
    "palate mouth sip sort kind kick bite",
    "aroma": "aroma aromas smell smells nose scent bouquet perfume fragrance whiff sniff",
    "finish": "finish aftertaste ending tail end length",
    "mouthfeel": "mouthfeel texture body weight grip tannins",
    "appearance": "colour color hue liquor look appearance leaf leaves crema foam rim robe",
}
CONTAINERS = {word: facet for facet, words in _CARRYING.items() for word in words.split()}
BE = frozenset("is 's was are were be been being 're ai".split())
NEGATORS = frozenset(
    "no not n't nt never none neither nor without nothing zero cannot lacks lack lacking missing".split()
)
NOUNS = frozenset(["NN", "NNS", "NNP", "NNPS"])
ADJECTIVES = frozenset(["JJ", "JJR", "JJS", "VBN", "VBG"])
