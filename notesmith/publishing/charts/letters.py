"""How much room words take in a chart, and how they are made to fit."""

import unicodedata
from functools import cache
from typing import TYPE_CHECKING

from notesmith.publishing.plain import one_line

if TYPE_CHECKING:
    from matplotlib.ft2font import FT2Font

LONGEST = 300
ELLIPSIS = "…"


def width(words: str, size: float, *, bold: bool = False) -> float:
    """Width in pixels of words set in letters of that size."""
    return sum(_advance(letter, bold) for letter in words) * size


def fit(words: str, room: float, size: float, *, bold: bool = False) -> str:
    """The words on one line, cut with an ellipsis where they do not fit into that many pixels."""
    words = one_line(words[:LONGEST])
    if width(words, size, bold=bold) <= room:
        return words
    left, kept = room - width(ELLIPSIS, size, bold=bold), 0
    while (left := left - width(words[kept], size, bold=bold)) >= 0:
        kept += 1
    return words[:kept].rstrip() + ELLIPSIS


def wrap(words: str, room: float, size: float, *, bold: bool = False, lines: int = 99) -> list[str]:
    """The words on as many lines as they need, at most `lines`; the last is cut where they need more."""
    done: list[str] = []
    rest = one_line(words[: LONGEST * lines]).split()
    while rest and len(done) < lines - 1:
        taken = 1
        while taken < len(rest) and width(" ".join(rest[: taken + 1]), size, bold=bold) <= room:
            taken += 1
        done.append(fit(" ".join(rest[:taken]), room, size, bold=bold))
        rest = rest[taken:]
    return [*done, fit(" ".join(rest), room, size, bold=bold)] if rest else done


@cache
def _advance(letter: str, bold: bool) -> float:
    """Width of one letter set in letters of size 1; what the font lacks is taken to be as wide as a full square."""
    font = _font(bold)
    if unicodedata.combining(letter):
        return 0.0
    glyph = font.get_char_index(ord(letter))
    return font.load_glyph(glyph).linearHoriAdvance / 65536 / 100 if glyph else 1.0


@cache
def _font(bold: bool) -> "FT2Font":
    from matplotlib.font_manager import FontProperties, findfont
    from matplotlib.ft2font import FT2Font

    # One of our own: matplotlib changes the size of those it hands out.
    font = FT2Font(findfont(FontProperties(family="DejaVu Sans", weight="bold" if bold else "normal")))
    font.set_size(100, 72)
    return font


def families(words: str) -> list[str]:
    """The fonts to draw the words with: the usual one, then those at hand that hold what it lacks."""
    lacking = frozenset(letter for letter in words if not _font(False).get_char_index(ord(letter)))
    return ["DejaVu Sans", *(_fonts_with(lacking) if lacking else ())]


@cache
def _fonts_with(letters: frozenset[str]) -> tuple[str, ...]:
    """Names of installed fonts that hold the letters between them, in the order of their names; as few as will do."""
    from matplotlib.font_manager import fontManager

    names, missing = [], set(letters)
    for entry in sorted(fontManager.ttflist, key=lambda entry: (entry.name, entry.fname)):
        if not missing:
            break
        if held := _held(entry.fname, missing):
            names.append(entry.name)
            missing -= held
    return tuple(dict.fromkeys(names))


def _held(file: str, letters: set[str]) -> set[str]:
    from matplotlib.font_manager import get_font

    try:
        font = get_font(file)
    except (OSError, RuntimeError):  # a font that cannot be read draws nothing
        return set()
    return {letter for letter in letters if font.get_char_index(ord(letter))}
