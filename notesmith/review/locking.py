"""One writer at a time, whether in this program or in another; the system lets go of a lock whose holder is killed."""

import os
import sys
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path


@contextmanager
def locked(path: Path) -> Iterator[None]:
    """Wait until no other writes the file, and keep others waiting meanwhile.

    The file itself is replaced by writing, so what is locked is the folder; where folders cannot be locked, a hidden
    file beside it. Raises OSError where neither can be opened.
    """
    handle = _opened(path)
    try:
        _lock(handle)
        yield
    finally:
        os.close(handle)  # which unlocks


if sys.platform == "win32":
    import msvcrt

    def _opened(path: Path) -> int:
        return os.open(path.with_name(f".{path.name}.lock"), os.O_RDWR | os.O_CREAT)

    def _lock(handle: int) -> None:
        msvcrt.locking(handle, msvcrt.LK_LOCK, 1)

else:
    import fcntl

    def _opened(path: Path) -> int:
        return os.open(path.parent, os.O_RDONLY)

    def _lock(handle: int) -> None:
        fcntl.flock(handle, fcntl.LOCK_EX)
