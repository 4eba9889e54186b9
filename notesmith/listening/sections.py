"""Where would a viewer want a chapter?"""

from notesmith.listening.hearing import Hearing


def find_sections(hearing: Hearing) -> None:
    """Where would a viewer want a chapter?"""
