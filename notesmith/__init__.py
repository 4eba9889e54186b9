"""Tasting notes from the captions of a recorded tasting, each with the words that prove it.

>>> from notesmith import Lexicon, read_captions, read_sheet, take_notes
"""

from importlib import import_module
from typing import TYPE_CHECKING, Any

if TYPE_CHECKING:
    from notesmith.lexicon import Lexicon
    from notesmith.listening import draft_sheet, take_notes
    from notesmith.records import Notes, Sheet
    from notesmith.sheet import read_sheet
    from notesmith.transcript import read_captions

__version__ = "0.1.0"
__all__ = ["Lexicon", "Notes", "Sheet", "draft_sheet", "read_captions", "read_sheet", "take_notes"]

# Where each name lives, fetched when asked for: `notesmith --help` must not wait for the language model.
_HOMES = {
    "Lexicon": "lexicon",
    "Notes": "records",
    "Sheet": "records",
    "draft_sheet": "listening",
    "read_captions": "transcript",
    "read_sheet": "sheet",
    "take_notes": "listening",
}


def __getattr__(name: str) -> Any:
    if name not in _HOMES:
        msg = f"module 'notesmith' has no attribute {name!r}"
        raise AttributeError(msg)
    return getattr(import_module(f"notesmith.{_HOMES[name]}"), name)
