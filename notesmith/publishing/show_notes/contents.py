"""What stands in the show notes, in order: BLOCKS is the list."""

from collections.abc import Callable, Iterable
from dataclasses import dataclass
from functools import cached_property

from babel.dates import format_date

from notesmith.publishing.arrange import title
from notesmith.publishing.charts.frame import signs_of
from notesmith.publishing.charts.signs import Sign
from notesmith.publishing.episode import Episode
from notesmith.publishing.show_notes.amounts import Amounts
from notesmith.publishing.show_notes.blindness import blindness
from notesmith.publishing.show_notes.board import board
from notesmith.publishing.show_notes.cautions import Caution, called_for, read_cautions
from notesmith.publishing.show_notes.chapter_list import chapter_list
from notesmith.publishing.show_notes.charted import charted
from notesmith.publishing.show_notes.claims import claims
from notesmith.publishing.show_notes.corrections import corrections
from notesmith.publishing.show_notes.disagreements import disagreements
from notesmith.publishing.show_notes.glossary import glossary
from notesmith.publishing.show_notes.lines import Block, Part, listed, parts_of
from notesmith.publishing.show_notes.portraits import portraits
from notesmith.publishing.show_notes.said import Passage, passages
from notesmith.publishing.show_notes.stated import stated
from notesmith.publishing.show_notes.story import Story
from notesmith.publishing.show_notes.tasted import tasted
from notesmith.publishing.show_notes.verdict import final, verdict
from notesmith.records import Preference

BLOCKS: tuple[Callable[[Story], Block | None], ...] = (
    tasted, blindness, portraits, board, charted, verdict, disagreements, claims, stated, chapter_list, corrections,
)  # fmt: skip


@dataclass(frozen=True)
class ShowNotes:
    """Everything that the show notes of one recording say, before any form is chosen."""

    title: str
    byline: tuple[str, ...]
    signs: dict[str, Sign]
    """The sign of each sample, as in the charts."""
    blocks: tuple[Block, ...]
    verdict: tuple[Part, ...]
    """The verdict alone, for the head."""
    passages: tuple[Passage, ...]
    cautions: tuple[Caution, ...]
    defers: str
    """That local rules hold."""
    as_of: str
    """When the cautions were last looked at, written by the locale."""

    @cached_property
    def numbers(self) -> dict[str, int]:
        """The number of the passage on which each record rests."""
        return {record: passage.number for passage in self.passages for record in passage.records}


def compose(episode: Episode) -> ShowNotes:
    """Say all there is to say of an episode.

    Raises:
        OutputError: there is no such locale.
    """
    amounts = Amounts.of(episode.locale)
    story = episode.once(Story.of)
    blocks = [block for tell in BLOCKS if (block := tell(story))]
    if words := glossary(story, parts_of(blocks)):
        blocks.append(words)
    result = tuple(_result(story, liked) for liked in final(story))
    proofs = [record for part in (*result, *parts_of(blocks)) for record in part.proofs]
    listed = read_cautions()
    return ShowNotes(
        title=title(story.notes),
        byline=tuple(_byline(story)),
        signs=signs_of(story.episode),
        blocks=tuple(blocks),
        verdict=result,
        passages=passages(story, proofs),
        cautions=called_for(story.episode),
        defers=listed.defers,
        as_of=format_date(listed.as_of, "long", locale=amounts.locale),
    )


def _byline(story: Story) -> Iterable[str]:
    sheet = story.sheet
    count = len(story.notes.samples)
    told = [sheet.category, f"{count} sample{'' if count == 1 else 's'}", "blind" if sheet.blind else ""]
    told += [f"tasted by {listed(sheet.tasters)}" if sheet.tasters else "", f"from {story.notes.transcript}"]
    return (part for part in told if part)


def _result(story: Story, liked: Preference) -> Part:
    """A verdict for those who have not heard it: with the names that the samples turned out to have."""
    samples = tuple(sample for sample in (liked.preferred, *liked.over) if sample)
    reveals = tuple(reveal for sample in samples if (reveal := story.episode.reveal(sample)))
    over = ", then ".join(map(story.name, liked.over))
    text = f"{story.name(liked.preferred)} over {over}" if over else story.name(liked.preferred)
    return Part(text, (liked, *reveals), story.marks(liked))
