"""What is set beside what?"""

from notesmith.listening.hearing import Hearing


def find_comparisons(hearing: Hearing) -> None:
    """What is set beside what?"""
