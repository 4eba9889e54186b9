"""Clips: the moments of a recording worth cutting, and a file for each form they are written in."""
