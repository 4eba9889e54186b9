"""Words from captions, made fit to be shown: a caption file may hold signs that steer a terminal or a spreadsheet."""

import re
import unicodedata

# Signs that turn the direction of writing, and so can make a line say something else than it holds.
_TURNING = frozenset("\u061c\u200e\u200f\u202a\u202b\u202c\u202d\u202e\u2066\u2067\u2068\u2069")

_BLANK = frozenset("\u115f\u1160\u2800\u3164\uffa0")


def one_line(text: str) -> str:
    r"""The text on one line, every sign that would steer what shows it replaced.

    >>> one_line("sweet\n \x1b[31mplum")
    'sweet �[31mplum'
    """
    line = re.sub(r"\s+", " ", text).strip()
    if line.isascii() and line.isprintable():  # most texts, and so without detour
        return line
    return "".join("�" if _steers(sign) else sign for sign in line)


def _steers(sign: str) -> bool:
    return sign in _TURNING or unicodedata.category(sign) in ("Cc", "Cs")


def is_seen(text: str) -> bool:
    r"""Whether a reader sees anything of the text: there are letters that take room and show nothing.

    >>> is_seen("\u200b\u3164 "), is_seen("茶")
    (False, True)
    """
    return any(sign not in _BLANK and unicodedata.category(sign)[0] not in "CZM" for sign in text)
