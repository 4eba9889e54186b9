"""What was taken back?"""

from notesmith.listening.hearing import Hearing


def apply_retractions(hearing: Hearing) -> None:
    """What was taken back?"""
