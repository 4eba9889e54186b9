"""Chapters as Matroska XML (RFC 9559), which mkvmerge and mkvpropedit read."""

from hashlib import sha256
from xml.sax.saxutils import escape

from notesmith.publishing.chapters.model import Chapter, chapters_of
from notesmith.publishing.episode import Episode
from notesmith.publishing.vtt import clock

_NO_XML = dict.fromkeys([0xFFFE, 0xFFFF], "�")


def render(episode: Episode) -> str | None:
    """Write one edition; the elements stand in the order that the format's document type asks for."""
    atoms = [_atom(episode, chapter) for chapter in episode.once(chapters_of)]
    if not atoms:
        return None
    head = '<?xml version="1.0" encoding="UTF-8"?>'
    return "\n".join([head, "<Chapters>", " <EditionEntry>", *atoms, " </EditionEntry>", "</Chapters>"]) + "\n"


def _atom(episode: Episode, chapter: Chapter) -> str:
    """A chapter; Matroska counts nanoseconds."""
    return f"""\
  <ChapterAtom>
   <ChapterTimeStart>{clock(chapter.start_ms)}000000</ChapterTimeStart>
   <ChapterTimeEnd>{clock(chapter.end_ms)}000000</ChapterTimeEnd>
   <ChapterUID>{_uid(episode, chapter)}</ChapterUID>
   <ChapterDisplay>
    <ChapterString>{escape(chapter.title.translate(_NO_XML))}</ChapterString>
    <ChapterLanguage>eng</ChapterLanguage>
   </ChapterDisplay>
  </ChapterAtom>"""


def _uid(episode: Episode, chapter: Chapter) -> int:
    """A number of its own for each chapter, the same on every run, and never 0, which Matroska forbids."""
    told = f"{episode.notes.transcript}\n{chapter.start_ms}\n{chapter.title}"
    return int.from_bytes(sha256(told.encode()).digest()[:7]) | 1
