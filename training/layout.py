"""What the columns of the rows mean: written beside the rows, so that the fitting needs nothing of the program."""

import json
from dataclasses import asdict, dataclass

UNTOLD = -100  # what cross entropy passes over


@dataclass(frozen=True)
class Layout:
    """The sights with their sizes, the heads with their widths, the pointers, and the parts that they weigh."""

    sights: dict[str, int]
    alone: list[str]  # the sights that no rule has judged
    heads: dict[str, int]
    pointers: list[str]
    parts: list[str]
    unjudged: list[str]  # the parts that no rule has cast

    @property
    def targets(self) -> list[str]:
        """The columns of the targets."""
        return [*self.heads, *self.pointers]

    def written(self) -> str:
        """As JSON."""
        return json.dumps(asdict(self))

    @classmethod
    def read(cls, text: str) -> "Layout":
        """From JSON."""
        return cls(**json.loads(text))
