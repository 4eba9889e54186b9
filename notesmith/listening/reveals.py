"""What does each turn out to be?"""

from notesmith.listening.hearing import Hearing


def find_reveals(hearing: Hearing) -> None:
    """What does each turn out to be?"""
