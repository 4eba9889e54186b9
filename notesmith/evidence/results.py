"""All that recordings prove, each result with its figures and with what may be claimed of it."""

from collections.abc import Iterator, Sequence
from dataclasses import replace

import numpy as np
from numpy.typing import NDArray
from pydantic import Field

from notesmith.evidence.profile import profiles, rankings, sips, terms_by_place
from notesmith.evidence.sessions import Session, circumstances, comparable
from notesmith.evidence.trials import Paired, pairs, sortings
from notesmith.records import Notes, Record
from notesmith.sensory.claims import Claim, claim_difference, claim_pair, claim_ranking, weakest, written
from notesmith.sensory.difference import judge, p_two_sided
from notesmith.sensory.dominance import dominance
from notesmith.sensory.no_preference import judge_pair
from notesmith.sensory.positions import drift, first_favoured
from notesmith.sensory.posthoc import conover
from notesmith.sensory.profiles import Spoke
from notesmith.sensory.ranking import concordance
from notesmith.sensory.replicated import Replicated, judge_replicated

SAME_TASTERS = "some tasters answered more than once, and p takes each answer for another taster's"
FEW_SIPS = 5
FEW_ANSWERS = 3
ONE_TASTER = "all trials are of one taster: p tells whether this taster can tell, and nothing of others"


class Result(Record):
    """One result."""

    title: str = Field(description="What was asked.")
    figures: tuple[str, ...] = Field(description="What was found, a line each.")
    claim: str = Field(
        description="What may be claimed: a sentence or two with n, the weakest link, what would settle it."
    )


def weigh(notes: Sequence[Notes]) -> tuple[list[Result], list[str]]:
    """All results of the recordings, and a line for each recording that is left out and why."""
    kept = comparable(notes)
    known = {id(at.notes) for at in kept}
    left_out = [f"{at.transcript}: not all of its samples were made known" for at in notes if id(at) not in known]
    return [result for question in QUESTIONS for result in question(kept)], left_out


def _sorted(sessions: Sequence[Session]) -> Iterator[Result]:
    for found in sortings(sessions):
        right = sum(answer.right for answer in found.answers)
        verdict = judge(right, len(found.answers), found.protocol)
        lines = [f"{right} of {len(found.answers)} right, where guessing gives {found.protocol.chance:.0%}"]
        counts = list(found.by_taster.values())
        if len(counts) == 1:
            lines.append(ONE_TASTER)
        elif max(trials for _, trials in counts) > 1:
            spread = judge_replicated([at for at, _ in counts], [n for _, n in counts], found.protocol.chance)
            lines += tell_spread(spread)
            verdict = replace(verdict, p_difference=spread.p_difference or 0.0)
        claim = claim_difference(verdict, circumstances(found.sessions, found.by_taster))
        yield Result(title=f"A {found.protocol.title}", figures=tuple(lines), claim=str(claim))


def tell_spread(spread: Replicated) -> Iterator[str]:
    """How far repeated trials of the same tasters carry."""
    p = written(spread.p_difference if spread.p_difference is not None else 1.0)
    yield f"tasters answered more than once: heterogeneity γ {spread.gamma:.2f}, with it {p}"
    yield f"the {spread.trials} trials tell as much as {spread.effective:.0f} by as many tasters would"


def _paired(sessions: Sequence[Session]) -> Iterator[Result]:
    for found in pairs(sessions):
        first, none, second = found.counts
        if found.about != "overall" and sum(found.counts) < FEW_ANSWERS:
            continue
        lines = [f"{found.names[0]} {first}, {found.names[1]} {second}, neither {none}"]
        if sum(found.counts) > len(found.tasters):
            lines.append(ONE_TASTER if len(found.tasters) == 1 else SAME_TASTERS)
        p = judge_pair(*found.counts).p_either if none else p_two_sided(first, second)
        claim = claim_pair(found.names, found.counts, p, circumstances(found.sessions, found.tasters))
        yield Result(title=_asked(found), figures=(*lines, *_place(found)), claim=_about(found, claim))


def _asked(found: Paired) -> str:
    return "Which is preferred" if found.about == "overall" else f"Which is more: {found.about}"


def _about(found: Paired, claim: Claim) -> str:
    if found.about == "overall":
        return str(claim)
    return (
        str(claim)
        .replace("was preferred to", f"was called more {found.about} than")
        .replace("is shown to be preferred", f"is shown to be more {found.about}")
    )


def _place(found: Paired) -> Iterator[str]:
    wins, of = found.first_tasted
    if of > 1:
        yield f"the cup tasted first was named {wins} of {of} times ({written(first_favoured(wins, of).p)})"


