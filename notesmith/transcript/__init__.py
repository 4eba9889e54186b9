"""Caption files of any known format, read into one text with a clock."""

from notesmith.transcript.model import Captions, Cue, Echo, Word
from notesmith.transcript.reading import parse_captions, read_captions
from notesmith.transcript.talk import Talk, TalkCue, TalkWord

__all__ = ["Captions", "Cue", "Echo", "Talk", "TalkCue", "TalkWord", "Word", "parse_captions", "read_captions"]
