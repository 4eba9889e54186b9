"""How much each sign speaks for each kind of section, in log odds, and what beginning another section costs.

Fitted by logistic regression on annotated recordings, with half of them held out to check, and rounded. The signs are
of place, of word class and of what the other questions found, never of particular words.
"""

KINDS: dict[str, dict[str, float]] = {
    "opening": {
        "first 60 s": 2.3, "first 90 s": 1.9, "first 40 s": 1.9, "first 150 s": 1.0, "always": 1.0, "first 20 s": 0.8,
        "greeting": 0.7, "perceived: aroma": 0.5, "people": 0.5, "you": 0.4, "3 or more after": -0.2,
        "perceived: flavour": -0.3, "name": -0.3, "looking": -0.3, "3 or more before": -0.3, "5 or more after": -0.4,
        "perceived: mouthfeel": -0.5, "after 0.5": -0.5, "1 or more before": -0.5, "stage tasting": -0.6,
        "1 or more after": -0.8, "after 0.25": -0.9, "sample named": -1.0,
    },
    "method": {
        "always": 2.4, "first 150 s": 1.5, "making": 1.3, "fact of making": 1.2, "stage appearance": 1.0,
        "leaving": 0.8, "alike": 0.8, "after 0.5": 0.5, "first 90 s": 0.4, "perceived: appearance": 0.3,
        "people": 0.3, "5 or more after": 0.3, "number": 0.2, "perceived: flavour": 0.1, "perceived: aroma": -0.2,
        "3 or more before": -0.3, "1 or more before": -0.3, "name": -0.4, "1 or more after": -0.4,
        "perceived: finish": -0.5, "last 200 s": -0.6, "after 0.75": -0.6, "perceived: overall": -0.7,
        "after 0.25": -1.4, "paying": -1.5,
    },
    "appearance": {
        "always": 2.1, "stage appearance": 1.3, "perceived: appearance": 1.3, "1 or more after": 1.3, "making": 0.7,
        "looking": 0.6, "1 or more before": 0.5, "name": -0.2, "after 0.5": -0.3, "choosing": -0.6,
        "after 0.25": -0.8, "perceived: flavour": -0.9, "after 0.75": -0.9,
    },
    "aroma": {
        "1 or more after": 1.5, "always": 1.4, "perceived: aroma": 1.1, "1 or more before": 0.9,
        "5 or more after": 0.7, "3 or more after": 0.7, "smelling": 0.5, "5 or more before": 0.5, "stage aroma": 0.4,
        "perceived: flavour": 0.4, "looking": 0.3, "stage appearance": -0.4, "number": -0.4, "past tense": -0.5,
        "choosing": -0.5, "perceived: mouthfeel": -0.6, "perceived: finish": -0.6, "alike": -0.6, "after 0.75": -0.6,
        "after 0.5": -0.8, "paying": -0.9, "first 90 s": -1.0, "last 200 s": -1.3,
    },
    "tasting": {
        "always": 2.2, "tasting": 0.9, "1 or more before": 0.7, "1 or more after": 0.7, "stage tasting": 0.6,
        "after 0.25": 0.6, "making": 0.5, "it is": 0.5, "3 or more before": 0.5, "perceived: mouthfeel": 0.3,
        "3 or more after": 0.3, "after 0.75": 0.2, "stage aroma": 0.1, "sample named": 0.1, "5 or more after": 0.1,
        "after 0.5": -0.3, "people": -0.4, "name": -0.4, "number": -0.5, "first 90 s": -0.6, "last 40 s": -0.8,
        "trade": -0.9, "paying": -1.1, "first 60 s": -1.1,
    },
    "comparison": {
        "setting beside": 1.6, "always": 1.3, "after 0.25": 0.9, "sample named": 0.8, "perceived: finish": 0.7,
        "last 200 s": 0.7, "after 0.75": 0.7, "perceived: flavour": 0.6, "another sample": 0.6, "choosing": 0.5,
        "3 or more after": 0.3, "people": -0.3, "past tense": -0.3, "name": -0.3, "making": -0.5, "reading": -0.6,
        "perceived: appearance": -0.6, "last 40 s": -0.6, "you": -0.7, "story": -0.7, "first 150 s": -0.7,
        "number": -0.8, "5 or more after": -0.8, "stage aroma": -0.9, "last 60 s": -1.3,
    },
    "verdict": {
        "sample named": 1.5, "ranking of all": 1.3, "ranking": 1.2, "last 200 s": 1.2, "after 0.75": 1.2,
        "last 90 s": 1.1, "choosing": 0.6, "vessel": 0.5, "comparative": 0.5, "after 0.5": 0.4, "it is": 0.3,
        "i": 0.3, "always": 0.1, "stage appearance": -0.2, "past tense": -0.3, "tasting": -0.4, "people": -0.4,
        "setting beside": -0.5, "first 90 s": -0.5, "stage aroma": -0.7, "3 or more before": -0.7,
        "1 or more after": -0.7, "first 150 s": -0.9, "5 or more after": -0.9, "price": -1.2,
    },
    "quoted": {
        "reading": 2.0, "perceived: finish": 1.5, "perceived: overall": 0.9, "always": 0.9, "1 or more after": 0.8,
        "last 40 s": 0.7, "setting beside": 0.6, "after 0.5": 0.6, "perceived: mouthfeel": 0.5, "past tense": 0.5,
        "last 200 s": 0.4, "5 or more before": 0.4, "3 or more before": 0.4, "perceived: flavour": 0.3, "name": 0.3,
        "after 0.25": 0.3, "5 or more after": 0.2, "making": -0.3, "stage aroma": -0.4, "stage appearance": -0.7,
        "first 150 s": -0.8, "it is": -1.0, "another sample": -1.0,
    },
    "reveal": {
        "reveal": 1.9, "after 0.75": 1.7, "last 200 s": 1.4, "reading": 1.2, "fact": 1.0, "name": 0.7,
        "3 or more after": 0.5, "number": 0.4, "i": 0.4, "always": 0.3, "paying": 0.2, "sample named": -0.2,
        "people": -0.3, "stage tasting": -0.4, "setting beside": -0.4, "looking": -0.4, "after 0.25": -0.4,
        "stage appearance": -0.5, "5 or more after": -0.5, "first 150 s": -0.7,
    },
    "background": {
        "always": 3.0, "stage tasting": 1.2, "past tense": 0.8, "after 0.25": 0.8, "stage appearance": 0.6,
        "stage aroma": 0.5, "people": 0.5, "vessel": -0.3, "perceived: flavour": -0.4, "last 90 s": -0.5, "i": -0.5,
        "after 0.75": -0.5, "3 or more after": -0.5, "comparative": -0.6, "after 0.5": -0.6, "5 or more after": -0.6,
        "sample named": -0.7, "ranking": -0.7,
    },
    "sponsor": {
        "promoting": 2.8, "always": 2.0, "thanking": 1.5, "after 0.25": 1.0, "perceived: mouthfeel": 0.8,
        "paying": 0.8, "you": 0.7, "people": 0.6, "after 0.5": 0.5, "1 or more after": -0.1,
        "perceived: flavour": -0.2, "it is": -0.3, "tasting": -0.4, "i": -0.4, "alike": -0.4,
        "1 or more before": -0.4, "sample named": -0.5, "perceived: finish": -0.5, "last 90 s": -0.5, "making": -0.6,
        "reading": -0.7, "last 200 s": -0.8, "3 or more after": -0.8, "after 0.75": -0.9,
    },
    "closing": {
        "last 40 s": 1.9, "last 60 s": 1.6, "last 20 s": 1.4, "last 90 s": 1.1, "always": 0.9, "last 200 s": 0.5,
        "alike": 0.4, "after 0.75": 0.4, "people": 0.3, "looking": -0.3, "it is": -0.3, "after 0.25": -0.3,
        "stage aroma": -0.4, "perceived: flavour": -0.4, "3 or more after": -0.5, "sample named": -0.6,
        "making": -0.6, "past tense": -0.7, "1 or more after": -0.9,
    },
}  # fmt: skip
OPENING: dict[str, float] = {
    "another cue": 3.5, "opens with okay": 1.3, "pause": 1.2, "two opening words": 1.1, "another speaker": 1.0,
    "goes on with which": 1.0, "opens with so": 0.9, "opens with right": 0.8, "revealing at once": 0.8,
    "long pause": 0.7, "short": 0.7, "opens with now": 0.5, "thanking at once": 0.5, "names a sample": 0.4,
    "opens with well": 0.4, "another sample": 0.3, "opens with back": 0.3, "opens with first": 0.3,
    "smelling at once": 0.3, "another stage": 0.2, "goes on with and": 0.2, "looking at once": 0.2,
    "points: this": 0.2, "after a stop": 0.1, "opens with anyway": -0.1, "ranking at once": -0.1,
    "tasting at once": -0.1, "goes on with but": -0.2, "leaving at once": -0.2, "points: all": -0.2,
    "points: other": -0.2, "reading at once": -0.2, "goes on with that": -0.3, "goes on with then": -0.3,
    "promoting at once": -0.4, "goes on with because": -0.5, "goes on with it": -0.5,
}  # fmt: skip
FOLLOWING: dict[str, dict[str, float]] = {
    "opening": {"method": 1.4, "appearance": -1.2, "aroma": -1.3, "tasting": -1.4, "verdict": -1.1, "closing": -1.0},
    "method": {"appearance": 1.2, "closing": -1.1},
    "appearance": {"aroma": 1.3, "verdict": -1.3, "background": -1.1},
    "aroma": {"comparison": -1.0, "verdict": -1.4, "quoted": -1.1, "closing": -1.3},
    "tasting": {"method": -1.1, "aroma": -1.4},
    "comparison": {"aroma": -1.0, "tasting": -1.3, "verdict": 1.4},
    "verdict": {"method": -1.1, "aroma": -1.3, "tasting": -1.4, "verdict": -1.1, "reveal": 1.4, "closing": 1.5},
    "quoted": {},
    "reveal": {"quoted": 1.2},
    "background": {"reveal": -1.2},
    "sponsor": {},
    "closing": {},
}  # fmt: skip
