"""Chapters put into a copy of the recording, by ffmpeg; sound and picture are copied as they are."""

import json
import shutil
import subprocess
import tempfile
from dataclasses import dataclass
from pathlib import Path

from notesmith.clock import seconds_to_ms
from notesmith.errors import MediaError, MissingError, OutputError
from notesmith.publishing.chapters import ffmetadata, vorbis
from notesmith.publishing.chapters.model import Chapter, at_most, chapters_of
from notesmith.publishing.episode import Episode, Media
from notesmith.publishing.files import refuse_existing
from notesmith.publishing.kinds import Kind

MUXED = Kind("media", "chapters.*", "a copy of the recording with its chapters in it", lambda _: None, needs="media")
"""Not made as the other kinds are: a recording does not fit into memory."""

CONTAINERS = frozenset(".mp4 .m4a .m4v .mov .mkv .mka .webm .mp3 .ogg .oga .opus .flac".split())
MP4 = frozenset(".mp4 .m4a .m4v .mov".split())
COMMENTED = frozenset(".ogg .oga .opus .flac".split())
"""Where chapters are Vorbis comments."""
MOST_IN_MP3 = 255
"""Chapters that the table of contents of an MP3 can count, in one byte."""


def read_media(path: Path) -> Media:
    """Look at a recording: how long it is.

    Raises:
        MediaError: it cannot be opened, or holds no sound or picture.
        MissingError: ffprobe, which comes with ffmpeg, is not installed.
    """
    if not path.is_file():
        raise MediaError("is no file", where=str(path), mend="check the name")
    told = _run("ffprobe", ["-show_entries", "format=duration", "-of", "json", _address(path)], path)
    try:
        return Media(path, seconds_to_ms(json.loads(told)["format"]["duration"]))
    except (KeyError, ValueError):
        raise MediaError("does not say how long it is", where=str(path), mend="give the recording itself") from None


@dataclass(frozen=True)
class Copying:
    """A copy that can be made: of which recording, with which chapters, where."""

    source: Path
    chapters: tuple[Chapter, ...]
    copy: Path


def plan(episode: Episode, folder: Path, *, force: bool = False) -> Copying:
    """Settle a copy of the recording with the chapters in it, in place of those it had; nothing is written yet.

    Raises:
        MediaError: the recording cannot hold chapters, or the captions gave none.
        MissingError: no recording was given, or ffmpeg is not installed.
        OutputError: the copy is there already, or would replace the recording.
    """
    if episode.media is None:
        raise MissingError("no recording was given", where=MUXED.name, mend="give it with --media")
    source = episode.media.path
    copy = folder / f"{episode.stem}.chapters{source.suffix}"
    refuse_existing(copy, force)
    if copy.exists() and copy.samefile(source):
        raise OutputError("is the recording itself", where=str(copy), mend="name another folder")
    chapters = _fitting(source, episode.once(chapters_of))
    _found("ffmpeg", source)
    return Copying(source, chapters, copy)


def mux(planned: Copying) -> Path:
    """Make the copy, whole or not at all.

    Raises:
        MediaError: ffmpeg could not read or write it.
    """
    with tempfile.TemporaryDirectory(prefix=".notesmith-", dir=planned.copy.parent) as work:
        made = Path(work) / f"copy{planned.source.suffix.lower()}"
        _copy(planned.source, planned.chapters, made)
        made.replace(planned.copy)
    return planned.copy


def _fitting(source: Path, chapters: tuple[Chapter, ...]) -> tuple[Chapter, ...]:
    kind = source.suffix.lower()
    if kind not in CONTAINERS:
        ways = " ".join(sorted(CONTAINERS))
        raise MediaError("cannot hold chapters", where=str(source), mend=f"give one of {ways}")
    if not chapters:
        raise MediaError("no chapters: the captions carry no times", where=str(source), mend="leave out --media")
    return at_most(chapters, MOST_IN_MP3) if kind == ".mp3" else chapters


def _copy(source: Path, chapters: tuple[Chapter, ...], copy: Path) -> None:
    """Copy every stream; MP4 keeps its old chapters as a stream of data too, which would stay beside the new ones."""
    listed = copy.with_name("chapters.txt")
    listed.write_text(ffmetadata.write(chapters), "utf-8", newline="\n")
    inputs = ["-i", _address(source), "-f", "ffmetadata", "-i", _address(listed)]
    streams = ["-map", "0", *(["-dn"] if copy.suffix in MP4 else []), "-map_metadata", "0"]
    _run("ffmpeg", ["-nostdin", "-y", *inputs, *streams, "-c", "copy", *_told(copy, chapters), _address(copy)], source)


def _told(copy: Path, chapters: tuple[Chapter, ...]) -> list[str]:
    """How ffmpeg is told of the chapters.

    It writes none into FLAC, and into Ogg with the seconds rounded up; so there they are given as comments.
    """
    if copy.suffix == ".mp3":
        return ["-map_chapters", "1", "-id3v2_version", "3"]
    if copy.suffix not in COMMENTED:
        return ["-map_chapters", "1"]
    option = "-metadata" if copy.suffix == ".flac" else "-metadata:s:a:0"
    # The encoder's name is taken out first: ffmpeg replaces it last, and would put the last comment in its place,
    # before the chapter whose title that is.
    comments = [("encoder", ""), *vorbis.comments(chapters)]
    return ["-map_chapters", "-1", *(part for name, value in comments for part in (option, f"{name}={value}"))]


def _address(path: Path) -> str:
    """The path as ffmpeg takes it, whatever signs the name opens with."""
    return f"file:{path}"


def _run(program: str, arguments: list[str], about: Path) -> str:
    command = [_found(program, about), "-v", "error", *arguments]
    # The program is found by its name, the arguments are names of files.
    done = subprocess.run(command, capture_output=True, text=True, errors="replace", check=False)  # noqa: S603
    if done.returncode:
        said = (done.stderr.strip() or "no reason given").splitlines()[-1]
        raise MediaError(f"{program} could not read or write it ({said})", where=str(about))
    return done.stdout


def _found(program: str, about: Path) -> str:
    found = shutil.which(program)
    if not found:
        what = f"needs the program {program}"
        raise MissingError(what, where=str(about), mend="install ffmpeg, or leave out --media")
    return found
