"""What a chapter is called: plain words for the kind of section, and the samples as they are known by then."""

import re

from notesmith.publishing.episode import Episode, called
from notesmith.publishing.plain import one_line
from notesmith.records import Observation, Section, SectionKind

MAX_TITLE = 85
"""Characters; lists cut longer titles. Leaves room below 100 for a count after it."""
MAX_NAME = 45
"""Characters of a sample's code and product; where they are more, a title says the code alone."""
MAX_NAMED = 3
"""Samples named in one title."""
SURE = 2
"""Perceptions that have to agree before a title names the preparation."""

_ALONE: dict[SectionKind, str] = {
    "opening": "Opening",
    "method": "How it is prepared",
    "appearance": "The look",
    "aroma": "The smell",
    "tasting": "Tasting",
    "comparison": "Side by side",
    "verdict": "Verdict",
    "quoted": "In the words of others",
    "reveal": "The reveal",
    "background": "Background",
    "sponsor": "Sponsor",
    "closing": "Closing",
}
_OF_SAMPLES: dict[SectionKind, str] = {
    "method": "Preparing {}",
    "appearance": "The look of {}",
    "aroma": "The smell of {}",
    "tasting": "Tasting {}",
    "quoted": "What others say of {}",
    "reveal": "The reveal of {}",
    "background": "Background on {}",
    "verdict": "Verdict on {}",
}
_PERCEIVED = ("appearance", "aroma", "tasting")


def title_of(episode: Episode, section: Section) -> str:
    """The title of a section: one line of at most 85 characters, without what the talk has not yet given away."""
    names = [_name(episode, sample, section.start) for sample in _samples(episode, section)]
    title = _OF_SAMPLES[section.kind].format(_listed(names)) if names else _ALONE[section.kind]
    preparation = _preparation(episode, section)
    return shortened(f"{title}, {preparation}" if preparation else title, MAX_TITLE)


def shortened(text: str, most: int) -> str:
    """The text on one line, cut with an ellipsis where it is longer than this many characters.

    >>> shortened("a very long name", 10)
    'a very lo…'
    """
    line = one_line(text)
    return line if len(line) <= most else line[: most - 1].rstrip() + "…"


def _name(episode: Episode, sample: str, at_s: float | None) -> str:
    """The sample as it is known by then; of a product that tells its kind after a comma, what comes before it."""
    product = episode.product(sample) if episode.is_known(sample, at_s) else None
    short = re.split(r"[,;(]", product)[0].strip() if product else None
    name = called(sample, short)
    return name if len(name) <= MAX_NAME else sample


def _samples(episode: Episode, section: Section) -> list[str]:
    """The sample it is about; failing that, in a section of perceptions, those it tells of, if they are few."""
    if section.kind == "reveal":
        begin, end = section.span
        told = [reveal.sample for reveal in episode.notes.reveals if begin <= reveal.span[0] < end]
        return told if len(told) == 1 else []
    if section.sample is not None:
        return [section.sample] if section.kind in _OF_SAMPLES else []
    if section.kind not in _PERCEIVED:
        return []
    named = dict.fromkeys(seen.sample for seen in _perceived(episode, section) if seen.sample is not None)
    return list(named) if len(named) <= min(MAX_NAMED, len(episode.notes.samples) - 1) else []


def _perceived(episode: Episode, section: Section) -> list[Observation]:
    begin, end = section.span
    seen = episode.notes.observations
    return [one for one in seen if begin <= one.span[0] < end and one.voice == "taster"]


def _preparation(episode: Episode, section: Section) -> str | None:
    """The preparation that everything tasted in the section is said of, where the sheet lists several."""
    if section.kind != "tasting" or len(episode.notes.sheet.preparations) < 2:
        return None
    samples = _samples(episode, section)
    told = [seen.preparation for seen in _perceived(episode, section) if seen.sample in samples]
    return told[0] if len(told) >= SURE and len(set(told)) == 1 else None


def _listed(names: list[str]) -> str:
    """The names as one would say them.

    >>> _listed(["red", "blue", "white"])
    'red, blue and white'
    """
    return " and ".join([", ".join(names[:-1]), names[-1]]) if len(names) > 1 else names[0]
