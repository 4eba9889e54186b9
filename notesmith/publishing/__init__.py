"""From notes to text for people and programs, and to everything that is posted with an episode.

>>> from notesmith.publishing import Episode, gather, publish
"""

from importlib import import_module
from typing import TYPE_CHECKING, Any

if TYPE_CHECKING:
    from notesmith.publishing.edition import publish
    from notesmith.publishing.episode import Episode
    from notesmith.publishing.gathering import gather

__all__ = ["Episode", "gather", "publish"]

# Fetched when asked for: who takes notes need not wait for charts and sheets.
_HOMES = {"Episode": "episode", "gather": "gathering", "publish": "edition"}


def __getattr__(name: str) -> Any:
    if name not in _HOMES:
        msg = f"module 'notesmith.publishing' has no attribute {name!r}"
        raise AttributeError(msg)
    return getattr(import_module(f"notesmith.publishing.{_HOMES[name]}"), name)
