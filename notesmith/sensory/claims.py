"""What may be claimed: a result in a plain sentence or two, with its n, its weakest link, and what would settle it."""

from dataclasses import dataclass

import numpy as np
from scipy import stats

from notesmith.sensory.difference import Estimate, Verdict, p_alike
from notesmith.sensory.power import fewest, power_alike, power_of_pair, trials_for
from notesmith.sensory.protocols import PAIR
from notesmith.sensory.ranking import Concordance

ALPHA = 0.05
POWER = 0.9
WORTH = 1.0
"""The d′ that a tasting should find: 76 of 100 pairs told right."""


_UNSETTLED = "No number of trials that can be held would settle it."


@dataclass(frozen=True)
class Circumstances:
    """How a tasting was held; None where nobody said."""

    tasters: int
    blind: bool | None = None
    balanced: bool | None = None
    """Whether each sample stood equally often in each place of the order."""
    cups: int | None = None
    """Cups of each product."""
    after_reveal: bool = False
    """Whether any of the answers came after it was known what was what."""


@dataclass(frozen=True)
class Claim:
    """What may be said of a result."""

    says: str
    weakest: str
    settles: str

    def __str__(self) -> str:
        return f"{self.says} Weakest link: {self.weakest}. {self.settles}"


def weakest(at: Circumstances) -> str:
    """What a doubter would name first.

    >>> weakest(Circumstances(tasters=1, blind=True))
    'one taster, whose palate is all it speaks of'
    """
    links = (
        (at.after_reveal, "some answers came after the reveal"),
        (at.blind is False, "the tasters knew what was what"),
        (at.cups == 1, "one cup of each, so that cup and product cannot be told apart"),
        (at.tasters == 1, "one taster, whose palate is all it speaks of"),
        (at.balanced is False, "the order was not balanced"),
        (at.blind is None, "nobody says whether it was blind"),
        (at.balanced is None, "nobody says in which order the cups came"),
        (0 < at.tasters < 12, f"only {at.tasters} tasters"),
    )
    return next((words for true, words in links if true), "the tasters are not all who drink it")


def claim_difference(found: Verdict, at: Circumstances, alpha: float = ALPHA) -> Claim:
    """What right answers allow one to say of a difference."""
    p, protocol = found.p_difference, found.protocol
    counted = (
        f"{found.right} of {found.trials} answers in a {protocol.title} were right (n = {found.trials}, {written(p)})"
    )
    if p <= alpha:
        says = f"A difference was found: {counted}, d′ {_range(found.distance, found.level)}."
        return Claim(says, weakest(at), _settled(at))
    says = f"No difference was shown, which does not show that there is none: {counted}."
    return Claim(says, weakest(at), _needed(protocol.title, trials_for(protocol, WORTH, POWER, alpha), found.trials))


def claim_alike(found: Verdict, told_apart: float, at: Circumstances, alpha: float = ALPHA) -> Claim:
    """What right answers allow one to say of likeness: that fewer than a share of trials are truly told apart."""
    protocol, limit = found.protocol, found.protocol.share(told_apart)
    p = p_alike(found.right, found.trials, limit)
    counted = (
        f"{found.right} of {found.trials} answers in a {protocol.title} were right (n = {found.trials}, {written(p)})"
    )
    if p <= alpha:
        says = f"Alike enough: fewer than {told_apart:.0%} of tastings tell them apart; {counted}."
        return Claim(says, weakest(at), _settled(at))
    needed = fewest(lambda n: power_alike(protocol.chance, n, limit, alpha), POWER)
    says = f"Not shown to be alike: {told_apart:.0%} or more of tastings may tell them apart; {counted}."
    settles = f"Where nobody can tell, {needed} trials show it nine times in ten." if needed else _UNSETTLED
    return Claim(says, weakest(at), settles)


def claim_pair(names: tuple[str, str], counts: tuple[int, int, int], p: float, at: Circumstances) -> Claim:
    """What preferences of a pair allow one to say: counts for the first, for neither, for the second."""
    first, none, second = counts
    ahead, behind = names if first >= second else names[::-1]
    most, fewer = max(first, second), min(first, second)
    tied = f", {none} for neither" if none else ""
    counted = f"{most} to {fewer}{tied} (n = {sum(counts)}, {written(p)})"
    if p <= ALPHA:
        return Claim(f"{ahead[:1].upper()}{ahead[1:]} was preferred to {behind}, {counted}.", weakest(at), _settled(at))
    share = float(PAIR.right(WORTH))
    needed = fewest(lambda n: power_of_pair(share, n), POWER)
    says = f"Neither {names[0]} nor {names[1]} is shown to be preferred: {counted}."
    return Claim(says, weakest(at), _needed("paired comparison", needed, sum(counts)))


def claim_ranking(found: Concordance, best: str, at: Circumstances) -> Claim:
    """What rankings allow one to say of the samples and of the agreement of the tasters."""
    counted = f"n = {found.tasters} rankings of {found.samples} samples, {written(found.p)}, agreement W {found.w:.2f}"
    if found.p <= ALPHA:
        return Claim(f"The samples are ranked apart, {best} first ({counted}).", weakest(at), _settled(at))
    need = stats.chi2.isf(ALPHA, found.samples - 1) / (found.samples - 1)
    more = int(need / found.w) + 1 if found.w > 0.01 else None
    settles = f"With this much agreement about {more} rankings would be enough." if more else _UNSETTLED
    return Claim(f"No sample is shown to be ranked above another ({counted}).", weakest(at), settles)


def _settled(at: Circumstances) -> str:
    if at.tasters == 1:
        others = trials_for(PAIR, WORTH, POWER)
        return f"Whether others can tell, {others} paired comparisons by as many tasters would say."
    return "Another session, blind and in a balanced order, should find it again."


def _needed(title: str, trials: int | None, had: int) -> str:
    if trials is None:
        return _UNSETTLED
    if trials <= had:
        return f"{had} trials find a difference of d′ {WORTH:g} nine times in ten: if there is one, it is small."
    return f"To find a difference of d′ {WORTH:g} nine times in ten, {trials} trials of a {title} are needed."


def _range(found: Estimate, level: float) -> str:
    value = "without end" if np.isinf(found.value) else f"{found.value:.1f}"
    return f"{value} ({level:.0%} interval {written_range(found.low, found.high, 1)})"


def written_range(low: float, high: float, digits: int) -> str:
    """An interval, also one without end.

    >>> written_range(0.5, 2.25, 2), written_range(2.0, float("inf"), 1)
    ('0.50 to 2.25', '2.0 or more')
    """
    if np.isinf(high):
        return f"{low:.{digits}f} or more" if np.isfinite(low) else "anything"
    return f"{low:.{digits}f} to {high:.{digits}f}" if np.isfinite(low) else f"{high:.{digits}f} or less"


def written(p: float) -> str:
    """P as it is written: never 0.

    >>> written(0.0376), written(0.00001)
    ('p = 0.038', 'p < 0.001')
    """
    return "p < 0.001" if p < 0.001 else f"p = {p:.3f}" if p < 0.1 else f"p = {p:.2f}"
