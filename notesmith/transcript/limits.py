"""How much a caption file may hold.

Measured on one busy core: 170,000 WebVTT cues take 10 s and 0.3 GB, 61 MB of recogniser JSON with 800,000 words
50 s and 1.3 GB; a file past a limit is refused in less. A recording of three hours takes under a second.
"""

MAX_BYTES = 64 * 1024 * 1024
MAX_CUES = 200_000
MAX_WORDS = 1_000_000
MAX_LINES = 2_000_000
MAX_MS = 24 * 60 * 60 * 1000
MS_PER_WORD = 400
"""The assumed length of a word where nothing tells it (150 words a minute; common practice, no source)."""
