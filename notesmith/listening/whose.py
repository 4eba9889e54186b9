"""Which sample was named just before a fact: by its own name, or by a word of the product it turns out to be."""

import re
from bisect import bisect_right
from collections import defaultdict

from notesmith.lexicon.check import common_words
from notesmith.listening.hearing import Hearing

AT_ONCE = 8  # words after a name that are still about it, whatever clause they stand in


class Namings:
    """Every place where one sample is named, in order."""

    def __init__(self, hearing: Hearing) -> None:
        named = [(m.start, m.end, m.samples[0]) for m in hearing.mentions if _is_name(m.kind, m.samples)]
        revealed = [(r.start, r.end, r.sample) for r in hearing.reveals]
        taken = {i for m in hearing.mentions for i in range(m.start, m.end)}
        owners = _product_words(hearing)
        words = [(i, i + 1, owners[hearing.meant[i]]) for i in hearing.places(owners) if i not in taken]
        self.found = sorted([*named, *revealed, *words])
        self.starts = [start for start, _, _ in self.found]

    def just_before(self, at: int) -> str | None:
        """The sample named last, if that was only a few words ago."""
        k = bisect_right(self.starts, at)
        if not k or at - self.found[k - 1][1] >= AT_ONCE:
            return None
        return self.found[k - 1][2]


def _is_name(kind: str, samples: tuple[str, ...]) -> bool:
    return len(samples) == 1 and kind in ("name", "ordinal")


def _product_words(hearing: Hearing) -> dict[str, str]:
    """Words that only one sample's product has, on the sheet or as revealed, and that mean nothing else."""
    owners: dict[str, set[str]] = defaultdict(set)
    products = [(s.id, s.product or "") for s in hearing.sheet.samples]
    for sample, product in (*products, *((r.sample, r.product) for r in hearing.reveals)):
        for word in re.findall(r"[^\W\d_]{3,}", product.lower()):
            owners[word].add(sample)
    return {w: min(own) for w, own in owners.items() if len(own) == 1 and w not in common_words()}
