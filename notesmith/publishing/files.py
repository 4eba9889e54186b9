"""Write files whole or not at all, and never over another unasked."""

import os
import tempfile
from collections.abc import Iterable
from pathlib import Path

from notesmith.errors import OutputError


def refuse_existing(path: Path, force: bool) -> None:
    """Refuse a path that holds a file already, unless it may be replaced.

    Raises:
        OutputError: the file is there, or the path is no place for a plain file.
    """
    if path.exists() and not path.is_file():
        raise OutputError("is not a plain file", where=str(path), mend="name another")
    if path.exists() and not force:
        raise OutputError("is there already", where=str(path), mend="give --force to replace it, or name another")


def write_file(path: Path, content: str | bytes, *, force: bool = False) -> None:
    """Write a text as UTF-8, or bytes as they are, into a new file, then put that in place.

    Raises:
        OutputError: the file is there already and may not be replaced, or cannot be written.
    """
    refuse_existing(path, force)
    try:
        _replace(path.resolve(), content.encode() if isinstance(content, str) else content)
    except OSError as error:
        raise OutputError(f"cannot be written: {error.strerror}", where=str(path)) from error


def make_folder(path: Path) -> None:
    """Make the folder, and those above it, where they are missing.

    Raises:
        OutputError: there is a file of that name, or it cannot be made.
    """
    try:
        path.mkdir(parents=True, exist_ok=True)
    except OSError as error:
        raise OutputError(f"the folder cannot be made: {error.strerror}", where=str(path)) from error


def _replace(path: Path, content: bytes) -> None:
    handle, name = tempfile.mkstemp(prefix=f".{path.name}.", dir=path.parent)
    try:
        with os.fdopen(handle, "wb") as file:
            file.write(content)
        Path(name).chmod(path.stat().st_mode if path.exists() else 0o666 & ~_umask())
        Path(name).replace(path)
    except BaseException:
        Path(name).unlink(missing_ok=True)
        raise


def _umask() -> int:
    # There is no way to ask for it but to set it.
    mask = os.umask(0o022)
    os.umask(mask)
    return mask


def output_paths(captions: Iterable[Path], folder: Path, suffix: str) -> list[Path]:
    """Where the notes of each caption file go: NAME.notes and the suffix, in the folder.

    Raises:
        OutputError: two of them would be the same file.
    """
    taken: dict[str, Path] = {}
    paths = []
    for source in captions:
        path = folder / f"{source.stem}.notes{suffix}"
        if other := taken.get(path.name.casefold()):
            raise OutputError(f"the notes of {other} and {source} would both be {path}", mend="rename one of them")
        taken[path.name.casefold()] = source
        paths.append(path)
    return paths
