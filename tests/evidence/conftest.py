"""Invented recordings, as their notes would be."""

from collections.abc import Sequence
from typing import Any

from notesmith.records import (
    Comparison,
    Notes,
    Observation,
    Preference,
    Reveal,
    Section,
    Sheet,
    SheetSample,
    SheetServing,
)


class Told:
    """Notes that grow, each record a second and ten characters after the one before."""

    def __init__(self, pours: dict[str, str | None], *, tasters: Sequence[str] = ("Ada",), blind: bool = True) -> None:
        samples = tuple(SheetSample(id=sample, product=product) for sample, product in pours.items())
        self.sheet = Sheet(samples=samples, tasters=tuple(tasters), blind=blind)
        self.records: dict[str, list[Any]] = {}
        self.clock = 0

    def equal(self, *samples: str, taster: str = "Ada", attribute: str = "overall") -> "Told":
        """A taster calls samples equal."""
        return self._add("comparisons", Comparison, attribute=attribute, more=None, less=None, samples=samples,
                         relation="equal", degree=None, taster=taster)  # fmt: skip

    def more(self, more: str, less: str, attribute: str, taster: str = "Ada") -> "Told":
        """One sample has more of a property."""
        return self._add("comparisons", Comparison, attribute=attribute, more=more, less=less, samples=(),
                         relation="more", degree=None, taster=taster)  # fmt: skip

    def prefers(self, preferred: str, *over: str, taster: str = "Ada") -> "Told":
        """A taster likes one better."""
        return self._add("preferences", Preference, preferred=preferred, over=over, scope="overall", degree=None,
                         taster=taster)  # fmt: skip

    def perceives(self, sample: str, term: str, taster: str = "Ada", **said: Any) -> "Told":
        """A taster perceives a term."""
        fields = {"facet": "flavour", "presence": "present", "intensity": None, "after_reveal": False} | said
        return self._add("observations", Observation, term=term, term_span=(0, 1), concept=term, sample=sample,
                         taster=taster, preparation=None, voice="taster", **fields)  # fmt: skip

    def tastes(self, sample: str) -> "Told":
        """A stretch of tasting begins."""
        return self._add("sections", Section, kind="tasting", sample=sample)

    def reveals(self, sample: str, product: str) -> "Told":
        """A sample is made known."""
        return self._add("reveals", Reveal, sample=sample, product=product)

    def serves(self, taster: str, *order: str) -> "Told":
        """A taster was to be handed samples in that order."""
        servings = (*self.sheet.servings, SheetServing(taster=taster, order=order))
        self.sheet = self.sheet.model_copy(update={"servings": servings, "balance": "partial"})
        return self

    def notes(self, name: str = "talk.vtt") -> Notes:
        """The notes of it all."""
        kinds = "observations comparisons preferences facts reveals sections repairs ignored warnings".split()
        told = {kind: tuple(self.records.get(kind, ())) for kind in kinds}
        samples = tuple(at.id for at in self.sheet.samples)
        return Notes(transcript=name, sheet=self.sheet, sheet_drafted=False, samples=samples, **told)

    def _add(self, where: str, record: Any, **fields: Any) -> "Told":
        self.clock += 1
        at = {"id": f"r{self.clock}", "start": float(self.clock), "end": self.clock + 1.0, "quote": "words",
              "span": (self.clock * 10, self.clock * 10 + 5), "confidence": 1.0, "why": ()}  # fmt: skip
        self.records.setdefault(where, []).append(record(**at, **fields))
        return self


TRIANGLE = {"417": "Hillside Green", "853": "Hillside Green", "296": "River Oolong"}
"""Three cups, two of them alike."""
