"""The chapters, as the show notes list them."""

from notesmith.clock import format_clock
from notesmith.publishing.chapters.model import chapters_of, without_short
from notesmith.publishing.show_notes.lines import Block, Line, Part, block
from notesmith.publishing.show_notes.story import Story

LEAST_MS = 10_000
"""Shorter chapters are refused where lists of times make chapters."""


def chapter_list(story: Story) -> Block | None:
    """Every chapter that people talk in."""
    sections = {section.id: section for section in story.notes.sections}
    chapters = without_short(chapters_of(story.episode), LEAST_MS)
    told = [(chapter, sections[chapter.section]) for chapter in chapters if chapter.section in sections]
    lines = [Line(format_clock(chapter.start_ms), (Part(chapter.title, (section,)),)) for chapter, section in told]
    return block("chapters", "Chapters", lines, rank=0)
