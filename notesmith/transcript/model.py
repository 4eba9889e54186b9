"""What a caption file says: words, cues and the captions as a whole. Every time is in integer milliseconds."""

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Word:
    """A word as captioned, and where it stands in the source text.

    start_ms is the word's own time, only where the file times words. The source span holds the word with its
    escapes and inner tags; a comma or full stop that a recogniser lists apart is in text but not in the span.
    """

    text: str
    start_ms: int | None
    source_start: int
    source_end: int


@dataclass(frozen=True, slots=True)
class Cue:
    """One timed piece of the recording, spoken by one speaker (None: not told)."""

    start_ms: int
    end_ms: int | None
    speaker: str | None
    words: tuple[Word, ...]

    @property
    def text(self) -> str:
        """The words joined by single spaces."""
        return " ".join([word.text for word in self.words])


@dataclass(frozen=True, slots=True)
class Echo:
    """A further place of the source that repeats a word: rolling captions, or a recogniser's list of words.

    word counts the words over all cues; who corrects the word in the source must correct its echoes too.
    """

    word: int
    source_start: int
    source_end: int


@dataclass(frozen=True, slots=True)
class Captions:
    """A caption file as read: cues in order of time, each word once.

    Offsets count characters of source_text, which is the decoded file without its byte order mark. Without
    times in the file (timed is False) the cues run on an assumed clock of 400 ms a word.
    """

    name: str
    format: str
    cues: tuple[Cue, ...]
    source_text: str
    timed: bool
    word_timed: bool
    warnings: tuple[str, ...]
    echoes: tuple[Echo, ...] = ()
