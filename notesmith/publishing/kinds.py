"""The list of everything that is published: what it is called, and what makes it."""

from collections.abc import Callable
from dataclasses import dataclass
from typing import Literal

from notesmith.publishing.episode import Episode


@dataclass(frozen=True)
class Kind:
    """One thing published."""

    name: str
    """What `--only` calls it; the part before a hyphen names it together with its like (`chapters`)."""
    suffix: str
    """What follows the episode's name and a full stop; `*` stands for the ending of the captions."""
    says: str
    """What it is, on one line."""
    make: Callable[[Episode], str | bytes | None]
    """Makes it; None where the notes have nothing to say, and then there is no file."""
    extra: str | None = None
    """The extra of the package that must be installed for it, such as `otio` for `notesmith[otio]`."""
    needs: Literal["captions", "media"] | None = None
    """What must be at hand besides the notes."""


KINDS: tuple[Kind, ...] = ()
"""In the order in which they are listed and made."""
