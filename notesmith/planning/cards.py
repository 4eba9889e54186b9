"""Cards to print: one page for whoever pours, and a card of each taster for every round."""

from collections.abc import Iterator
from dataclasses import dataclass
from functools import cache
from typing import Any, Literal

from jinja2 import Environment, PackageLoader, StrictUndefined

from notesmith.planning.drawing import Plan, Round
from notesmith.planning.wishes import Test
from notesmith.publishing.plain import one_line
from notesmith.records import SheetServing

Paper = Literal["A4", "letter"]
FACETS = ("appearance", "aroma", "flavour", "mouthfeel", "finish", "overall")

ROOM: dict[Paper, float] = {"A4": 222, "letter": 204}
"""Millimetres that the rows of a taster's card may take: what the paper leaves below a heading of two lines."""
TASKS: dict[Test, str] = {
    "triangle": "Two of the three are the same. Say aloud which two, by their codes; guess if you cannot tell.",
    "tetrad": "Two and two of the four are the same. Say aloud which, by their codes; guess if you cannot tell.",
    "two-out-of-five": "Two are the same, and so are the other three. Say aloud which, by their codes; guess if you "
    "cannot tell.",
}
"""What a taster does in a test of difference."""

REST = 8.0
"""Millimetres that a rest takes on the card."""


@dataclass(frozen=True)
class Card:
    """What one taster is handed in one round, line by line."""

    round: Round
    serving: SheetServing
    lines: tuple["Line", ...]


@dataclass(frozen=True)
class Line:
    """A line of a card: the place and the code there; or a rest, where there is no code."""

    place: int
    code: str


def pouring_page(plan: Plan, paper: Paper) -> str:
    """The page of whoever weighs, heats and pours, in HTML; it holds the key, so no taster may see it."""
    return _written("pouring.html", plan, paper)


def tasting_page(plan: Plan, paper: Paper) -> str:
    """The tasters' cards in HTML: codes in the order of serving, room to write, and nothing of the key."""
    task = TASKS[plan.wishes.test] if plan.wishes.test else ""
    cards = list(_cards(plan))
    return _written("tasting.html", plan, paper, cards=cards, facets=FACETS, height=_height(plan, paper), task=task)


def _cards(plan: Plan) -> Iterator[Card]:
    """Every taster's cards lie together, in the order of the rounds."""
    for number in range(len(plan.wishes.tasters)):
        for each in plan.rounds:
            yield Card(each, each.servings[number], tuple(_lines(each.servings[number].order, plan.wishes.rest_after)))


def _lines(order: tuple[str, ...], rest_after: int) -> Iterator[Line]:
    for place, code in enumerate(order, start=1):
        yield Line(place, code)
        if rest_after and place % rest_after == 0 and place < len(order):
            yield Line(place, "")


def _height(plan: Plan, paper: Paper) -> float:
    """Millimetres of one place, so that a card fills its page if it fits, and can be written on if not."""
    count, after = plan.wishes.served, plan.wishes.rest_after
    rests = (count - 1) // after if after else 0
    return round(min(44, max(13, (ROOM[paper] - REST * rests) / count)), 1)


def _written(name: str, plan: Plan, paper: Paper, **context: Any) -> str:
    return (
        _environment()
        .get_template(name)
        .render(
            plan=plan,
            wishes=plan.wishes,
            sheet=plan.sheet,
            paper=paper,
            seal=_in_fours(plan.sheet.commitment or ""),
            **context,
        )
    )


@cache
def _environment() -> Environment:
    environment = Environment(
        loader=PackageLoader("notesmith.planning", "templates"), autoescape=True, undefined=StrictUndefined,
        finalize=lambda value: one_line(value) if type(value) is str else value, trim_blocks=True, lstrip_blocks=True,
        keep_trailing_newline=True,
    )  # fmt: skip
    environment.filters |= {"clock": clock_time, "number": number}
    return environment


def clock_time(seconds: float) -> str:
    """A time as one reads it off a kitchen clock.

    >>> clock_time(360), clock_time(25), clock_time(150), clock_time(32400)
    ('6 min', '25 s', '2 min 30 s', '9 h')
    """
    hours, rest = divmod(round(seconds), 3600)
    minutes, left = divmod(rest, 60)
    parts = [f"{amount} {unit}" for amount, unit in ((hours, "h"), (minutes, "min"), (left, "s")) if amount]
    return " ".join(parts) or "0 s"


def number(amount: float) -> str:
    """An amount without needless digits.

    >>> number(285.0), number(5.6), number(0.05)
    ('285', '5.6', '0.05')
    """
    return f"{amount:.2f}".rstrip("0").rstrip(".")


def _in_fours(signs: str) -> str:
    """The first sixteen signs of a commitment, four by four, as they can be read aloud."""
    return " ".join(signs[start : start + 4] for start in range(0, 16, 4))
