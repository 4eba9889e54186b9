"""One recording as a session: what was tasted in which order, how it was held, what was said before the reveal."""

from collections import Counter
from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from functools import cached_property

from notesmith.records import Comparison, Evidenced, Notes, Observation, Preference
from notesmith.sensory.claims import Circumstances

SOMEBODY = "the taster"


@dataclass(frozen=True)
class Tray:
    """Samples that were set beside each other."""

    samples: tuple[str, ...]
    taster: str | None
    """Who was handed them; None for all."""

    def bears(self, record: Preference | Comparison, among: frozenset[str]) -> bool:
        """Whether a record is a word of this tray's taster on samples of this tray alone."""
        mine = self.taster is None or record.taster in {None, self.taster}
        return mine and bool(among) and among <= set(self.samples)


@dataclass(frozen=True)
class Session:
    """The notes of one recording, read as evidence."""

    notes: Notes

    @cached_property
    def products(self) -> dict[str, str]:
        """What each sample is: as the sheet has it, or as it was made known; the others are left out."""
        known = {at.id: at.product for at in self.notes.sheet.samples if at.product}
        return {reveal.sample: reveal.product for reveal in self.notes.reveals} | known

    @cached_property
    def names(self) -> dict[str, str]:
        """What each sample is called in results: its product where all are known, else what it is called blind."""
        if set(self.notes.samples) <= set(self.products):
            return {sample: self.products[sample] for sample in self.notes.samples}
        return {sample: sample for sample in self.notes.samples}

    @cached_property
    def trays(self) -> tuple[Tray, ...]:
        """What was handed to whom, where it was planned; else all samples to all."""
        planned = ((one.taster, tuple(at for at in one.order if at in self.names)) for one in self.notes.sheet.servings)
        handed = {(taster, frozenset(order)): Tray(order, taster) for taster, order in planned}
        return tuple(handed.values()) or (Tray(self.notes.samples, None),)

    @cached_property
    def order(self) -> tuple[str, ...]:
        """The samples in the order in which something was first perceived of them."""
        seen = sorted(
            (at for at in self.notes.observations if at.sample and not at.after_reveal), key=lambda at: at.span
        )
        return tuple(dict.fromkeys(at.sample for at in seen if at.sample))

    @cached_property
    def tasters(self) -> tuple[str, ...]:
        """Who tastes: as the sheet has it, else whoever perceived something."""
        heard = dict.fromkeys(at.taster or SOMEBODY for at in self.perceived)
        return self.notes.sheet.tasters or tuple(heard) or (SOMEBODY,)

    @cached_property
    def perceived(self) -> tuple[Observation, ...]:
        """What tasters perceived of samples themselves, before the reveal."""
        own = (at for at in self.notes.observations if at.voice == "taster" and at.sample)
        return tuple(at for at in own if self.before(at) and not at.after_reveal)

    def before(self, record: Evidenced) -> bool:
        """Whether a record was said before anything was revealed."""
        return all(record.span < reveal.span for reveal in self.notes.reveals)

    def last_words(self, records: Iterable[Preference | Comparison]) -> dict[str, Preference | Comparison]:
        """The last record of each taster before the reveal: who changes their mind is taken at their last word.

        Where one taster alone was there, what nobody is named for is theirs.
        """
        said = sorted((at for at in records if self.before(at)), key=lambda at: at.span)
        alone = self.tasters[0] if len(self.tasters) == 1 else SOMEBODY
        return {at.taster or alone: at for at in said}


def comparable(notes: Sequence[Notes]) -> list[Session]:
    """The sessions that can be set beside each other: one alone, or those whose samples are all known.

    Codes say nothing from one session to the next.
    """
    sessions = [Session(at) for at in notes]
    return [at for at in sessions if len(sessions) == 1 or set(at.notes.samples) <= set(at.products)]


def circumstances(sessions: Sequence[Session], tasters: Iterable[str] = ()) -> Circumstances:
    """How all these sessions were held, at the worst of them; `tasters` names those whose answers count."""
    counted = set(tasters) or {taster for session in sessions for taster in session.tasters}
    openly = any(not session.notes.sheet.blind and not session.notes.sheet_drafted for session in sessions)
    unsaid = any(session.notes.sheet_drafted for session in sessions)
    cups = [count for session in sessions for count in Counter(session.names.values()).values()]
    return Circumstances(
        tasters=len(counted), blind=False if openly else None if unsaid else True, balanced=_balanced(sessions),
        cups=sum(cups) // max(1, len({name for session in sessions for name in session.names.values()})) or None,
    )  # fmt: skip


def _balanced(sessions: Sequence[Session]) -> bool | None:
    """Whether each product stood equally often in each place, as planned or heard; None where nobody can tell."""
    if all(session.notes.sheet.balance for session in sessions):
        return all(session.notes.sheet.balance == "full" for session in sessions)
    if any(len(session.order) < len(session.notes.samples) for session in sessions):
        return None
    places = Counter((place, session.names[at]) for session in sessions for place, at in enumerate(session.order))
    names, most = {name for _, name in places}, max((place for place, _ in places), default=0)
    return len(set(places.values())) == 1 and len(places) == len(names) * (most + 1)
