"""Which samples stand on the two sides of a comparison or a preference?"""

from bisect import bisect_left
from functools import lru_cache

from notesmith.lexicon import Lexicon
from notesmith.listening.hearing import Hearing, Mention
from notesmith.listening.names import names_of
from notesmith.listening.vocabulary import BE
from notesmith.records import Sheet

Named = tuple[Mention, str]
BESIDE = frozenset("than over above like prefer as".split())  # words right after which a sample is named
LEADS = frozenset("so and but now okay then whereas while".split())


def singled_out(hearing: Hearing) -> list[tuple[Mention, str]]:
    """Every mention of one sample, with it; `this one` is what the talk is about, `the other` the other one."""
    found = ((m, sample_meant(hearing, m)) for m in hearing.mentions)
    named = [(m, sample) for m, sample in found if sample]
    return sorted([*named, *_beside(hearing)], key=lambda n: n[0].start)


def _beside(hearing: Hearing) -> list[Named]:
    """Short names right beside a word that sets samples beside each other (`than red`, `blue above gold`)."""
    words, found = hearing.words, []
    for mention, sample in short_names(hearing):
        k = mention.start - 1 - (words[mention.start - 1].norm == "the")
        before = words[k].norm if k >= 0 else ""
        after = words[mention.end].norm if mention.end < len(words) else ""
        leads = before in LEADS and after in BE
        if leads or (before in BESIDE and after != before) or after in ("over", "above", "are"):
            found.append((mention, sample))
    return found


def short_names(hearing: Hearing) -> list[Named]:
    """Common words that may name a sample, but were not taken for names: for places that call for a name."""
    meant, short = hearing.meant, _names_of_one_word(hearing.sheet, hearing.lexicon)
    taken = {i for m in hearing.mentions for i in range(m.start, m.end)}
    return [
        (Mention(i, i + 1, "name", (short[meant[i]],), "named where a name is called for", 0.5), short[meant[i]])
        for i in hearing.places(short) if i not in taken
    ]  # fmt: skip


@lru_cache(maxsize=4)
def _names_of_one_word(sheet: Sheet, lexicon: Lexicon) -> dict[str, str]:
    return {n.words[0]: n.sample for n in names_of(sheet, lexicon) if len(n.words) == 1}


def sample_meant(hearing: Hearing, mention: Mention) -> str | None:
    """The one sample a mention means, or none."""
    if len(mention.samples) == 1:
        return mention.samples[0]
    if mention.kind in ("this", "that"):
        return topic_at(hearing, mention.start)
    if mention.kind in ("other", "previous"):
        return other_than(hearing, topic_at(hearing, mention.start), mention.start)
    return None


def topic_at(hearing: Hearing, i: int) -> str | None:
    """What the talk is about at word `i`."""
    return hearing.topics[hearing.run_of[i]].sample


def other_than(hearing: Hearing, sample: str | None, i: int) -> str | None:
    """The other one: of two, or else the one talked about last before word `i`."""
    ids = [s.id for s in hearing.sheet.samples]
    if len(ids) == 2 and sample in ids:
        return ids[1 - ids.index(sample)]
    for k in range(hearing.run_of[i], -1, -1):
        before = hearing.topics[k].sample
        if before and before != sample:
            return before
    return None


def all_but(hearing: Hearing, *samples: str) -> tuple[str, ...]:
    """The other samples of the sheet, in its order."""
    return tuple(s.id for s in hearing.sheet.samples if s.id not in samples)


def within(found: list[tuple[Mention, str]], start: int, end: int) -> list[tuple[Mention, str]]:
    """The mentions that begin in a stretch of words."""
    return found[bisect_left(found, start, key=_starts_at) : bisect_left(found, end, key=_starts_at)]


def _starts_at(named: Named) -> int:
    return named[0].start


def said_by(hearing: Hearing, i: int) -> str | None:
    """The taster who speaks at word `i`, or the only one there is."""
    tasters, speaker = hearing.sheet.tasters, hearing.words[i].speaker
    known = next((t for t in tasters if speaker and t.lower() == speaker.lower()), None)
    return known or (tasters[0] if len(tasters) == 1 else None)
