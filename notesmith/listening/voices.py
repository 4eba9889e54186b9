"""In whose voice? A text read out, or an opinion reported, is quoted until the taster speaks for himself again."""

from notesmith.listening.hearing import Hearing

SOURCES = frozenset(
    "label back packet website card notes note bag bottle tin box site page blurb leaflet description slip sheet "
    "sticker front list".split()
)
SAYINGS = frozenset("says said say reads read claims claim promises promise calls describes described quote".split())
READS = SAYINGS | {"according", "here", "description", "blurb"}
SAYERS = SOURCES | {"it", "they"}
DENIED = frozenset("n't not i to".split())  # `it doesn't say`, `I said`
OWN = frozenset("i i'm me my mine myself i'd i've i'll".split())
RETURNS = frozenset("okay ok right well yes no yeah nope mm hmm hm alright aye so really oh ha now".split())
OPENING, CLOSING = frozenset(['"', "“", "``"]), frozenset(['"', "”", "''"])
LONGEST_MS = 60_000  # nobody reads out a description for longer without a word of his own


def quoted_clauses(hearing: Hearing) -> list[bool]:
    """For every clause, whether it is somebody else's words."""
    quoted = [False] * len(hearing.clauses)
    may_read = set(hearing.clauses_with(READS))
    reading_since: int | None = None
    for k, clause in enumerate(hearing.clauses):
        if reading_since is not None and _returns(hearing, k, reading_since):
            reading_since = None
        quoted[k] = reading_since is not None
        at = _begins_reading(hearing.meant[clause.start : clause.end]) if k in may_read else -1
        if at >= 0:
            reading_since = hearing.words[clause.start].ms
            read = hearing.meant[clause.start + at + 1 : clause.end]
            quoted[k] = any(norm.isalpha() and norm != "here" for norm in read)
    return _within_marks(hearing, quoted)


def _begins_reading(norms: list[str]) -> int:
    """The word at which something begins to be read out or reported, or -1."""
    for i, norm in enumerate(norms):
        if norm not in READS:
            continue
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


def _returns(hearing: Hearing, k: int, since: int) -> bool:
    """Whether the taster speaks for himself again in clause `k`."""
    clause, first = hearing.clauses[k], hearing.words[hearing.clauses[k].start]
    norms = set(hearing.meant[clause.start : clause.end])
    return bool(
        norms & OWN
        or first.norm in RETURNS
        or clause.speaker != hearing.clauses[k - 1].speaker
        or clause.asks
        or first.ms - since > LONGEST_MS
        or ("'s" in norms and norms & {"it", "that", "there"})
    )


def _within_marks(hearing: Hearing, quoted: list[bool]) -> list[bool]:
    """Quotation marks settle it where the captions have them: a quoted passage ends with its closing mark."""
    marked = set(hearing.clauses_with(OPENING | CLOSING))
    open_mark = False
    for k, clause in enumerate(hearing.clauses):
        if not open_mark and k not in marked:
            continue
        norms = hearing.meant[clause.start : clause.end]
        marks = sum(n in OPENING or n in CLOSING for n in norms)
        closes_first = open_mark and norms[0] in CLOSING
        if (open_mark or marks % 2 == 1) and not closes_first:
            quoted[k] = quoted[k] or len(norms) > 3
        if marks % 2 == 1:
            open_mark = not open_mark
    return quoted
