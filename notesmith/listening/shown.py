"""What the encoder is shown of every word besides its letters: what the rules have made of it so far.

Samples are never shown by name. Around every word some of them play parts: the one talked about, the one named last,
the one named next. The encoder learns which part counts, so that it points in any recording alike.
"""

from collections.abc import Iterator, Sequence
from typing import NamedTuple, get_args

import numpy as np
from numpy.typing import NDArray

from notesmith.listening.echoes import ECHOES, Echo, find_echoes
from notesmith.listening.hearing import Hearing
from notesmith.records import Facet, FactKind, Presence, SectionKind

SLOTS = 24  # samples that can be told apart; slot 0 is nobody
FACETS: tuple[Facet, ...] = get_args(Facet)
PRESENCES: tuple[Presence, ...] = get_args(Presence)
FACT_KINDS: tuple[FactKind, ...] = get_args(FactKind)
SECTION_KINDS: tuple[SectionKind, ...] = get_args(SectionKind)
PARTS = (
    "nobody", "topic", "last", "earlier", "coming", "after the topic", "before the topic", "the other of two",
    "topic soon", "topic lately", "named before in the thought", "named after in the thought",
    "echoed", "echoed in the thought", "echoed soon", "not named yet", "named longest ago",
    "topic moved to", "named since", "echoed since",
    "perceived last", "after the one perceived last", "the other than the one perceived last", "the first again",
)  # fmt: skip
# The parts before the first of these are cast by rules. The next hang on where something was perceived before: what was
# said until then has had its say. The rest hang on the sample it was perceived of.
SINCE, FOLLOWING = PARTS.index("topic moved to"), PARTS.index("perceived last")
SIGHTS: dict[str, int] = {  # how many values each may take
    "agreement": 16, "named": 7, "since": 9, "until": 9, "pointed": 10, "described": 9, "facet": len(FACETS) + 1,
    "presence": len(PRESENCES) + 1, "stated": 2 * len(FACT_KINDS) + 1, "section": len(SECTION_KINDS) + 1,
    "pause": 5, "marked": 8, "place": 10, "samples": 6, "echo": 1 + 2 * len(ECHOES), "since echo": 9,
}  # fmt: skip
MENTIONS = ("name", "ordinal", "this", "that", "other", "next", "previous", "all")
PAUSES_MS = (150, 500, 1500)
DISTANCES = (3, 8, 16, 32, 64, 128, 256)  # words
SOON, ECHOED_SOON = 40, 12  # words
Sights = NDArray[np.int16]
Places = NDArray[np.int64]


class Cast(NamedTuple):
    """Which samples play parts around every word."""

    parts: Sights  # a column a part (PARTS in order): the slot of the sample that plays it; 0 for none
    since: Places  # the word with which the topic last changed, the one last named, the one last echoed; -1 for none
    echoes: list[Echo]


def slots_of(hearing: Hearing) -> dict[str | None, int]:
    """The slot of every sample, in the sheet's order; samples past the last slot have none."""
    return {s.id: k for k, s in enumerate(hearing.sheet.samples[:SLOTS], 1)}


def cast_parts(hearing: Hearing) -> Cast:
    """Cast the parts that rules can cast; a row a word."""
    slots, size = slots_of(hearing), len(hearing.words)
    topic = np.array([slots.get(hearing.topics[run].sample, 0) for run in hearing.run_of], dtype=np.int16)
    last, earlier, coming = (np.zeros(size, dtype=np.int16) for _ in range(3))
    named = _named(hearing, slots)
    for start, slot, before in named:
        last[start:], earlier[start:] = slot, before
    begin = 0
    for start, slot, _ in named:
        coming[begin:start] = slot
        begin = start
    count = len(slots)
    following = np.where((topic > 0) & (topic < count), topic + 1, 0)
    other = np.where(topic > 0, 3 - topic, 0) if count == 2 else np.zeros(size, dtype=np.int16)
    soon, lately = np.roll(topic, -SOON), np.roll(topic, SOON)
    soon[max(0, size - SOON) :], lately[:SOON] = 0, 0
    echoes = find_echoes(hearing)
    calls = [(echo.at, slots[echo.sample]) for echo in echoes if echo.sample in slots]
    columns = (
        np.zeros(size, dtype=np.int16), topic, last, earlier, coming, following, np.maximum(topic - 1, 0), other,
        soon, lately, *_in_the_thought(hearing, [(start, slot) for start, slot, _ in named]),
        *_echoed(hearing, calls), *_long_unnamed(size, count, [(start, slot) for start, slot, _ in named]),
    )  # fmt: skip
    follow = [np.zeros(size, dtype=np.int16)] * (len(PARTS) - SINCE)
    changes = np.flatnonzero(np.diff(topic, prepend=-1)).tolist()
    since = [_latest(size, at) for at in (changes, [start for start, _, _ in named], [at for at, _ in calls])]
    return Cast(np.stack([*columns, *follow], axis=1).astype(np.int16), np.stack(since, axis=1), echoes)


