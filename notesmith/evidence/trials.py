"""Recordings read as trials: who sorted the cups rightly, and who preferred which of two."""

from collections import Counter
from collections.abc import Iterable, Sequence
from dataclasses import dataclass

from notesmith.evidence.sessions import Session, Tray
from notesmith.records import Comparison, Preference
from notesmith.sensory.protocols import DUO_TRIO, TETRAD, TRIANGLE, TWO_OUT_OF_FIVE, Protocol

SORTED: dict[tuple[int, ...], Protocol] = {(1, 2): TRIANGLE, (2, 2): TETRAD, (2, 3): TWO_OUT_OF_FIVE}
"""The tests in which like cups are put together, by how many there are of each of two products."""
REFERENCE = "reference"
AS_A_WHOLE = frozenset("overall good nice quality liking preference".split())
"""Properties on which `equal` means that neither is preferred."""


@dataclass(frozen=True)
class Answer:
    """One trial of one taster."""

    taster: str
    right: bool


@dataclass(frozen=True)
class Sorting:
    """Trials of one protocol, over all recordings that were such a test."""

    protocol: Protocol
    sessions: tuple[Session, ...]
    answers: tuple[Answer, ...]

    @property
    def by_taster(self) -> dict[str, tuple[int, int]]:
        """Right answers and trials of each taster."""
        right = Counter(answer.taster for answer in self.answers if answer.right)
        return {taster: (right[taster], n) for taster, n in sorted(Counter(at.taster for at in self.answers).items())}


@dataclass(frozen=True)
class Paired:
    """How often each of two products was put first, over all recordings in which they met."""

    names: tuple[str, str]
    about: str
    """What was asked: `overall` for the liking, else a property of which the one has more."""
    counts: tuple[int, int, int]
    """For the first, for neither, for the second."""
    tasters: tuple[str, ...]
    sessions: tuple[Session, ...]
    first_tasted: tuple[int, int]
    """How often the cup tasted first was named, of how many times that one was named and the order is known."""


def protocol_of(session: Session, tray: Tray) -> Protocol | None:
    """The sorting test that a tray was, told by how often each product was poured; None where it was none.

    A tray with a sample called `reference` is a duo-trio.
    """
    known = [session.products.get(sample) for sample in tray.samples]
    if None in known or len(set(known)) != 2:
        return None
    poured = tuple(sorted(Counter(known).values()))
    return DUO_TRIO if poured == (1, 2) and _reference(session, tray) else SORTED.get(poured)


def sortings(sessions: Sequence[Session]) -> list[Sorting]:
    """The sorting tests among the recordings; an answer is what a taster last called equal before the reveal."""
    found: dict[str, list[tuple[Session, list[Answer]]]] = {}
    protocols: dict[str, Protocol] = {}
    for session in sessions:
        for tray in session.trays:
            if protocol := protocol_of(session, tray):
                protocols[protocol.name] = protocol
                found.setdefault(protocol.name, []).append((session, _answers(session, tray)))
    return [
        Sorting(protocols[name], _each(at for at, _ in held), tuple(answer for _, given in held for answer in given))
        for name, held in found.items()
        if any(given for _, given in held)
    ]


def pairs(sessions: Sequence[Session]) -> list[Paired]:
    """What was put first of two products, by liking and by each property that was compared."""
    votes: dict[tuple[tuple[str, str], str], list[_Vote]] = {}
    for session in sessions:
        for tray in session.trays:
            names = sorted(session.names[sample] for sample in tray.samples if sample in session.names)
            if len(names) != 2 or names[0] == names[1]:
                continue
            for about in ("overall", *sorted({at.attribute for at in session.notes.comparisons} - AS_A_WHOLE)):
                votes.setdefault(((names[0], names[1]), about), []).extend(_votes(session, tray, about))
    return [_paired(names, about, cast) for (names, about), cast in votes.items() if cast]


@dataclass(frozen=True)
class _Vote:
    """What one taster put first of two samples; None for neither."""

    session: Session
    tray: Tray
    taster: str
    sample: str | None

    @property
    def first_tasted(self) -> str | None:
        """The sample that was tasted first: as heard, else as planned."""
        heard = [sample for sample in self.session.order if sample in self.tray.samples]
        if len(heard) == 2:
            return heard[0]
        return self.tray.samples[0] if self.tray.taster else None


def _each(sessions: Iterable[Session]) -> tuple[Session, ...]:
    return tuple({id(session): session for session in sessions}.values())


def _answers(session: Session, tray: Tray) -> list[Answer]:
    equal = (at for at in session.notes.comparisons if at.relation == "equal" and tray.bears(at, frozenset(at.samples)))
    together = session.last_words(at for at in equal if _sorts(session, tray, at))
    return [Answer(taster, _right(session, tray, at)) for taster, at in together.items() if isinstance(at, Comparison)]


def _sorts(session: Session, tray: Tray, at: Comparison) -> bool:
    reference = _reference(session, tray)
    return 2 <= len(at.samples) < len(tray.samples) and (not reference or reference in at.samples)


def _right(session: Session, tray: Tray, at: Comparison) -> bool:
    """Whether what was put together is all that there is of one product, or two of a tetrad's alike."""
    alike = {session.products[sample] for sample in at.samples}
    if len(alike) != 1:
        return False
    return len(at.samples) == sum(session.products[sample] in alike for sample in tray.samples)


def _reference(session: Session, tray: Tray) -> str | None:
    called = (at.id for at in session.notes.sheet.samples if REFERENCE in {at.id.casefold(), *at.aliases})
    return next((sample for sample in called if sample in tray.samples), None)


def _votes(session: Session, tray: Tray, about: str) -> list[_Vote]:
    compared = [at for at in session.notes.comparisons if at.attribute == about or _as_a_whole(about, at)]
    liked = [at for at in session.notes.preferences if about == "overall" and at.scope == "overall"]
    said: list[Preference | Comparison] = [*compared, *liked]
    words = session.last_words(at for at in said if tray.bears(at, _named(at)))
    put_first = {taster: at.preferred if isinstance(at, Preference) else at.more for taster, at in words.items()}
    return [_Vote(session, tray, taster, sample) for taster, sample in put_first.items()]


def _named(at: Preference | Comparison) -> frozenset[str]:
    named = (at.preferred, *at.over) if isinstance(at, Preference) else (at.more, at.less, *at.samples)
    return frozenset(sample for sample in named if sample)


def _as_a_whole(about: str, at: Comparison) -> bool:
    return about == "overall" and at.attribute in AS_A_WHOLE


def _paired(names: tuple[str, str], about: str, cast: Sequence[_Vote]) -> Paired:
    named = Counter(vote.session.names[vote.sample] if vote.sample else None for vote in cast)
    ordered = [(vote.first_tasted, vote.sample) for vote in cast if vote.sample and vote.first_tasted]
    return Paired(
        names, about, (named[names[0]], named[None], named[names[1]]), tuple(sorted({vote.taster for vote in cast})),
        _each(vote.session for vote in cast), (sum(first == sample for first, sample in ordered), len(ordered)),
    )  # fmt: skip
