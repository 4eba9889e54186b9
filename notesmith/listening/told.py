"""What the encoder answers of every word: a head a question, and for each pointer what every part is worth."""

from typing import get_args

from notesmith.listening.shown import FACETS, FACT_KINDS, PRESENCES, SECTION_KINDS
from notesmith.records import Intensity, Voice

INTENSITIES: tuple[Intensity | None, ...] = (None, *get_args(Intensity))
VOICES: tuple[Voice, ...] = get_args(Voice)
SCOPES = ("one side", "overall")
OUT_BEGIN_IN = 3  # outside a stretch, its first word, a later word
WIDTHS: dict[str, int] = {
    "description": OUT_BEGIN_IN, "presence": len(PRESENCES), "intensity": len(INTENSITIES), "facet": len(FACETS),
    "voice": len(VOICES), "fact": 1 + 2 * len(FACT_KINDS), "section": len(SECTION_KINDS), "boundary": 2,
    "comparison": OUT_BEGIN_IN, "relation": 2, "preference": OUT_BEGIN_IN, "scope": len(SCOPES), "repair": OUT_BEGIN_IN,
}  # fmt: skip
HEADS = tuple(WIDTHS)
POINTERS = ("sample", "also", "stated", "stated_also", "more", "less", "preferred")
