"""The lexicon: the words tasters use, and the concepts they stand for."""

from notesmith.lexicon.index import Lexicon
from notesmith.lexicon.model import Concept, Hit, Label

__all__ = ["Concept", "Hit", "Label", "Lexicon"]
