"""What is stated?"""

from notesmith.listening.hearing import Hearing


def find_facts(hearing: Hearing) -> None:
    """What is stated?"""
