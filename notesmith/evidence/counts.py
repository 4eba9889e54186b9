"""Counts typed on the command line, weighed and told."""

import csv
import re
from collections.abc import Sequence
from dataclasses import replace
from pathlib import Path

import numpy as np
from numpy.typing import NDArray

from notesmith.errors import NotesmithError
from notesmith.evidence.results import ONE_TASTER, Result, tell_spread
from notesmith.evidence.text import PIPE_WIDTH, render
from notesmith.sensory.claims import (
    ALPHA,
    Circumstances,
    claim_alike,
    claim_difference,
    claim_pair,
    claim_ranking,
    written,
    written_range,
)
from notesmith.sensory.difference import Estimate, Method, judge, least_right, p_more, p_two_sided
from notesmith.sensory.no_preference import judge_pair
from notesmith.sensory.posthoc import conover
from notesmith.sensory.power import fewest, power_curve, trials_for
from notesmith.sensory.protocols import PROTOCOLS
from notesmith.sensory.ranking import concordance, trend
from notesmith.sensory.replicated import judge_replicated
from notesmith.sensory.yes_no import judge_calls, power_of_calls

LEVELS = (0.2, 0.1, 0.05, 0.01, 0.001)


class CountError(NotesmithError):
    """Counts or scores that do not fit together."""

    exit_status = 2


def tell_difference(name: str, right: int, trials: int, alike: float | None, at: Circumstances, method: Method) -> str:
    """What right answers say of a difference, or of likeness where a share told apart is given that is too many."""
    if right > trials:
        raise CountError(f"{right} right of {trials} trials", mend="give the right answers first, then the trials")
    found = judge(right, trials, PROTOCOLS[name], method=method)
    lines = [
        f"right answers {_estimate(found.share)}, where guessing gives {found.protocol.chance:.3f}",
        f"truly told apart {_estimate(found.told_apart)}",
        f"d′ {_estimate(found.distance)}",
        f"needed for more than chance at 5 %: {_count(least_right(trials, found.protocol.chance), trials)}",
    ]
    if at.tasters < trials:
        lines.append(f"by {at.tasters} tasters, weighed as if each trial were another taster's: see `repeated`")
    claim = claim_difference(found, at) if alike is None else claim_alike(found, alike, at)
    return _told(f"A {found.protocol.title}, {right} of {trials} right", lines, str(claim))


def tell_repeated(name: str, counts: Sequence[str]) -> str:
    """What the counts of each taster say, where each had several trials."""
    pairs = [_pair(text) for text in counts]
    protocol, right, trials = PROTOCOLS[name], sum(at for at, _ in pairs), sum(n for _, n in pairs)
    verdict = judge(right, trials, protocol)
    if len(pairs) == 1:
        lines = [ONE_TASTER]
    else:
        spread = judge_replicated([at for at, _ in pairs], [n for _, n in pairs], protocol.chance)
        lines = list(tell_spread(spread))
        verdict = replace(verdict, p_difference=spread.p_difference or 0.0)
    claim = claim_difference(verdict, Circumstances(len(pairs)))
    return _told(
        f"A {protocol.title}, {right} of {trials} right by {len(pairs)} taster{'' if len(pairs) == 1 else 's'}",
        lines,
        str(claim),
    )


def _pair(text: str) -> tuple[int, int]:
    found = re.fullmatch(r"(\d+)/(\d+)", text)
    if not found or int(found[1]) > int(found[2]) or int(found[2]) == 0:
        raise CountError(f"{text!r} is no count of a taster", mend="write right answers of trials, such as 5/8")
    return int(found[1]), int(found[2])


def tell_preference(first: int, none: int, second: int, expected: bool, at: Circumstances) -> str:
    """What preferences of a pair say; `expected` asks only whether the first is ahead."""
    if first + none + second == 0:
        raise CountError("nobody answered", mend="give how many preferred the first, and how many the second")
    lines = [f"the first {first}, the second {second}, neither {none}"]
    if none:
        found = judge_pair(second, none, first)
        p = found.p_second if expected else found.p_either
        lines.append(f"d′ {_estimate(found.distance)}, above 0 where the first is ahead")
    else:
        p = p_more(first, first + second, 0.5) if expected else p_two_sided(first, second)
    return _told(
        "A paired comparison", lines, str(claim_pair(("the first", "the second"), (first, none, second), p, at))
    )


def tell_calls(hits: int, of_a: int, alarms: int, of_other: int) -> str:
    """What an A-not-A test says."""
    if hits > of_a or alarms > of_other:
        raise CountError("more calls than cups", mend="give calls of A among cups of A, then among the others")
    found = judge_calls(hits, of_a, alarms, of_other)
    needed = fewest(lambda n: np.array([power_of_calls(1.0, int(at)) for at in n]), 0.9)
    says = "A difference was found" if found.p_difference <= ALPHA else "No difference was shown"
    claim = (
        f"{says}: {hits} of {of_a} cups of A and {alarms} of {of_other} others were called A "
        f"(n = {of_a + of_other}, {written(found.p_difference)}). Weakest link: these counts do not say how many "
        f"called. To find a difference of d′ 1 nine times in ten, {needed} cups of each kind are needed."
    )
    return _told("An A-not-A test", (f"d′ {_estimate(found.distance)}",), claim)


