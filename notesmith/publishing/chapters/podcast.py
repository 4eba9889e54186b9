"""Chapters as JSON, version 1.2 of the Podcast Namespace; to be served as `application/json+chapters`."""

import json

from notesmith.publishing.chapters.model import chapters_of
from notesmith.publishing.episode import Episode


def render(episode: Episode) -> str | None:
    """Write the chapters in order; times are seconds."""
    chapters = [
        {"startTime": chapter.start_ms / 1000, "endTime": chapter.end_ms / 1000, "title": chapter.title}
        for chapter in episode.once(chapters_of)
    ]
    if not chapters:
        return None
    return json.dumps({"version": "1.2.0", "chapters": chapters}, ensure_ascii=False, indent=1) + "\n"
