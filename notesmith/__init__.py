"""Tasting notes from the captions of a recorded tasting, each with the words that prove it."""

__version__ = "0.1.0"
