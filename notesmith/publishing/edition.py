"""Everything published of one episode: what is asked for is made first, then written whole or not at all."""

from collections.abc import Collection
from dataclasses import dataclass
from importlib.util import find_spec
from pathlib import Path

from notesmith.errors import MissingError, OutputError
from notesmith.publishing import muxing
from notesmith.publishing.episode import Episode
from notesmith.publishing.files import make_folder, refuse_existing, write_file
from notesmith.publishing.kinds import KINDS, Kind

PACKAGES = {"otio": "opentimelineio", "parquet": "pyarrow"}
"""What each extra of the package installs."""


@dataclass(frozen=True)
class Edition:
    """What was written, and what was left out with the reason why."""

    written: tuple[Path, ...]
    left_out: tuple[str, ...]


def publish(episode: Episode, folder: Path, *, only: Collection[str] = (), force: bool = False) -> Edition:
    """Write the kinds named, or every kind, into the folder, which is made where it is missing.

    A kind for which something is missing is left out and told, unless it is named itself.

    Raises:
        OutputError: there is no kind of a name, or a file cannot be written or is there already.
        MissingError: something is missing for a kind that is named.
        NotesmithError: the captions or the recording will not do.
    """
    muxed = muxing.MUXED.name in only or (episode.media and not only)
    copying = muxing.plan(episode, folder, force=force) if muxed else None
    made, left_out = _everything(episode, only)
    written = _write({folder / name: content for name, content in made.items()}, folder, force)
    if copying:
        written.append(muxing.mux(copying))
    return Edition(tuple(written), tuple(left_out))


def _everything(episode: Episode, only: Collection[str]) -> tuple[dict[str, str | bytes], list[str]]:
    """What goes into each file, and what is left out."""
    made: dict[str, str | bytes] = {}
    left_out: list[str] = []
    for kind in chosen(only):
        try:
            content = _made(episode, kind)
        except MissingError as error:
            if kind.name in only:
                raise
            left_out.append(str(error))
            continue
        if content is not None:
            made[file_name(episode, kind)] = content
        elif only:
            left_out.append(f"{kind.name}: the notes have nothing to say")
    return made, left_out


def every_kind() -> tuple[Kind, ...]:
    """Everything that can be published, in the order of the list."""
    return (*KINDS, muxing.MUXED)


def chosen(only: Collection[str]) -> list[Kind]:
    """The kinds named, in the order of the list; a name such as `chapters` stands for all that begin with it.

    Raises:
        OutputError: there is no kind of that name.
    """
    for name in only:
        if not any(_is_called(kind, name) for kind in every_kind()):
            raise OutputError(f"there is no kind {name!r}", mend="notesmith publish --list says what there is")
    return [kind for kind in KINDS if not only or any(_is_called(kind, name) for name in only)]


def file_name(episode: Episode, kind: Kind) -> str:
    """What the file of a kind is called."""
    ending = Path(episode.captions.name).suffix.lstrip(".") if episode.captions else ""
    return f"{episode.stem}.{kind.suffix.replace('*', ending or 'txt')}"


def _is_called(kind: Kind, name: str) -> bool:
    return kind.name == name or kind.name.startswith(f"{name}-")


def _made(episode: Episode, kind: Kind) -> str | bytes | None:
    if kind.needs == "captions" and not episode.captions:
        raise MissingError("found no captions that fit the notes", where=kind.name, mend="name them with --captions")
    if kind.needs == "media" and not episode.media:
        raise MissingError("names the recording", where=kind.name, mend="give it with --media")
    if kind.extra and not find_spec(PACKAGES[kind.extra]):
        package = PACKAGES[kind.extra]
        raise MissingError(f"needs the package {package}", where=kind.name, mend=f"install notesmith[{kind.extra}]")
    return kind.make(episode)


def _write(made: dict[Path, str | bytes], folder: Path, force: bool) -> list[Path]:
    """Refuse before anything is written: half an edition is worse than none."""
    make_folder(folder)
    for path in made:
        refuse_existing(path, force)
    for path, content in made.items():
        write_file(path, content, force=force)
    return list(made)
