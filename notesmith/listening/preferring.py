"""Which is liked better?"""

from notesmith.listening.hearing import Hearing


def find_preferences(hearing: Hearing) -> None:
    """Which is liked better?"""
