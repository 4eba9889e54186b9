"""What the captions got wrong, and what was said."""

from notesmith.publishing.show_notes.lines import Block, Line, Part, block
from notesmith.publishing.show_notes.story import Story
from notesmith.records import Repair


def corrections(story: Story) -> Block | None:
    """Every repair: the words printed, and those meant."""
    lines = [Line(repair.meant, (_printed(repair),)) for repair in story.notes.repairs]
    return block("corrections", "Captions corrected", lines, note="Square brackets mark these words above.", rank=3)


def _printed(repair: Repair) -> Part:
    return Part(repair.heard, (repair,), ("in the captions",), "quote")
