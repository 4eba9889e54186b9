"""Rolling captions, which show words again while new ones come in, folded to what was said once.

How a file rolls is voted over all its touching cues, and then only that way's rule is used, so that real
repetition ("yes yes", a line of only "yeah") stays.
"""

from collections import Counter
from collections.abc import Callable
from dataclasses import dataclass, field, replace
from itertools import pairwise

from notesmith.transcript.model import Word
from notesmith.transcript.passages import Passage

_TOUCHING_MS = 200
_ROLLS = 0.3
_SHORT_HOLD_MS = 50


@dataclass(slots=True)
class _Shown:
    """A passage as it was shown: the texts of its lines, and how many of its words were new in it."""

    passage: Passage
    rows: list[tuple[str, ...]]
    texts: list[str] = field(default_factory=list)
    added: int = 0

    def words(self) -> list[Word]:
        return [word for line in self.passage.lines for word in line]


def fold(passages: list[Passage]) -> list[Passage]:
    """Drop what a cue repeats of the cue before it, where the file rolls; the dropped copies become echoes."""
    shown = [_shown(passage) for passage in passages]
    rule = _voted(shown)
    return _folded(shown, rule) if rule else passages


def _shown(passage: Passage) -> _Shown:
    rows = [tuple(word.text for word in line) for line in passage.lines]
    return _Shown(passage, rows, [text for row in rows for text in row])


def _touch(before: _Shown, after: _Shown) -> bool:
    end = before.passage.end_ms
    start = after.passage.start_ms
    return end is not None and start is not None and start - end <= _TOUCHING_MS


def _carried_over(shown: _Shown) -> bool:
    """Whether a cue's first line has no word times while another has: after a silence, too, it is only shown again."""
    start = shown.passage.start_ms
    timed = [any(word.start_ms not in (None, start) for word in line) for line in shown.passage.lines]
    return any(timed) and not timed[0]


def _repeated_rows(before: _Shown, after: _Shown) -> int:
    """Words of the whole lines at the end of one cue that open the next: a window of lines that scrolls."""
    for k in range(min(len(before.rows), len(after.rows)), 0, -1):
        if before.rows[-k:] == after.rows[:k]:
            return sum(map(len, after.rows[:k]))
    return 0


def _grown_rows(before: _Shown, after: _Shown) -> int:
    """The same where the last of these lines may also have grown: captions painted on word by word."""
    for k in range(min(len(before.rows), len(after.rows)), 0, -1):
        old, new = before.rows[-k:], after.rows[:k]
        if old[:-1] == new[:-1] and new[-1][: len(old[-1])] == old[-1]:
            repeated = sum(map(len, old))
            # A row of one word said again is a new row: painting always adds.
            return repeated if repeated < len(after.texts) or _is_hold(after) else 0
    return 0


def _is_hold(shown: _Shown) -> bool:
    start, end = shown.passage.start_ms, shown.passage.end_ms
    return start is not None and end is not None and end - start <= _SHORT_HOLD_MS


def _slid_words(before: _Shown, after: _Shown) -> int:
    """Words at the end of one cue that open the next: best what the first had added, else the most that fit."""
    if before.added and before.texts[-before.added :] == after.texts[: before.added]:
        return before.added
    for k in range(min(len(before.texts), len(after.texts)), 1, -1):
        if before.texts[-k:] == after.texts[:k]:
            return k
    return 0


_Rule = Callable[[_Shown, _Shown], int]
_RULES: tuple[_Rule, ...] = (_repeated_rows, _grown_rows, _slid_words)


def _voted(shown: list[_Shown]) -> _Rule | None:
    """The first rule that explains each touching pair by two words or more has its vote.

    One word is enough in a cue of some ten milliseconds: nobody says it again in that time.
    """
    pairs = [(a, b) for a, b in pairwise(shown) if _touch(a, b)]
    votes: Counter[_Rule] = Counter()
    for before, after in pairs:
        enough = 1 if _is_hold(after) else 2
        rule = next((rule for rule in _RULES if rule(before, after) >= enough), None)
        if rule:
            votes[rule] += 1
    few = votes.total() < 2 and not any(_is_hold(after) for _before, after in pairs)
    if not votes or few or votes.total() < _ROLLS * len(pairs):
        return None
    return votes.most_common(1)[0][0]


def _folded(shown: list[_Shown], rule: _Rule) -> list[Passage]:
    found: list[Passage] = []
    before: _Shown | None = None
    kept: list[Word] = []  # for each word of the cue before, the copy of it that stays
    for after in shown:
        repeated = rule(before, after) if before and (_touch(before, after) or _carried_over(after)) else 0
        words = after.words()
        originals = kept[len(kept) - repeated :]
        echoes = [(o.source_start, w.source_start, w.source_end) for o, w in zip(originals, words, strict=False)]
        grows = rule is _grown_rows and repeated > 0
        new = _appearing(after, repeated) if grows else _without(after.passage.lines, repeated)
        _keep(found, replace(after.passage, lines=new, echoes=echoes + after.passage.echoes), grows)
        after.added = len(words) - repeated
        kept = originals + words[repeated:]
        before = after
    return found


def _without(lines: list[list[Word]], count: int) -> list[list[Word]]:
    """The lines without their first words; a line left empty vanishes."""
    left = []
    for line in lines:
        if line[count:]:
            left.append(line[count:])
        count = max(0, count - len(line))
    return left


def _appearing(shown: _Shown, repeated: int) -> list[list[Word]]:
    """The words that a growing cue adds, each spoken when it appears."""
    start = shown.passage.start_ms
    return [
        [word if word.start_ms is not None else replace(word, start_ms=start) for word in line]
        for line in _without(shown.passage.lines, repeated)
    ]


def _keep(found: list[Passage], passage: Passage, grows: bool) -> None:
    """Add what is new: to the row that grows, or as a passage; a cue with nothing new only holds the one before."""
    last = found[-1] if found else None
    if last and (not passage.lines or (grows and passage.speaker == last.speaker)):
        last.lines = last.lines + passage.lines if len(passage.lines) > 1 else _lengthened(last.lines, passage.lines)
        last.end_ms = passage.end_ms
        last.echoes += passage.echoes
    else:
        found.append(passage)


def _lengthened(lines: list[list[Word]], more: list[list[Word]]) -> list[list[Word]]:
    return [*lines[:-1], lines[-1] + more[0]] if more else lines
