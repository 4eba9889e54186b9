"""What each sign counts for and against each kind of fact: fitted on annotated talk, whole recordings held out."""

# fmt: off
START: dict[str, float] = {
    "price": 0.0, "net_weight": 0.0, "dose": -0.8, "water": -3.5, "temperature": -1.5, "time": 0.0, "age": 0.0,
    "abv": 0.0, "origin": 0.0, "cultivar": 0.0, "process": 0.0, "harvest": 0.0,
}
WEIGHTS: dict[str, dict[str, float]] = {
    "price": {
        "told a number said as a price": 2.4, "told price": 1.1, "after was": 1.0, "before for": 0.9, "of one": 0.8,
        "soon before volume": 0.8, "after 's": 0.7, "close after bare": 0.6, "before .": 0.5, "pricing": 0.5,
        "steeped": 0.5, "all": 0.4, "close after money": 0.4, "close after percent": 0.4, "hundreds": 0.4,
        "pricing about": 0.4, "close after volume": 0.3, "fraction": 0.3, "making about": 0.3, "perceived about": 0.3,
        "reading about": 0.3, "fifth 2": 0.2, "money": 0.2, "packs about": 0.2, "close before bare": 0.1,
        "named about": 0.1, "named close": 0.1, "revealed about": 0.1, "soon after money": 0.1, "unit pence": 0.1,
        "fifth 4": -0.1, "perceived far": -0.1, "told abv": -0.1, "persons": -0.2,
        "told a decimal number in a tasting of alcohol": -0.2, "unit dollar": -0.2,
        "before the first perception": -0.3, "chat": -0.3, "own company 0": -0.3, "fives": -0.4, "unit quid": -0.4,
        "not": -0.5, "soon before money": -0.5, "unit ": -0.5, "named far": -0.6, "unit buck": -0.6,
        "company 0": -0.9, "before a noun": -1.0, "spending": -1.1, "named not": -1.3, "bare": -1.6,
        "said before": -2.1,
    },
    "net_weight": {
        "told net_weight": 1.6, "hundreds": 1.3, "after the": 1.0, "after for": 0.8, "company 2": 0.8, "stated": 0.6,
        "told a number beside a price": 0.5, "fives": 0.4, "before a word": 0.3, "pricing about": 0.2,
        "to a hundred": 0.2, "below one": 0.1, "close before money": 0.1, "soon after bare": 0.1,
        "soon before bare": 0.1, "before for": -0.1, "close before bare": -0.1, "spending": -0.1, "unit mil": -0.1,
        "named not": -0.2, "own company 0": -0.2, "soon before time": -0.2, "told water": -0.2, "after a word": -0.3,
        "perceived not": -0.4, "to twenty": -0.4, "revealed not": -0.5, "told a weight near a price or a pack": -0.5,
        "a few": -0.7, "before of": -0.7, "hundreds currency": -0.7, "said before": -0.7, "brewing about": -1.3,
        "company 0": -1.5, "unit ": -1.7, "bare": -1.9, "one": -1.9,
    },
    "dose": {
        "unit gram": 2.7, "told dose": 2.3, "unit mil": 1.4, "told a volume poured": 1.1,
        "before the first perception": 0.6, "making about": 0.2, "close before bare": 0.1, "method company 0": -0.1,
        "stated": -0.1, "told a weight beside a price or a pack": -0.1, "before a word": -0.2,
        "soon before bare": -0.2, "fifth 2": -0.3, "fifth 4": -0.3, "no alcohol": -0.4, "named not": -0.5,
        "perceived far": -0.5, "told net_weight": -0.5, "pricing about": -0.8, "after for": -0.9, "bare": -1.1,
        "hundreds": -1.2, "own company 0": -1.5, "unit ": -1.6,
    },
    "water": {
        "told water": 1.8, "hundreds": 1.5, "close after mass": 1.0, "steeped": 0.7, "brewing": 0.5,
        "brewing about": 0.5, "fifth 0": 0.3, "before of": 0.2, "after ,": 0.1, "fives": 0.1, "soon after bare": 0.1,
        "fifth 3": -0.1, "hundreds currency": -0.2, "persons": -0.3, "a few": -0.7, "stated": -0.7,
        "pricing about": -0.8, "to twenty": -1.0, "method company 0": -1.8,
    },
    "temperature": {
        "told temperature": 3.3, "close before time": 1.3, "to a hundred": 1.2, "brewing about": 1.1, "after to": 0.7,
        "reading about": 0.7, "brewing": 0.5, "before the first perception": 0.3, "all": 0.2, "fifth 0": 0.2,
        "perceived far": 0.2, "soon after volume": 0.2, "before a noun": -0.1, "fifth 4": -0.1, "named not": -0.1,
        "packs about": -0.1, "said before": -0.1, "bare": -0.2, "making about": -0.2, "after a word": -0.3,
        "close before bare": -0.3, "fifth 2": -0.3, "hundreds": -0.3, "told no kind": -0.3, "small currency": -0.5,
        "told an amount in its place": -0.6, "no alcohol": -0.9, "a few": -1.5, "method company 0": -1.5,
    },
    "time": {
        "told time": 1.5, "unit minute": 1.5, "close after degree": 0.9, "unit second": 0.9, "brewing about": 0.7,
        "told a time beside a dose or a temperature": 0.7, "before ,": 0.6, "fifth 0": 0.6, "after 's": 0.5,
        "before and": 0.4, "before .": 0.3, "close after mass": 0.3, "unit hour": 0.3, "after ,": 0.2,
        "close before bare": 0.2, "perceived about": 0.2, "scores": 0.2, "a few": 0.1, "close after bare": 0.1,
        "perceived far": 0.1, "small currency": 0.1, "after at": -0.1, "close before mass": -0.1, "named near": -0.1,
        "not": -0.1, "persons": -0.1, "soon after bare": -0.1, "story": -0.1, "after in": -0.2, "chat": -0.2,
        "fifth 4": -0.2, "perceived close": -0.2, "one": -0.3, "bare": -0.4, "someone does": -0.4, "named not": -0.5,
        "perceived not": -0.5, "before a noun": -0.7, "of alcohol": -0.9, "unit ": -0.9, "unit year": -0.9,
        "method company 0": -1.0, "own company 0": -1.8, "said before": -1.8,
    },
    "age": {
        "told age": 3.2, "unit year": 0.7, "all": 0.6, "other percent": 0.4, "to twenty": 0.4,
        "close before percent": 0.3, "fifth 0": 0.1, "soon after bare": 0.1, "unit day": 0.1, "no alcohol": -0.1,
        "perceived far": -0.1, "persons": -0.2, "hundreds currency": -0.3, "own company 0": -0.3,
        "before a word": -0.4, "soon before bare": -0.4, "one": -0.5, "method company 0": -0.6, "packs about": -0.6,
        "before in": -0.7, "named far": -0.7, "said before": -0.8, "unit minute": -0.8, "revealed not": -0.9,
        "company 0": -1.0, "named not": -1.3,
    },
    "abv": {
        "fraction": 2.5, "told abv": 1.7, "company 3": 0.8, "making about": 0.3, "scores": 0.2, "named not": -0.2,
        "soon after bare": -0.4, "unit ": -0.5, "said before": -0.6, "told an amount in its place": -0.6,
        "close after bare": -0.7, "revealed not": -0.8, "told no kind": -0.8, "bare": -0.9, "company 0": -0.9,
        "fives": -1.0, "no alcohol": -2.0,
    },
    "origin": {
        "a known origin": 0.8, "making": 0.6, "stated": 0.5, "before ,": 0.4, "company 2": 0.4, "1 words": 0.3,
        "perceived not": 0.3, "named close": 0.2, "made": 0.1, "making about": 0.1, "named far": -0.2,
        "pricing about": -0.3, "in a name": -0.4, "revealed not": -0.9, "after the": -1.5, "company 0": -1.5,
    },
    "cultivar": {
        "making about": 1.0, "before and": 0.5, "company 2": 0.1, "perceived far": 0.1, "after the": -0.3,
        "tag NN": -0.5, "company 0": -1.7,
    },
    "process": {
        "brewing about": 0.9, "company 1": 0.5, "stated": 0.5, "made so": 0.4, "before ,": 0.3, "perceived not": 0.3,
        "reading about": 0.2, "tag NNS": 0.2, "fifth 4": 0.1, "made": 0.1, "named close": 0.1, "others": -0.1,
        "1 words": -0.2, "someone does": -0.2, "sort descriptor": -0.2, "spending": -0.2, "fifth 0": -0.4,
        "making": -0.4, "persons": -0.7, "done at home": -0.8, "company 0": -1.9,
    },
    "harvest": {
        "picked": 3.1, "after of": 0.6, "a year": 0.5, "made": 0.3, "named about": 0.1, "before a word": -0.1,
        "scores": -0.3, "named not": -0.4, "1 words": -0.5, "after in": -0.5, "company 0": -2.8,
    },
}
