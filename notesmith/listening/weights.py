"""How much each sign counts for or against a description's being a perception, in log odds.

Fitted once by logistic regression on annotated recordings, with whole recordings held out to choose the signs,
and rounded. The signs are of place and kind, never of particular words.
"""

START = -1.0
WEIGHTS: dict[str, float] = {
    "a measure of": 1.3, "density 12": 0.9, "density 11": 0.9, "density 8": 0.9, "density 9": 0.8, "likened to": 0.8,
    "plain": 0.8, "density 10": 0.7, "guarded adjective": 0.7, "before a carrying word": 0.7, "density 7": 0.7,
    "under floral": 0.7, "noun": 0.7, "like": 0.6, "sensing word": 0.6, "lexicon": 0.6, "under colour": 0.6,
    "getting it": 0.5, "guarded participle": 0.5, "density 6": 0.5, "it is": 0.5, "plain participle": 0.5,
    "under woody": 0.4, "set beside": 0.4, "under nutty": 0.4, "plain adjective": 0.4, "short clause": 0.4,
    "under spicy": 0.4, "under sweet-things": 0.4, "tastes or smells of": 0.3, "plain other word": 0.3,
    "3 words": 0.3, "under herbal": 0.3, "under chemical": 0.3, "under fruity": 0.3, "under smoky-burnt": 0.3,
    "density 5": 0.3, "is the clause": 0.2, "under cereal": 0.2, "under mouthfeel": 0.2, "comparative": 0.2,
    "under marine": 0.2, "guarded comparative": 0.2, "under taste": 0.2, "plain verb": 0.1, "verb": 0.1,
    "under appearance-quality": 0.1, "derived": -0.1, "adverb": -0.1, "elsewhere": -0.2, "guarded": -0.2,
    "guarded noun": -0.2, "guarded adverb": -0.2, "under animal": -0.2, "after a noun": -0.2, "participle": -0.2,
    "under mineral": -0.2, "2 words": -0.3, "doing": -0.3, "plain noun": -0.3, "plain superlative": -0.3,
    "density 4": -0.4, "under roasted": -0.4, "listed beside another": -0.4, "guarded superlative": -0.4,
    "under savoury-things": -0.4, "a verb's label": -0.4, "under fabric": -0.4, "under overall-quality": -0.4,
    "other word": -0.5, "under baked": -0.5, "1 words": -0.6, "after a verb": -0.6, "is": -0.7, "others": -0.7,
    "superlative": -0.7, "guarded other word": -0.8, "density 3": -0.8, "under place": -0.8, "question": -0.9,
    "under fermented": -0.9, "past": -1.0, "open": -1.2, "names the product": -1.3, "density 2": -1.3,
    "after a preposition": -1.3, "density 1": -1.9, "density 0": -2.0,
}  # fmt: skip
