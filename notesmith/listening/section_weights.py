"""How much each sign speaks for each kind of section, in log odds, and what beginning another section costs.

Fitted by logistic regression on annotated recordings, with half of them held out to check, and rounded. The signs are
of place, of word class and of what the other questions found, never of particular words.
"""

KINDS: dict[str, dict[str, float]] = {
    "opening": {
        "first 60 s": 2.4, "first 90 s": 2.0, "first 40 s": 1.9, "first 150 s": 1.1, "always": 1.0, "first 20 s": 0.9,
        "greeting": 0.7, "perceived: aroma": 0.6, "you": 0.5, "people": 0.3, "name": -0.3, "looking": -0.3,
        "vessel": -0.4, "perceived: flavour": -0.4, "3 or more before": -0.4, "after 0.5": -0.5,
        "1 or more before": -0.5, "stage tasting": -0.6, "5 or more after": -0.6, "perceived: mouthfeel": -0.7,
        "after 0.25": -0.9, "1 or more after": -0.9, "sample named": -1.1,
    },
    "method": {
        "always": 2.8, "first 150 s": 1.5, "making": 1.3, "fact of making": 1.2, "stage appearance": 1.1,
        "leaving": 0.8, "alike": 0.8, "after 0.5": 0.6, "perceived: appearance": 0.5, "5 or more after": 0.4,
        "first 90 s": 0.3, "number": 0.2, "perceived: flavour": 0.1, "perceived: aroma": -0.3, "name": -0.3,
        "1 or more before": -0.4, "1 or more after": -0.4, "perceived: finish": -0.6, "last 200 s": -0.6,
        "comparative": -0.6, "after 0.75": -0.7, "perceived: overall": -0.8, "after 0.25": -1.5, "paying": -1.7,
    },
    "appearance": {
        "always": 2.4, "stage appearance": 1.4, "perceived: appearance": 1.4, "1 or more after": 1.3, "making": 0.7,
        "looking": 0.5, "1 or more before": 0.5, "name": -0.2, "i": -0.2, "after 0.5": -0.3, "first 60 s": -0.5,
        "choosing": -0.6, "after 0.25": -0.8, "perceived: flavour": -0.9, "after 0.75": -1.0,
    },
    "aroma": {
        "always": 1.4, "1 or more after": 1.4, "perceived: aroma": 1.1, "5 or more after": 0.7,
        "3 or more after": 0.7, "1 or more before": 0.7, "smelling": 0.6, "3 or more before": 0.5, "stage aroma": 0.4,
        "perceived: flavour": 0.4, "looking": 0.3, "5 or more before": 0.3, "sample named": 0.1, "last 90 s": -0.3,
        "after 0.75": -0.5, "perceived: finish": -0.6, "past tense": -0.6, "choosing": -0.6, "alike": -0.7,
        "perceived: mouthfeel": -0.9, "after 0.5": -0.9, "first 90 s": -1.1, "paying": -1.2, "last 200 s": -1.4,
    },
    "tasting": {
        "always": 2.5, "tasting": 0.9, "1 or more after": 0.8, "1 or more before": 0.7, "after 0.25": 0.6,
        "3 or more before": 0.6, "stage tasting": 0.5, "making": 0.5, "it is": 0.5, "sample named": 0.3,
        "3 or more after": 0.3, "after 0.75": 0.2, "5 or more after": 0.2, "stage aroma": -0.1, "name": -0.3,
        "after 0.5": -0.3, "people": -0.4, "another sample": -0.4, "number": -0.5, "first 90 s": -0.7,
        "last 40 s": -0.9, "trade": -1.0, "paying": -1.1, "first 60 s": -1.1,
    },
    "comparison": {
        "setting beside": 1.5, "always": 1.4, "after 0.25": 1.0, "sample named": 0.9, "perceived: finish": 0.8,
        "last 200 s": 0.7, "after 0.75": 0.7, "perceived: flavour": 0.6, "another sample": 0.4,
        "3 or more after": 0.3, "perceived: aroma": -0.3, "past tense": -0.3, "people": -0.4, "reading": -0.6,
        "making": -0.6, "last 40 s": -0.6, "perceived: appearance": -0.7, "number": -0.7, "you": -0.8, "story": -0.8,
        "quoted": -0.8, "first 150 s": -0.8, "5 or more after": -0.8, "stage aroma": -1.0, "last 60 s": -1.4,
    },
    "verdict": {
        "sample named": 1.5, "ranking of all": 1.3, "ranking": 1.3, "after 0.75": 1.3, "last 200 s": 1.2,
        "last 90 s": 1.1, "vessel": 0.6, "comparative": 0.6, "choosing": 0.5, "i": 0.4, "after 0.5": 0.4,
        "always": 0.2, "stage appearance": -0.1, "1 or more before": -0.2, "setting beside": -0.4, "past tense": -0.4,
        "tasting": -0.5, "people": -0.5, "first 90 s": -0.5, "3 or more before": -0.6, "stage aroma": -0.7,
        "5 or more after": -0.8, "1 or more after": -0.8, "first 150 s": -0.9, "price": -1.2,
    },
    "quoted": {
        "reading": 1.9, "perceived: finish": 1.5, "perceived: overall": 1.0, "always": 1.0, "1 or more after": 0.9,
        "last 40 s": 0.8, "setting beside": 0.6, "quoted": 0.5, "after 0.5": 0.5, "5 or more before": 0.5,
        "3 or more before": 0.5, "past tense": 0.4, "last 200 s": 0.4, "perceived: mouthfeel": 0.3,
        "perceived: flavour": 0.3, "name": 0.3, "after 0.25": 0.3, "5 or more after": 0.2, "stage aroma": -0.5,
        "stage appearance": -0.7, "it is": -0.9, "first 150 s": -0.9, "another sample": -1.2,
    },
    "reveal": {
        "reveal": 2.0, "after 0.75": 1.8, "last 200 s": 1.5, "reading": 1.3, "fact": 0.9, "name": 0.8, "number": 0.6,
        "3 or more after": 0.6, "i": 0.5, "always": 0.2, "sample named": -0.2, "stage tasting": -0.3, "people": -0.3,
        "looking": -0.3, "after 0.25": -0.4, "setting beside": -0.5, "5 or more after": -0.5,
        "stage appearance": -0.6, "perceived: overall": -0.6, "first 150 s": -0.7,
    },
    "background": {
        "always": 3.1, "stage tasting": 1.2, "after 0.25": 0.8, "stage appearance": 0.7, "past tense": 0.7,
        "stage aroma": 0.5, "people": 0.4, "perceived: flavour": -0.4, "last 90 s": -0.5, "i": -0.5,
        "after 0.75": -0.5, "3 or more after": -0.5, "after 0.5": -0.6, "5 or more after": -0.6, "sample named": -0.7,
        "ranking": -0.7, "fact of making": -0.7, "comparative": -0.7,
    },
    "sponsor": {
        "promoting": 2.9, "always": 2.3, "thanking": 1.5, "after 0.25": 1.0, "perceived: mouthfeel": 0.8,
        "paying": 0.8, "you": 0.7, "after 0.5": 0.5, "people": 0.4, "1 or more after": -0.2, "tasting": -0.4,
        "it is": -0.4, "1 or more before": -0.4, "sample named": -0.5, "last 90 s": -0.5, "i": -0.5, "alike": -0.5,
        "perceived: finish": -0.6, "making": -0.6, "reading": -0.7, "last 200 s": -0.8, "3 or more after": -0.8,
        "after 0.75": -1.0,
    },
    "closing": {
        "last 40 s": 1.9, "last 60 s": 1.6, "last 20 s": 1.5, "last 90 s": 1.1, "always": 0.8, "last 200 s": 0.5,
        "alike": 0.5, "people": 0.4, "after 0.75": 0.4, "perceived: flavour": -0.4, "after 0.25": -0.4,
        "3 or more after": -0.5, "stage aroma": -0.6, "sample named": -0.6, "making": -0.7, "past tense": -0.8,
        "1 or more after": -1.0,
    },
}  # fmt: skip
OPENING: dict[str, float] = {
    "another cue": 3.3, "opens with okay": 1.4, "pause": 1.3, "another speaker": 1.0, "opens with right": 1.0,
    "opens with so": 0.9, "revealing at once": 0.8, "two opening words": 0.8, "goes on with which": 0.7,
    "long pause": 0.7, "smelling at once": 0.5, "thanking at once": 0.5, "names a sample": 0.4, "another sample": 0.3,
    "another stage": 0.3, "opens with back": 0.3, "opens with first": 0.3, "opens with now": 0.3,
    "opens with well": 0.3, "after a stop": 0.2, "goes on with and": 0.2, "goes on with but": 0.2,
    "looking at once": 0.2, "opens with next": 0.2, "points: this": 0.2, "short": 0.2, "tasting at once": -0.1,
    "goes on with that": -0.2, "leaving at once": -0.2, "reading at once": -0.2, "points: all": -0.3,
    "promoting at once": -0.3, "goes on with then": -0.4, "points: other": -0.4, "goes on with because": -0.5,
    "goes on with it": -0.5,
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
