"""Listening: from a talk and a tasting sheet to notes, one question after another."""

from notesmith.listening.notes import draft_sheet, take_notes

__all__ = ["draft_sheet", "take_notes"]
