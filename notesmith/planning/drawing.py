"""A plan is drawn: codes, orders and amounts; a sheet for the tasters, and a sealed key."""

import secrets
from collections.abc import Collection
from dataclasses import dataclass
from hashlib import sha256
from random import Random

from notesmith.planning.amounts import Brew, Need, brews_of, needs_of
from notesmith.planning.codes import draw_codes, spoken
from notesmith.planning.key import Key, commitment
from notesmith.planning.orders import Fairness, fairness_of, serving_orders
from notesmith.planning.wishes import Wishes, check
from notesmith.records import Sheet, SheetSample, SheetServing


@dataclass(frozen=True)
class Round:
    """All samples once in one preparation: its number, who is handed them in which order, and what each is."""

    number: int
    brew: Brew | None
    samples: tuple[SheetSample, ...]
    servings: tuple[SheetServing, ...]


@dataclass(frozen=True)
class Plan:
    """Everything drawn from the wishes: what may be shown, what stays sealed, and what is needed."""

    wishes: Wishes
    sheet: Sheet
    key: Key
    rounds: tuple[Round, ...]
    fairness: Fairness
    brews: tuple[Brew, ...]
    needs: tuple[Need, ...]


def draw(wishes: Wishes, seed: str | None = None, used: Collection[str] = ()) -> Plan:
    """Draw a plan; without a seed every plan is another one, with a seed it is always the same.

    Args:
        wishes: What is to be tasted, how and by whom.
        seed: Where all chance comes from; whoever knows it can draw the key, so it goes into the key only.
        used: Codes of earlier tastings, which are not used again.

    Raises:
        SheetError: no fair tasting can be made of the wishes.
    """
    check(wishes)
    seed = secrets.token_hex(16) if seed is None else seed
    random = Random(seed)  # noqa: S311 - as secret as its seed, and must be repeatable
    brews = brews_of(wishes)
    rounds, fairness = _rounds(wishes, brews, random, used)
    samples = sorted({sample.id: sample for each in rounds for sample in each.samples}.values(), key=lambda one: one.id)
    key = Key(salt=sha256(f"salt {seed}".encode()).hexdigest(), seed=seed, samples=tuple(samples))
    sheet = _sheet(wishes, key, brews, rounds, fairness)
    return Plan(wishes, sheet, key, rounds, fairness, brews, needs_of(wishes, brews))


def _rounds(
    wishes: Wishes, brews: tuple[Brew, ...], random: Random, used: Collection[str]
) -> tuple[tuple[Round, ...], Fairness]:
    """The rounds with their servings; the orders of all of them are balanced as one."""
    codes = _codes(wishes, random, used)
    kinds = [(number, brew) for number in range(wishes.repeats) for brew in brews or (None,)]
    orders = serving_orders(wishes.served, len(kinds) * len(wishes.tasters), random)
    rounds = []
    for place, (number, brew) in enumerate(kinds):
        mine = orders[place * len(wishes.tasters) : (place + 1) * len(wishes.tasters)]
        servings = tuple(
            SheetServing(
                taster=taster,
                preparation=brew.id if brew else None,
                order=tuple(codes[number][cup].id for cup in order),
            )
            for taster, order in zip(wishes.tasters, mine, strict=True)
        )
        rounds.append(Round(number + 1, brew, codes[number], servings))
    return tuple(rounds), fairness_of(orders)


def _codes(wishes: Wishes, random: Random, used: Collection[str]) -> list[tuple[SheetSample, ...]]:
    """The cups of each repeat as samples, under codes that are new each time."""
    cups = wishes.cups(random)
    codes = iter(draw_codes(len(cups) * wishes.repeats, random, used))
    return [
        tuple(cup.under(code, spoken(code)) for cup, code in zip(cups, codes, strict=False))
        for _ in range(wishes.repeats)
    ]


def _sheet(wishes: Wishes, key: Key, brews: tuple[Brew, ...], rounds: tuple[Round, ...], fairness: Fairness) -> Sheet:
    return Sheet(
        title=wishes.title,
        category=wishes.category,
        samples=tuple(SheetSample(id=sample.id, aliases=sample.aliases) for sample in key.samples),
        tasters=wishes.tasters,
        preparations=tuple(brew.for_sheet() for brew in brews),
        blind=True,
        servings=tuple(serving for each in rounds for serving in each.servings),
        balance=fairness.balance,
        commitment=commitment(key),
    )
