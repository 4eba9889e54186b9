"""How much each sign counts for or against a description's being a perception, in log odds.

Fitted once by logistic regression on annotated recordings, with whole recordings held out to choose the signs, and rounded.
The signs are of place and kind, never of particular words.
"""

START = -1.1
WEIGHTS: dict[str, float] = {
    "density 12": 1.0, "density 11": 0.9, "a measure of": 0.9, "density 8": 0.9, "density 9": 0.8, "likened to": 0.8,
    "density 10": 0.8, "density 7": 0.7, "guarded adjective": 0.7, "plain": 0.7, "under floral": 0.7, "like": 0.6,
    "sensing word": 0.6, "before a carrying word": 0.6, "noun": 0.6, "under colour": 0.6, "getting it": 0.5,
    "it is": 0.5, "density 6": 0.5, "lexicon": 0.5, "guarded participle": 0.4, "set beside": 0.4,
    "short clause": 0.4, "plain participle": 0.4, "plain adjective": 0.4, "is the clause": 0.4, "under spicy": 0.3,
    "under sweet-things": 0.3, "under woody": 0.3, "under nutty": 0.3, "plain other word": 0.3,
    "under smoky-burnt": 0.3, "under fruity": 0.3, "under herbal": 0.3, "guarded comparative": 0.2,
    "under chemical": 0.2, "under marine": 0.2, "density 5": 0.2, "plain adverb": 0.2, "tastes or smells of": 0.2,
    "begins the clause": 0.2, "adjective": 0.1, "3 words": 0.1, "under mouthfeel": 0.1, "under cereal": 0.1,
    "under taste": 0.1, "a verb's label": -0.1, "elsewhere": -0.1, "plain noun": -0.1, "derived": -0.1,
    "under animal": -0.1, "comparative": -0.2, "verb": -0.2, "under mineral": -0.2, "guarded": -0.2,
    "plain superlative": -0.2, "2 words": -0.2, "under roasted": -0.3, "guarded verb": -0.3, "after a noun": -0.3,
    "guarded adverb": -0.3, "guarded superlative": -0.3, "under savoury-things": -0.3, "other word": -0.4,
    "doing": -0.4, "under fabric": -0.4, "under overall-quality": -0.4, "plain comparative": -0.4, "1 words": -0.5,
    "density 4": -0.5, "listed beside another": -0.5, "superlative": -0.5, "after a verb": -0.5, "under baked": -0.6,
    "guarded other word": -0.7, "under place": -0.7, "others": -0.8, "is": -0.8, "question": -0.8,
    "under fermented": -0.8, "density 3": -0.8, "than after it": -0.9, "past": -1.0, "open": -1.0,
    "names the product": -1.2, "density 2": -1.3, "after a preposition": -1.3, "density 1": -1.9, "density 0": -1.9,
}  # fmt: skip
