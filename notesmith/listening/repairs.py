"""What was meant?"""

from notesmith.listening.hearing import Hearing


def find_repairs(hearing: Hearing) -> None:
    """What was meant?"""
