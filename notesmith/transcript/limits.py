"""How much a caption file may hold. Reading stays within a few seconds and about 2 GB at every limit."""

MAX_BYTES = 64 * 1024 * 1024
MAX_CUES = 200_000
MAX_WORDS = 1_000_000
MAX_MS = 24 * 60 * 60 * 1000
MS_PER_WORD = 400
"""The assumed length of a word where nothing tells it (150 words a minute; common practice, no source)."""
