"""In whose voice? A text read out, or an opinion reported, is quoted until the taster speaks for himself again."""

from notesmith.listening.hearing import Clause, Hearing, Word

SOURCES = frozenset(
    "label back packet website card notes note bag bottle tin box site page blurb leaflet description slip sheet "
    "sticker front list".split()
)
SAYINGS = frozenset("says said say reads read claims claim promises promise calls describes described quote".split())
SAYERS = SOURCES | {"it", "they"}
DENIED = frozenset("n't not i to".split())  # `it doesn't say`, `I said`
OWN = frozenset("i i'm me my mine myself i'd i've i'll".split())
RETURNS = frozenset("okay ok right well yes no yeah nope mm hmm hm alright aye so really oh ha now".split())
OPENING, CLOSING = frozenset(['"', "“", "``"]), frozenset(['"', "”", "''"])
LONGEST_MS = 60_000  # nobody reads out a description for longer without a word of his own


def quoted_clauses(hearing: Hearing) -> list[bool]:
    """For every clause, whether it is somebody else's words."""
    quoted = [False] * len(hearing.clauses)
    reading_since: int | None = None
    for k, clause in enumerate(hearing.clauses):
        words = hearing.words[clause.start : clause.end]
        if reading_since is not None and _returns(words, hearing, clause, k, reading_since):
            reading_since = None
        if reading_since is not None:
            quoted[k] = True
        at = _begins_reading(words)
        if at >= 0:
            reading_since = words[0].ms
            quoted[k] = any(w.norm.isalpha() and w.norm != "here" for w in words[at + 1 :])
    return _within_marks(hearing, quoted)


def _begins_reading(words: list[Word]) -> int:
    """The word at which something begins to be read out or reported, or -1."""
    norms = [w.norm for w in words]
    for i, norm in enumerate(norms):
        before = norms[max(0, i - 3) : i]
        if (
            (norm in SAYINGS and not SAYERS.isdisjoint(before) and DENIED.isdisjoint(before))
            or norm == "according"
            or (norm == "here" and before[-1:] == ["says"])
            or (norm in ("description", "blurb") and "the" in before)
            or (norm == "quote" and i + 1 < len(norms))
        ):
            return i
    return -1


def _returns(words: list[Word], hearing: Hearing, clause: Clause, k: int, since: int) -> bool:
    """Whether the taster speaks for himself again in this clause."""
    norms = {w.norm for w in words}
    previous = hearing.clauses[k - 1]
    return bool(
        norms & OWN
        or words[0].norm in RETURNS
        or clause.speaker != previous.speaker
        or clause.asks
        or words[0].ms - since > LONGEST_MS
        or ("'s" in norms and norms & {"it", "that", "there"})
    )


def _within_marks(hearing: Hearing, quoted: list[bool]) -> list[bool]:
    """Quotation marks settle it where the captions have them: a quoted passage ends with its closing mark."""
    open_mark = False
    for k, clause in enumerate(hearing.clauses):
        norms = [w.norm for w in hearing.words[clause.start : clause.end]]
        marks = sum(n in OPENING or n in CLOSING for n in norms)
        closes_first = open_mark and norms[0] in CLOSING
        if (open_mark or marks % 2 == 1) and not closes_first:
            quoted[k] = quoted[k] or len(norms) > 3
        if marks % 2 == 1:
            open_mark = not open_mark
    return quoted