def table_of_trials(distance: float, power: float, alpha: float) -> str:
    """The trials that each test needs, and the cups that they make."""
    lines = [f"Trials to find a difference of d′ {distance:g} with power {power:g} at level {alpha:g}", ""]
    for protocol in PROTOCOLS.values():
        trials = trials_for(protocol, distance, power, alpha)
        told = f"{trials:>7} trials {trials * protocol.tasted:>7} cups" if trials else "  more than can be held"
        lines.append(f"{protocol.title:36}{told}")
    each = fewest(lambda n: np.array([power_of_calls(distance, int(at), alpha) for at in n]), power, most=256)
    told = f"{2 * each:>7} cups, {each} of each kind" if each else "  more than 256 cups of each kind"
    return "\n".join((*lines, f"{'A-not-A test':36}{told}", ""))


def table_of_power(trials: int, alpha: float) -> str:
    """How often each test of so many trials finds a difference, by d′."""
    distances = np.arange(0.5, 3.01, 0.5)
    lines = [
        f"Power of {trials} trials at level {alpha:g}, by d′",
        "",
        " " * 36 + "".join(f"{d:>7g}" for d in distances),
    ]
    curves = ((at.title, power_curve(at, distances, trials, alpha)) for at in PROTOCOLS.values())
    lines += [f"{title:36}{_row(curve)}" for title, curve in curves]
    lines.append(f"{'A-not-A test, so many of each kind':36}" + _row(power_of_calls(distances, trials, alpha)))
    return "\n".join((*lines, ""))


def _row(figures: NDArray[np.float64]) -> str:
    return "".join(f"{figure:>7.2f}" for figure in figures)


def table_of_counts(name: str, most: int) -> str:
    """The fewest right answers that are more than chance, computed."""
    chance = PROTOCOLS[name].chance
    lines = ["trials" + "".join(f"{level:>7g}" for level in LEVELS)]
    for trials in range(3, most + 1):
        counts = (_count(least_right(trials, chance, level), trials) for level in LEVELS)
        lines.append(f"{trials:>6}" + "".join(f"{count:>7}" for count in counts))
    return "\n".join((*lines, ""))


def tell_ranking(path: Path, *, foreseen: bool) -> str:
    """What a table of scores says: a column for each sample, a row for each taster."""
    names, scores = _scores(path)
    try:
        found = concordance(scores)
    except ValueError as error:
        raise CountError(str(error), where=str(path)) from None
    order = sorted(range(len(names)), key=lambda at: (-found.rank_sums[at], at))
    lines = [f"{names[at]}: rank sum {found.rank_sums[at]:g}" for at in order]
    lines.append(f"Friedman {found.statistic:.3f}, {written(found.p)}; Kendall's W {found.w:.3f}")
    if foreseen:
        page = trend(scores)
        lines.append(f"Page's L {page.statistic:g} for the order foreseen, {written(page.p)}")
    if found.p <= ALPHA:
        apart = [at for at in conover(scores) if at.p <= ALPHA]
        lines += [f"{names[at.one]} and {names[at.other]} differ ({written(at.p)}, Holm)" for at in apart]
    claim = claim_ranking(found, names[order[0]], Circumstances(found.tasters))
    return _told(f"A ranking of {len(names)} samples", lines, str(claim))


def _scores(path: Path) -> tuple[list[str], list[list[float]]]:
    try:
        rows = [row for row in csv.reader(path.read_text("utf-8-sig").splitlines()) if any(row)]
    except (OSError, UnicodeDecodeError) as error:
        raise CountError(f"cannot be read: {error}", where=str(path)) from None
    if not rows or len({len(row) for row in rows}) != 1:
        raise CountError("is no table", where=str(path), mend="write a header of samples and a row for each taster")
    try:
        return rows[0], [[float(cell) for cell in row] for row in rows[1:]]
    except ValueError:
        raise CountError("a score is no number", where=str(path), mend="write numbers below the header") from None


def _told(title: str, figures: tuple[str, ...] | list[str], claim: str) -> str:
    return render([Result(title=title, figures=tuple(figures), claim=claim)], PIPE_WIDTH)


def _estimate(found: Estimate) -> str:
    error = f", error {found.error:.3f}" if found.error is not None else ""
    value = "without end" if np.isinf(found.value) else f"{found.value:.3f}"
    return f"{value} (95 % {written_range(found.low, found.high, 3)}{error})"


def _count(least: object, trials: int) -> str:
    count = int(np.asarray(least))
    return str(count) if count <= trials else "-"
