"""The talk: the whole recording as one text, with a clock from every character to its millisecond, and who speaks."""

from bisect import bisect_right
from dataclasses import dataclass, field
from typing import NamedTuple

from notesmith.transcript.limits import MS_PER_WORD
from notesmith.transcript.model import Captions


class TalkWord(NamedTuple):
    """A word's characters in the talk, its time in ms (its cue's, where words are not timed) and its cue's index."""

    start: int
    end: int
    start_ms: int
    cue: int


@dataclass(frozen=True, slots=True)
class TalkCue:
    """A cue's characters in the talk, its times in ms and its speaker (None: not told)."""

    start: int
    end: int
    start_ms: int
    end_ms: int
    speaker: str | None


@dataclass(frozen=True, slots=True)
class Talk:
    """All words of the captions joined by single spaces. The k-th word here is the k-th word of the cues in order.

    Without times in the file (timed is False) the clock is an assumed one of 400 ms a word.
    """

    text: str
    words: tuple[TalkWord, ...]
    cues: tuple[TalkCue, ...]
    captions: Captions
    _word_starts: tuple[int, ...] = field(repr=False)
    _cue_starts: tuple[int, ...] = field(repr=False)

    @classmethod
    def from_captions(cls, captions: Captions) -> "Talk":
        """Lay the captions' words end to end."""
        words: list[TalkWord] = []
        cues: list[TalkCue] = []
        at = 0
        for index, (cue, end_ms) in enumerate(zip(captions.cues, _ends(captions), strict=True)):
            start = at
            for word in cue.words:
                end = at + len(word.text)
                words.append(TalkWord(at, end, cue.start_ms if word.start_ms is None else word.start_ms, index))
                at = end + 1
            cues.append(TalkCue(start, at - 1, cue.start_ms, end_ms, cue.speaker))
        text = " ".join([cue.text for cue in captions.cues])
        starts = tuple([word.start for word in words]), tuple([cue.start for cue in cues])
        return cls(text, tuple(words), tuple(cues), captions, *starts)

    @property
    def timed(self) -> bool:
        """Whether the file gives times."""
        return self.captions.timed

    def word_at(self, char: int) -> int:
        """The index of the word at a character; a space belongs to the word before it. Raises IndexError outside."""
        return bisect_right(self._word_starts, self._checked(char)) - 1

    def cue_at(self, char: int) -> int:
        """The index of the cue at a character; a space belongs to the cue before it. Raises IndexError outside."""
        return bisect_right(self._cue_starts, self._checked(char)) - 1

    def ms_at(self, char: int) -> int:
        """The time in ms of the word at a character. Raises IndexError outside the text."""
        return self.words[self.word_at(char)].start_ms

    def _checked(self, char: int) -> int:
        if not 0 <= char < len(self.text):
            raise IndexError(f"character {char} of a talk of {len(self.text)}")
        return char


def _ends(captions: Captions) -> list[int]:
    """Each cue's end: its own, else the next later start, else 400 ms a word."""
    ends: list[int] = []
    later: int | None = None
    following: int | None = None
    for cue in reversed(captions.cues):
        if following is not None and following > cue.start_ms:
            later = following
        following = cue.start_ms
        guess = cue.start_ms + MS_PER_WORD * len(cue.words) if later is None else later
        ends.append(guess if cue.end_ms is None else cue.end_ms)
    return ends[::-1]
