"""Where does one thought end?

Captions are punctuated badly or not at all, so full stops are only one sign among others: a pause, another
speaker, a contrast word, or a restart ("… it's", "… there's", "… I get") begins a new thought as well.
"""

from itertools import pairwise

from notesmith.listening.hearing import Clause, Hearing, Word

STOPS = frozenset([".", "?", "!", ";", ":", "...", "…", "—", "–", "--"])
LONG_PAUSE_MS = 900
LONGEST = 28  # words; a thought longer than this is cut anyway, so that no negation reaches far
CONTRASTS = frozenset("but whereas though although however yet except because whilst then".split())
SUBJECTS = frozenset("i it that there this we you they he she what its thats theres".split())
BEGINNERS = frozenset(
    "'s is was has had 'm am 're are 've have 'd 'll get got gets getting can could would taste tastes tasted smell "
    "smells think thought feel find found does did do looks feels goes comes keeps starts want said might will".split()
)
# A subject after one of these continues the thought instead of beginning one ("that I get", "if it's").
OPENERS = frozenset(
    "that which who if when where what how whether as than because like think say thought guess know see said says "
    "mean suppose bet believe sure , and or so the a of to in for with at on from not n't nt do does did is was are "
    "were can could would should will have has had".split()
)
FIRST_WORDS = CONTRASTS | SUBJECTS | {"and"}
ASKING = frozenset("is are do does did can could would will has have was were isn't".split())
ASKED = frozenset("you it there that this anyone anybody we i they".split())
LEAD_INS = frozenset("so and um uh or well ,".split())


def cut_clauses(hearing: Hearing) -> None:
    """Cut the words into clauses; every word belongs to exactly one."""
    words = hearing.words
    cuts = [0, *(i for i in _candidates(hearing) if _begins(words, i)), len(words)]
    hearing.clauses, hearing.clause_of = [], [0] * len(words)
    for start, end in pairwise(cuts):
        for at in range(start, end, LONGEST):
            stop = min(at + LONGEST, end)
            clause = Clause(at, stop, words[at].speaker, _asks(words, at, stop))
            hearing.clause_of[at:stop] = [len(hearing.clauses)] * (stop - at)
            hearing.clauses.append(clause)


def _candidates(hearing: Hearing) -> list[int]:
    """The words at which a thought may begin: after a stop or a pause, with another speaker, or by what they are."""
    stopped = {i + 1 for i in hearing.places(STOPS)}
    paused = {i for i, word in enumerate(hearing.words) if word.pause >= LONG_PAUSE_MS}
    turns = {i for i, (a, b) in enumerate(pairwise([word.speaker for word in hearing.words]), 1) if a != b}
    return sorted((stopped | paused | turns).union(hearing.places(FIRST_WORDS)) - {0, len(hearing.words)})


def _begins(words: list[Word], i: int) -> bool:
    """Whether the word at `i` begins a new thought."""
    before, now = words[i - 1], words[i]
    if before.norm in STOPS and now.norm not in STOPS:
        return True
    if now.norm in STOPS or now.norm in ("'s", "n't", ","):
        return False
    if now.speaker != before.speaker or now.pause >= LONG_PAUSE_MS:
        return True
    if now.norm in CONTRASTS and before.norm not in ("and", "or", "anything", "nothing", "all", "none"):
        return not (now.norm == "then" and before.norm in ("just", "now", "by"))
    return _restarts(words, i)


def _restarts(words: list[Word], i: int) -> bool:
    """A subject with its verb begins a thought, unless the word before takes it in ("the smoke that I get")."""
    now = words[i].norm
    if now == "and" and i + 2 < len(words):
        return _is_subject(words, i + 1)
    if not _is_subject(words, i):
        return False
    before = words[i - 1].norm
    if before == "," and i >= 2:
        return words[i - 2].norm not in OPENERS
    return before not in OPENERS


def _is_subject(words: list[Word], i: int) -> bool:
    now = words[i].norm
    if now in ("its", "thats", "theres"):
        return True
    return now in SUBJECTS and i + 1 < len(words) and words[i + 1].norm in BEGINNERS


def _asks(words: list[Word], start: int, end: int) -> bool:
    """Whether the clause is a question, by its mark or by its word order ("do you get smoke")."""
    if words[end - 1].norm == "?":
        return True
    first = next((i for i in range(start, end) if words[i].norm not in LEAD_INS), start)
    return first + 1 < end and words[first].norm in ASKING and words[first + 1].norm in ASKED
