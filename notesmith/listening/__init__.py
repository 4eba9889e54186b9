"""Listening: from a talk and a tasting sheet to notes, one question after another."""

from notesmith.listening.notes import take_notes

__all__ = ["take_notes"]