def _ranked(sessions: Sequence[Session]) -> Iterator[Result]:
    found = rankings(sessions)
    if not found or np.ptp(np.array(found.scores)) == 0:
        return
    judged = concordance(found.scores)
    order = sorted(range(judged.samples), key=lambda at: (-judged.rank_sums[at], found.products[at]))
    lines = [f"{found.products[at]}: rank sum {judged.rank_sums[at]:g}" for at in order]
    apart = (at for at in conover(found.scores) if at.p <= 0.05) if judged.p <= 0.05 else ()
    lines += [f"{found.products[at.one]} and {found.products[at.other]} differ ({written(at.p)}, Holm)" for at in apart]
    claim = claim_ranking(judged, found.products[order[0]], circumstances(found.sessions, found.tasters))
    yield Result(title="The ranking", figures=tuple(lines), claim=str(claim))


def _profiled(sessions: Sequence[Session]) -> Iterator[Result]:
    traits = profiles(sessions)
    for product in dict.fromkeys(at.product for at in traits):
        own = [at for at in traits if at.product == product]
        lines = [f"{at.term}: found {_share(at.found)}; strength {_strength(at.strength)}" for at in own]
        looks, sure = own[0].found.looks, [at.term for at in own if (at.found.low or 0) > 0.5]
        says = (
            f"Found in most cups of {product}: {', '.join(sure)}"
            if sure
            else f"No term is sure to be in most cups of {product}"
        )
        claim = f"{says} (n = {looks} looks). Weakest link: {weakest(circumstances(sessions))}."
        yield Result(title=f"The profile of {product}", figures=tuple(lines), claim=f"{claim} {_looks_more(looks)}")


def _looks_more(looks: int) -> str:
    enough = 10
    if looks >= enough:
        return "A term missing here may still be found by others."
    return f"About {enough} looks by several tasters would say which terms keep."


def _in_time(sessions: Sequence[Session]) -> Iterator[Result]:
    for product, taken in sorted(sips(sessions).items()):
        if len(taken) < FEW_SIPS:
            continue
        found = dominance(taken)
        lines = [
            f"{name}: most at {found.times[int(curve.argmax())]:.0%} of the sip, in {curve.max():.0%} of sips"
            for name, curve in found.curves.items() if curve.max() >= found.significant
        ]  # fmt: skip
        ruling = (
            "no sensation dominates" if not lines else "in turn " + ", then ".join(at.partition(":")[0] for at in lines)
        )
        claim = (
            f"In {product} {ruling} (n = {found.sips} sips). "
            "Weakest link: a sensation is timed by the word for it, and one look is taken at each of many times. "
            "Thirty sips or more would make the curves smooth."
        )
        yield Result(title=f"The order of sensations in {product}", figures=tuple(lines), claim=claim)


def _placed(sessions: Sequence[Session]) -> Iterator[Result]:
    counted = [counts for session in sessions if len(counts := terms_by_place(session)) >= 3]
    alike = [counts for counts in counted if len(counts) == len(counted[0])]
    if len(alike) > 1 and len(alike) == len(counted):
        yield from _places(np.array(alike))
    else:
        yield from _place_by_place(sessions)


def _places(counts: NDArray[np.int64]) -> Iterator[Result]:
    """Whether the place in the session matters, over several sessions of as many samples."""
    if all(np.ptp(row) == 0 for row in counts):
        return
    found = concordance(counts)
    told = tuple(f"place {place}: {mean:.1f} terms" for place, mean in enumerate(counts.mean(axis=0), start=1))
    sure = "depends on" if found.p <= 0.05 else "does not clearly depend on"
    claim = (
        f"How many terms are found {sure} the place in a session (n = {found.tasters} sessions of {found.samples} "
        f"places, {written(found.p)}). Weakest link: unless orders were balanced, place and product are one. "
        "A balanced order over the next sessions would keep them apart."
    )
    yield Result(title="Places in a session", figures=told, claim=claim)


def _place_by_place(sessions: Sequence[Session]) -> Iterator[Result]:
    for session in sessions:
        counts = terms_by_place(session)
        if len(counts) < 3 or len(set(counts)) == 1:
            continue
        found = drift(counts)
        moves = "fell" if found.correlation < 0 else "grew"
        sure = f"{moves} over the session" if found.p <= 0.05 else "did not clearly change over the session"
        claim = (
            f"The number of terms found {sure} (n = {found.places} places, {written(found.p)}). "
            "Weakest link: one session, in which place and product are one. The same in another order would tell."
        )
        told = ", ".join(f"{name} {count}" for name, count in zip(session.order, counts, strict=True))
        yield Result(title=f"Places in {session.notes.transcript}", figures=(f"terms by place: {told}",), claim=claim)


def _share(spoke: Spoke) -> str:
    return f"{spoke.value:.0%} ({spoke.low or 0:.0%} to {spoke.high or 1:.0%}, n = {spoke.looks})"


def _strength(spoke: Spoke) -> str:
    if spoke.low is None or spoke.high is None:
        return f"{spoke.value:.1f} of 3"
    return f"{spoke.value:.1f} of 3 ({spoke.low:.1f} to {spoke.high:.1f})"


QUESTIONS = (_sorted, _paired, _ranked, _profiled, _in_time, _placed)
"""What is asked of recordings, in order."""
