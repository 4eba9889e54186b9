"""How much each sign speaks for each kind of section, in log odds, and what beginning another section costs.

Fitted by logistic regression on annotated recordings, most of it held out in turn to choose the signs, and rounded. The signs
are of place, of word class and of what the other questions found, never of particular words.
"""

KINDS: dict[str, dict[str, float]] = {
    "opening": {
        "first 60 s": 2.6, "first 90 s": 2.4, "first 40 s": 2.4, "perceived: aroma": 1.1, "first 150 s": 1.1,
        "always": 0.8, "you": 0.6, "perceived: flavour": -0.4, "after 0.5": -0.5, "5 or more after": -0.5,
        "3 or more before": -0.5, "1 or more before": -0.6, "stage tasting": -0.8, "perceived: mouthfeel": -1.0,
        "1 or more after": -1.0, "after 0.25": -1.1, "sample named": -1.6,
    },
    "method": {
        "always": 3.0, "fact of making": 2.1, "first 150 s": 1.6, "stage appearance": 1.3, "after 0.5": 1.2,
        "5 or more after": 1.2, "making": 1.0, "alike": 0.9, "perceived: appearance": 0.4, "perceived: aroma": -0.3,
        "1 or more after": -0.3, "1 or more before": -0.4, "last 200 s": -0.7, "perceived: finish": -0.8,
        "after 0.75": -0.9, "perceived: overall": -1.2, "after 0.25": -1.9,
    },
    "appearance": {
        "always": 2.4, "stage appearance": 1.7, "perceived: appearance": 1.6, "1 or more after": 1.6, "making": 1.0,
        "5 or more after": 1.0, "1 or more before": 0.6, "choosing": -0.7, "after 0.25": -0.9,
        "perceived: flavour": -1.0, "after 0.75": -1.3,
    },
    "aroma": {
        "1 or more after": 2.0, "5 or more after": 1.6, "perceived: aroma": 1.5, "always": 1.4,
        "3 or more before": 0.7, "3 or more after": 0.7, "1 or more before": 0.7, "perceived: flavour": 0.4,
        "ranking": -0.5, "past tense": -0.5, "alike": -0.7, "after 0.5": -0.7, "perceived: mouthfeel": -0.9,
        "first 90 s": -1.3, "paying": -1.5, "last 200 s": -2.1,
    },
    "tasting": {
        "always": 2.9, "5 or more after": 1.2, "tasting": 1.0, "1 or more after": 1.0, "3 or more before": 0.8,
        "1 or more before": 0.7, "making": 0.6, "it is": 0.5, "after 0.25": 0.5, "stage tasting": 0.4,
        "stage aroma": -0.2, "number": -0.6, "people": -0.7, "first 90 s": -0.9, "first 60 s": -1.6,
    },
    "comparison": {
        "setting beside": 1.6, "after 0.25": 1.5, "always": 1.2, "sample named": 0.9, "last 200 s": 0.8,
        "perceived: flavour": 0.7, "another sample": 0.7, "after 0.75": 0.7, "3 or more before": 0.5,
        "5 or more after": 0.1, "perceived: aroma": -0.2, "people": -0.7, "perceived: appearance": -0.8,
        "number": -0.8, "you": -0.9, "first 150 s": -1.1, "stage aroma": -1.2, "quoted": -1.2, "price": -1.3,
        "story": -1.4, "last 60 s": -1.8,
    },
    "verdict": {
        "ranking": 1.8, "last 90 s": 1.6, "ranking of all": 1.5, "last 200 s": 1.4, "sample named": 1.3,
        "after 0.75": 1.3, "after 0.25": 0.8, "vessel": 0.7, "comparative": 0.7, "always": 0.1, "past tense": -0.3,
        "5 or more after": -0.5, "tasting": -0.7, "people": -0.7, "stage aroma": -0.8, "1 or more after": -0.8,
        "first 90 s": -0.9, "3 or more before": -0.9, "first 150 s": -1.4, "price": -1.6,
    },
    "quoted": {
        "reading": 2.6, "perceived: finish": 1.7, "last 40 s": 1.4, "perceived: overall": 1.2, "always": 1.1,
        "1 or more after": 1.1, "after 0.5": 1.0, "5 or more after": 0.9, "3 or more before": 0.8,
        "setting beside": 0.6, "past tense": 0.6, "perceived: flavour": 0.5, "last 200 s": 0.4,
        "perceived: mouthfeel": 0.3, "ranking": -0.4, "stage appearance": -0.8, "it is": -1.0, "another sample": -1.2,
        "first 150 s": -1.4,
    },
    "reveal": {
        "reveal": 3.5, "after 0.75": 2.2, "last 200 s": 1.7, "reading": 1.5, "fact": 1.2, "3 or more after": 0.9,
        "i": 0.8, "name": 0.7, "number": 0.6, "stage tasting": -0.2, "always": -0.3, "after 0.25": -0.5,
        "sample named": -0.6, "stage appearance": -0.7, "first 150 s": -0.8, "perceived: overall": -1.0,
    },
    "background": {
        "always": 3.5, "stage tasting": 1.3, "stage appearance": 0.9, "past tense": 0.8, "after 0.25": 0.7,
        "stage aroma": 0.5, "after 0.5": -0.3, "perceived: flavour": -0.5, "i": -0.6, "comparative": -0.7,
        "sample named": -0.8, "after 0.75": -0.8,
    },
    "sponsor": {
        "promoting": 3.6, "always": 2.2, "thanking": 2.0, "perceived: mouthfeel": 1.3, "after 0.25": 1.3,
        "paying": 1.0, "after 0.5": 0.8, "you": 0.7, "first 150 s": 0.4, "people": 0.2, "ranking": -0.3,
        "it is": -0.4, "tasting": -0.5, "i": -0.5, "1 or more before": -0.5, "last 90 s": -0.6, "sample named": -0.7,
        "3 or more after": -0.7, "last 200 s": -0.8, "reading": -1.0, "perceived: finish": -1.0, "after 0.75": -1.3,
    },
    "closing": {
        "last 40 s": 2.3, "last 60 s": 2.2, "last 20 s": 1.6, "last 90 s": 1.5, "last 200 s": 0.8, "alike": 0.8,
        "always": 0.5, "people": 0.3, "after 0.25": -0.3, "perceived: flavour": -0.5, "sample named": -0.7,
        "stage aroma": -0.8, "past tense": -0.8, "making": -1.0, "1 or more after": -1.1,
    },
}  # fmt: skip
OPENING: dict[str, float] = {
    "another cue": 2.3, "opens with okay": 1.0, "pause": 0.9, "another speaker": 0.7, "opens with right": 0.7,
    "opens with so": 0.6, "revealing at once": 0.6, "two opening words": 0.6, "goes on with which": 0.5,
    "long pause": 0.5, "thanking at once": 0.4, "smelling at once": 0.3, "another sample": 0.2, "another stage": 0.2,
    "goes on with and": 0.2, "goes on with but": 0.2, "looking at once": 0.2, "names a sample": 0.2,
    "opens with back": 0.2, "opens with first": 0.2, "opens with now": 0.2, "opens with well": 0.2,
    "points: this": 0.2, "short": 0.2, "after a stop": 0.1, "opens with next": 0.1, "goes on with that": -0.1,
    "goes on with then": -0.1, "reading at once": -0.1, "tasting at once": -0.1, "leaving at once": -0.2,
    "points: all": -0.2, "points: other": -0.2, "promoting at once": -0.2, "ranking at once": -0.2,
    "goes on with it": -0.3, "goes on with because": -0.4, "always": -4.2,
}  # fmt: skip
FOLLOWING: dict[str, dict[str, float]] = {
    "opening": {"method": 1.0, "appearance": -0.9, "aroma": -0.9, "tasting": -1.0, "verdict": -0.8, "closing": -0.7},
    "method": {"appearance": 0.8, "closing": -0.8},
    "appearance": {"aroma": 1.0, "verdict": -0.9, "background": -0.8},
    "aroma": {"comparison": -0.7, "verdict": -1.0, "quoted": -0.8, "closing": -0.9},
    "tasting": {"method": -0.8, "aroma": -1.0},
    "comparison": {"aroma": -0.7, "tasting": -0.9, "verdict": 1.0},
    "verdict": {"method": -0.8, "aroma": -0.9, "tasting": -1.0, "verdict": -0.8, "reveal": 1.0, "closing": 1.1},
    "quoted": {},
    "reveal": {"quoted": 0.9},
    "background": {"reveal": -0.9},
    "sponsor": {},
    "closing": {},
}  # fmt: skip
