"""Markers for editors, as an OpenTimelineIO timeline of one clip: the recording."""

from collections.abc import Iterable
from dataclasses import dataclass
from typing import Any

from notesmith.publishing.episode import Episode
from notesmith.publishing.plain import one_line

RATE = 1000
"""Units to the second: milliseconds, whatever the frame rate of the recording."""


@dataclass(frozen=True, slots=True)
class Marker:
    """A stretch of the recording to be marked, with the records that say why."""

    start_ms: int
    end_ms: int
    name: str
    comment: str
    records: tuple[str, ...]


def timeline(episode: Episode, markers: Iterable[Marker]) -> str | None:
    """Write the timeline as OpenTimelineIO JSON; None where there is nothing to mark."""
    import opentimelineio as otio

    marked = [_marker(otio, marker) for marker in markers]
    if not marked:
        return None
    whole = _range(otio, 0, episode.length_ms)
    name = episode.media.path.name if episode.media else episode.stem
    reference = otio.schema.ExternalReference(name, whole) if episode.media else otio.schema.MissingReference()
    clip = otio.schema.Clip(name=name, media_reference=reference, source_range=whole, markers=marked)
    made = otio.schema.Timeline(name=one_line(episode.notes.sheet.title) or episode.stem)
    made.tracks.append(otio.schema.Track(name="recording", children=[clip]))
    return str(made.to_json_string(indent=1)) + "\n"


def _marker(otio: Any, marker: Marker) -> Any:
    return otio.schema.Marker(
        name=one_line(marker.name), marked_range=_range(otio, marker.start_ms, marker.end_ms),
        comment=one_line(marker.comment), metadata={"notesmith": {"records": list(marker.records)}},
    )  # fmt: skip


def _range(otio: Any, start_ms: int, end_ms: int) -> Any:
    start = otio.opentime.RationalTime(start_ms, RATE)
    return otio.opentime.TimeRange(start, otio.opentime.RationalTime(end_ms - start_ms, RATE))
