"""How labels and spoken words are made comparable: without case, accents, hyphens or apostrophes."""

import re
import unicodedata
from functools import lru_cache

POSSESSIVE = re.compile(r"['’]s\b")
APOSTROPHE = re.compile(r"['’]")


@lru_cache(maxsize=1 << 16)
def pieces(text: str) -> tuple[str, ...]:
    """The comparable words of a label or of one spoken word; none for a lone hyphen or white space.

    >>> pieces("Pu-erh"), pieces("pu erh"), pieces("bird's-eye"), pieces("rosé"), pieces("-")
    (('pu', 'erh'), ('pu', 'erh'), ('bird', 's', 'eye'), ('rose',), ())
    """
    plain = text.lower() if text.isascii() else without_accents(text).lower()
    if plain.isalpha():
        return (plain,)
    if "'" in plain or "’" in plain:
        plain = APOSTROPHE.sub("", POSSESSIVE.sub(" s", plain))
    return tuple(plain.replace("-", " ").replace("\u2010", " ").replace("\u2011", " ").split())


def without_accents(text: str) -> str:
    """The text in plain letters.

    >>> without_accents("Gewürztraminer, café")
    'Gewurztraminer, cafe'
    """
    return "".join(sign for sign in unicodedata.normalize("NFKD", text) if not unicodedata.combining(sign))
