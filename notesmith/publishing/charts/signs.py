"""What stands for a sample in a chart: a colour and a shape together, so that neither is needed alone."""

import itertools
import math
import re
from collections.abc import Sequence
from dataclasses import dataclass

Outline = tuple[tuple[float, float], ...]

INK, FAINT, GRID, PAPER = "#1c1c1c", "#565656", "#d9d9d9", "#ffffff"

# Chosen by search with four wanted hues given: between any two of them the difference (CIE 1976) is at least 27 for
# normal sight and for each of the three kinds of colour blindness (Machado, Oliveira and Fernandes 2009, severity 1),
# the difference in lightness, which a grey print keeps, at least 6.6, and the contrast with white at least 3 to 1.
COLOURS = ("#181895", "#ca4126", "#19a777", "#7d1522", "#774da0", "#7b385e", "#7b70f2", "#3c0151")

HUES = {"blue": 0, "red": 1, "green": 2, "purple": 4, "violet": 4}
"""Colours that people call samples after, and the place of each among ours."""


def _regular(corners: int, turn: float, radius: float = 1.0) -> Outline:
    steps = [math.tau * k / corners + turn for k in range(corners)]
    return tuple((round(radius * math.sin(step), 3), round(-radius * math.cos(step), 3)) for step in steps)


def _triangle(turn: float) -> Outline:
    """A triangle that points that way, with the middle of its box at 0, 0."""
    corners = _regular(3, turn, 1.3)
    across, down = ([corner[axis] for corner in corners] for axis in (0, 1))
    x, y = (max(across) + min(across)) / 2, (max(down) + min(down)) / 2
    return tuple((round(a - x, 3), round(b - y, 3)) for a, b in corners)


def _star() -> Outline:
    outer, inner = _regular(5, 0.0, 1.25), _regular(5, math.pi / 5, 0.55)
    return tuple(point for pair in zip(outer, inner, strict=True) for point in pair)


_PLUS = ((-0.4, -1.1), (0.4, -1.1), (0.4, -0.4), (1.1, -0.4), (1.1, 0.4), (0.4, 0.4))
SHAPES: tuple[Outline, ...] = (
    _regular(24, 0.0),
    _regular(4, math.pi / 4, 1.25),
    _triangle(0.0),
    _regular(4, 0.0, 1.3),
    (*_PLUS, *((-x, -y) for x, y in _PLUS)),
    _triangle(math.pi),
    _star(),
    _triangle(math.pi / 2),
    _triangle(-math.pi / 2),
)
"""Outlines around 0, 0 with a radius of about 1; y points down. One more than colours, so that pairs do not repeat."""


@dataclass(frozen=True)
class Sign:
    """The colour and the outline of one sample."""

    colour: str
    outline: Outline

    @property
    def tint(self) -> str:
        """The colour as a wash on white paper.

        >>> Sign("#000000", ()).tint
        '#d9d9d9'
        """
        parts = (int(self.colour[at : at + 2], 16) for at in (1, 3, 5))
        return "#" + "".join(f"{255 - round((255 - part) * 0.15):02x}" for part in parts)


def sign(number: int) -> Sign:
    """The sign of the sample of that number, from 0; no two of the first 72 are the same.

    >>> sign(8).colour == sign(0).colour, sign(8).outline == sign(0).outline
    (True, False)
    """
    return Sign(COLOURS[number % len(COLOURS)], SHAPES[number % len(SHAPES)])


def signs_for(codes: Sequence[str]) -> list[Sign]:
    """A sign for each code; one that is called after a colour of ours has it, so that no chart draws red in blue.

    >>> [found.colour for found in signs_for(["red", "blue", "white"])] == [COLOURS[1], COLOURS[0], COLOURS[2]]
    True
    """
    own: dict[int, str] = {}
    for code in codes:
        for hue in (HUES[word] for word in re.findall(r"[a-z]+", code.casefold()) if word in HUES):
            own.setdefault(hue, code)
    places = {code: hue for hue, code in own.items()}
    free = (number for number in itertools.count() if number not in places.values())
    return [sign(places[code] if code in places else next(free)) for code in codes]
