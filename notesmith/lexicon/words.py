"""How labels and spoken words are made comparable: without case, accents, hyphens or apostrophes."""

import re
import unicodedata

POSSESSIVE = re.compile(r"['’]s\b")
APOSTROPHE = re.compile(r"['’]")
GAP = re.compile(r"[\s\-‐‑]+")


def pieces(text: str) -> tuple[str, ...]:
    """The comparable words of a label or of one spoken word; none for a lone hyphen or white space.

    >>> pieces("Pu-erh"), pieces("pu erh"), pieces("bird's-eye"), pieces("rosé"), pieces("-")
    (('pu', 'erh'), ('pu', 'erh'), ('bird', 's', 'eye'), ('rose',), ())
    """
    if text.isascii() and text.isalpha():
        return (text.lower(),)
    plain = APOSTROPHE.sub("", POSSESSIVE.sub(" s", without_accents(text).lower()))
    return tuple(piece for piece in GAP.split(plain) if piece)


def without_accents(text: str) -> str:
    """The text in plain letters.

    >>> without_accents("Gewürztraminer, café")
    'Gewurztraminer, cafe'
    """
    if text.isascii():
        return text
    return "".join(sign for sign in unicodedata.normalize("NFKD", text) if not unicodedata.combining(sign))
