"""Chapters: one model in integer milliseconds, and a file for each form it is written in."""
