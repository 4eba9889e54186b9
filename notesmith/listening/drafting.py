"""A tasting sheet proposed from the talk alone."""

from notesmith.lexicon import Lexicon
from notesmith.records import Sheet
from notesmith.transcript import Talk


def draft_from_talk(talk: Talk, lexicon: Lexicon) -> Sheet:
    """Propose samples, preparations and tasters from the talk."""
    return Sheet()
