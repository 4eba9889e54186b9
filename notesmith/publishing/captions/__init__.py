"""Captions with the repairs of the notes in them: the file itself mended in place, or WebVTT anew."""