def _latest(size: int, places: Sequence[int]) -> Places:
    """For every word the last of the places up to it; -1 before the first."""
    latest = np.full(size, -1, dtype=np.int64)
    latest[places] = places
    return np.maximum.accumulate(latest)


def since_parts(cast: Cast, at: Places | int, before: Places | int) -> tuple[Sights, ...]:
    """The parts played at the words `at` by what was said since the words `before`, where something was perceived."""
    sources = (PARTS.index(name) for name in ("topic", "last", "echoed"))
    return tuple(np.where(cast.since[at, k] >= before, cast.parts[at, part], 0) for k, part in enumerate(sources))


def following_parts(last: Sights, count: int) -> tuple[Sights, Sights, Sights, Sights]:
    """The last parts, where `last` is the slot of the sample that something was last perceived of."""
    other = np.where(last > 0, 3 - last, 0) if count == 2 else np.zeros_like(last)
    return last, np.where((last > 0) & (last < count), last + 1, 0), other, np.where(last > 1, 1, 0)


def _named(hearing: Hearing, slots: dict[str | None, int]) -> list[tuple[int, int, int]]:
    """Where one sample is named or pointed at: the word, its slot, and the slot named before it."""
    found: list[tuple[int, int, int]] = []
    last = earlier = 0
    for mention in hearing.mentions:
        slot = slots.get(mention.samples[0], 0) if len(mention.samples) == 1 else 0
        if slot:
            last, earlier = (slot, last) if slot != last else (last, earlier)
            found.append((mention.start, last, earlier))
    return found


def _in_the_thought(hearing: Hearing, named: list[tuple[int, int]]) -> tuple[Sights, Sights]:
    """The sample named last before a word in its own clause, and the one named first after it there."""
    before, after = (np.zeros(len(hearing.words), dtype=np.int16) for _ in range(2))
    for start, slot in named:
        clause = hearing.clauses[hearing.clause_of[start]]
        before[start : clause.end] = slot
        free = after[clause.start : start]
        after[clause.start : start] = np.where(free == 0, slot, free)
    return before, after


def _echoed(hearing: Hearing, calls: list[tuple[int, int]]) -> tuple[Sights, Sights, Sights]:
    """The sample that was last called, it may be; the one called before in the clause; the one called soon after."""
    last, soon = (np.zeros(len(hearing.words), dtype=np.int16) for _ in range(2))
    for at, slot in calls:
        last[at:] = slot
    for at, slot in reversed(calls):
        soon[max(0, at - ECHOED_SOON) : at] = slot
    return last, _in_the_thought(hearing, calls)[0], soon


def _long_unnamed(size: int, count: int, named: list[tuple[int, int]]) -> tuple[Sights, Sights]:
    """The first sample of the sheet that was never named so far; when all were, the one named longest ago."""
    fresh, stale = (np.zeros(size, dtype=np.int16) for _ in range(2))
    order, begin = list[int](), 0
    for start, slot in [*named, (size, 0)]:
        unnamed = next((k for k in range(1, count + 1) if k not in order), 0)
        fresh[begin:start] = unnamed
        stale[begin:start] = order[0] if order and not unnamed else 0
        order = [*(k for k in order if k != slot), slot]
        begin = start
    return fresh, stale


