"""The talk as a row of words with their tags, times, speakers and pauses."""

from spacy.tokens import Doc

from notesmith.listening.hearing import Hearing, Word
from notesmith.transcript import Talk

LETTER_MS = 70  # how long one letter takes to say at about 150 words a minute (common practice, no source)
FOLDED = str.maketrans({"’": "'", "‘": "'", "`": "'"})


def note_words(hearing: Hearing, doc: Doc) -> None:
    """Give every token of the tagged text its time, cue, speaker and the pause before it."""
    talk = hearing.talk
    silences = _silences(talk)
    hearing.words = []
    index, last_index = 0, -1
    for token in doc:
        start = token.idx
        while index + 1 < len(talk.words) and talk.words[index + 1].start <= start:
            index += 1
        spoken = talk.words[index]
        hearing.words.append(
            Word(
                norm=token.lower_.translate(FOLDED),
                tag=token.tag_,
                start=start,
                end=start + len(token),
                ms=spoken.start_ms,
                cue=spoken.cue,
                speaker=talk.cues[spoken.cue].speaker,
                pause=silences[index] if index != last_index else 0,
            )
        )
        last_index = index


def _silences(talk: Talk) -> list[int]:
    """Milliseconds of silence before each spoken word, as far as the captions tell."""
    silences = [0] * len(talk.words)
    by_word = talk.captions.word_timed
    for i in range(1, len(talk.words)):
        before, now = talk.words[i - 1], talk.words[i]
        if before.cue != now.cue:
            silence = talk.cues[now.cue].start_ms - talk.cues[before.cue].end_ms
            silences[i] = max(0, min(silence, now.start_ms - before.start_ms))
        elif by_word:
            silences[i] = max(0, now.start_ms - before.start_ms - LETTER_MS * (before.end - before.start) - 150)
    return silences
