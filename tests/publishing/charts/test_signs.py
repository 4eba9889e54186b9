"""Colours and shapes that tell samples apart, whoever looks at them and however they are printed."""

import itertools
import tomllib
from pathlib import Path

import numpy as np
import numpy.typing as npt
import pytest

from notesmith.publishing.charts.signs import COLOURS, FAINT, INK, PAPER, sign

Vector = npt.NDArray[np.float64]
SIGHTS = tomllib.loads((Path(__file__).parents[2] / "cases/publishing/colour_blindness.toml").read_text("utf-8"))
# sRGB to CIE XYZ (IEC 61966-2-1), and the white of daylight 6500 K in it.
TO_XYZ = np.array(
    [[0.4124564, 0.3575761, 0.1804375], [0.2126729, 0.7151522, 0.0721750], [0.0193339, 0.1191920, 0.9503041]]
)
WHITE = TO_XYZ @ np.ones(3)


def linear(colour: str) -> Vector:
    """The light of a colour written as #rrggbb."""
    parts = np.array([int(colour[at : at + 2], 16) for at in (1, 3, 5)]) / 255
    light: Vector = np.where(parts <= 0.04045, parts / 12.92, ((parts + 0.055) / 1.055) ** 2.4)
    return light


def lab(light: Vector) -> Vector:
    """The same in CIE 1976 L*a*b*, in which distances are differences that are seen."""
    ratio = TO_XYZ @ np.clip(light, 0, 1) / WHITE
    x, y, z = np.where(ratio > (6 / 29) ** 3, np.cbrt(ratio), ratio / (3 * (6 / 29) ** 2) + 4 / 29)
    return np.array([116 * y - 16, 500 * (x - y), 200 * (y - z)])


def contrast(colour: str) -> float:
    """Contrast with the paper as WCAG 2 counts it."""
    dark, bright = sorted(float(TO_XYZ[1] @ linear(one)) for one in (colour, PAPER))
    return (bright + 0.05) / (dark + 0.05)


def test_white_is_white() -> None:
    """The arithmetic of this test gives the lightness that white has by definition."""
    assert lab(linear("#ffffff")) == pytest.approx([100, 0, 0], abs=0.01)


@pytest.mark.parametrize("sight", SIGHTS)
def test_colours_differ_for_every_sight(sight: str) -> None:
    """No two colours come near each other; a difference of 10 is seen at a glance."""
    seen = [lab(np.array(SIGHTS[sight]) @ linear(colour)) for colour in COLOURS]
    assert min(float(np.linalg.norm(a - b)) for a, b in itertools.combinations(seen, 2)) >= 27


def test_colours_differ_in_grey() -> None:
    """Printed grey, no two colours are equally light."""
    lightness = [float(lab(linear(colour))[0]) for colour in COLOURS]
    assert min(abs(a - b) for a, b in itertools.combinations(lightness, 2)) >= 6.6


@pytest.mark.parametrize("colour", COLOURS)
def test_signs_stand_out_from_the_paper(colour: str) -> None:
    """WCAG 2.1 asks for 3 to 1 for what must be seen to understand a picture."""
    assert contrast(colour) >= 3


@pytest.mark.parametrize("colour", [INK, FAINT])
def test_words_stand_out_from_the_paper(colour: str) -> None:
    """WCAG 2.1 asks for 4.5 to 1 for small letters."""
    assert contrast(colour) >= 4.5


def test_neighbours_differ_in_shape_and_colour() -> None:
    """Up to eight samples, neither colour nor shape is used twice."""
    signs = [sign(number) for number in range(8)]
    assert len({one.colour for one in signs}) == len({one.outline for one in signs}) == 8


def test_no_sign_is_used_twice() -> None:
    """Not even among as many samples as nobody tastes."""
    assert len({sign(number) for number in range(72)}) == 72