def show(hearing: Hearing, cast: Cast) -> Sights:
    """A row a word, a column a sight (the keys of SIGHTS in order)."""
    columns = {name: np.zeros(len(hearing.words), dtype=np.int16) for name in SIGHTS}
    _show_samples(hearing, columns, cast.parts)
    _show_descriptions(hearing, columns)
    _show_echoes(columns, cast, slots_of(hearing))
    for fact in hearing.facts:
        kind = 1 + FACT_KINDS.index(fact.kind)
        columns["stated"][fact.start : fact.end] = kind + len(FACT_KINDS) * (fact.confidence > 0.6)
    for passage in hearing.sections:
        columns["section"][passage.start : passage.end] = 1 + SECTION_KINDS.index(passage.kind)
    columns["pause"][:] = list(_pauses(hearing))
    columns["marked"][:] = list(_marks(hearing))
    columns["place"][:] = np.arange(len(hearing.words)) * 10 // max(1, len(hearing.words))
    return np.stack(list(columns.values()), axis=1)


def _show_samples(hearing: Hearing, columns: dict[str, Sights], parts: Sights) -> None:
    """Which parts one sample plays at once, where samples are named, and how far from there."""
    topic, last, earlier, coming = (parts[:, k] for k in range(1, 5))
    columns["agreement"][:] = (topic == last) + 2 * (topic == coming) + 4 * (last == coming) + 8 * (topic == 0)
    columns["samples"][:] = min(5, len(hearing.sheet.samples))
    size, at = len(hearing.words), -300
    starts = []
    for mention in hearing.mentions:
        stretch = slice(mention.start, mention.end)
        columns["pointed"][stretch] = 1 + MENTIONS.index(mention.kind)
        if len(mention.samples) == 1:
            starts.append(mention.start)
            before = max(0, mention.start - 1)
            slot = int(last[mention.start])
            same = (slot == topic[before], slot == last[before], slot == earlier[before], slot == topic[mention.start])
            columns["named"][stretch] = 1 + next((k for k, is_so in enumerate(same) if is_so), 4)
    for start, end in zip([0, *starts], [*starts, size], strict=True):
        columns["since"][start:end] = np.digitize(np.arange(start, end) - at, DISTANCES)
        columns["until"][start:end] = np.digitize(end - np.arange(start, end), DISTANCES) if end < size else 8
        at = end


def _show_descriptions(hearing: Hearing, columns: dict[str, Sights]) -> None:
    kept = {p.description.start: p for p in hearing.perceptions}
    for d in hearing.descriptions:
        p = kept.get(d.start)
        sort = 0 if d.label is None else 1 + d.label.guarded
        columns["described"][d.start : d.end] = 1 + sort + 3 * (p is not None)
        if p:
            columns["facet"][d.start : d.end] = 1 + FACETS.index(p.facet)
            columns["presence"][d.start : d.end] = 1 + PRESENCES.index(p.presence)


def _show_echoes(columns: dict[str, Sights], cast: Cast, slots: dict[str | None, int]) -> None:
    """Which words may call a sample, whether it is another than the one talked about, and how far away the last is."""
    echoes, size, at = cast.echoes, len(cast.parts), -300
    for echo in echoes:
        another = slots.get(echo.sample) != cast.parts[max(0, echo.at - 1), PARTS.index("topic")]
        columns["echo"][echo.at] = 1 + ECHOES.index(echo.kind) + len(ECHOES) * another
    for start, end in zip([0, *(e.at for e in echoes)], [*(e.at for e in echoes), size], strict=True):
        columns["since echo"][start:end] = np.digitize(np.arange(start, end) - at, DISTANCES)
        at = end


def _pauses(hearing: Hearing) -> Iterator[int]:
    speaker = hearing.words[0].speaker if hearing.words else None
    for word in hearing.words:
        yield 4 if word.speaker != speaker else sum(word.pause > ms for ms in PAUSES_MS)
        speaker = word.speaker


def _marks(hearing: Hearing) -> Iterator[int]:
    """Whether a word is mended, whether its clause is quoted, and whether something is compared there."""
    mended = {i for m in hearing.mendings for i in range(m.start, m.end)}
    quoted = {p.clause for p in hearing.perceptions if p.voice == "quoted"}
    compared = {i for c in hearing.comparisons for i in range(c.start, c.end)}
    for i, clause in enumerate(hearing.clause_of):
        yield (i in mended) + 2 * (clause in quoted) + 4 * (i in compared)
