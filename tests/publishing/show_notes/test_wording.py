"""How the show notes put what was said: whole words, small letters, `no` or `not`, and the meaning of the trade."""

import pytest

from notesmith.publishing.arrange import title
from notesmith.publishing.show_notes import markdown
from notesmith.publishing.show_notes.board import MOST_ACROSS, board
from notesmith.publishing.show_notes.contents import compose
from notesmith.publishing.show_notes.plain_text import written
from notesmith.publishing.show_notes.portraits import portraits
from notesmith.publishing.show_notes.story import Story
from notesmith.records import Sheet, SheetSample
from tests.publishing.show_notes.telling import record, seen, told

ONE = Sheet(samples=(SheetSample(id="A"),))


@pytest.mark.parametrize(
    ("term", "reads"),
    [("smoke", "no smoke (0:00)"), ("bitter", "not bitter (0:00)"), ("bitterness", "no bitterness (0:00)"),
     ("Peach", "no peach (0:00)"), ("Turkish delight", "no Turkish delight (0:00)"), ("Ana's", "no Ana's (0:00)")],
)  # fmt: skip
def test_what_is_denied_reads_as_english(term: str, reads: str) -> None:
    """A thing is not there, a quality it has not; a capital that only opened the sentence goes."""
    denied = seen(0, term, presence="absent")
    story = Story.of(told([term], denied, sheet=ONE))
    assert written(story.term(story.notes.observations[0])) == reads


@pytest.mark.parametrize(
    ("said", "quote", "term", "reads"),
    [
        ("I don't get the plum", "n't get the plum", "plum", "don't get the plum"),
        ('" Where the oak?', '" Where the oak?', "oak", "Where the oak?"),
        ("the smoke's back, and more", "smoke", "smoke", "the smoke's back"),
    ],
)
def test_no_quote_begins_or_ends_inside_a_word(said: str, quote: str, term: str, reads: str) -> None:
    """Nor does it carry half a pair of quotation marks."""
    found = portraits(Story.of(told([said], seen(0, term, quote=quote), sheet=ONE)))
    assert found
    assert reads in found.groups[0].lines[0].parts[0].text


def test_a_year_is_no_amount() -> None:
    """A harvest keeps its digits together."""
    picked = record("facts", 0, "2021", kind="harvest", value=2021, sample="A")
    facts = next(block for block in compose(told(["2021"], picked, sheet=ONE)).blocks if block.name == "stated")
    assert [written(part) for part in facts.groups[0].lines[0].parts] == ["harvest 2021 (0:00)"]


@pytest.mark.parametrize(("category", "explained"), [("coffee", ["washed"]), ("washed cheese", []), ("", [])])
def test_a_word_of_another_trade_is_not_explained(category: str, explained: list[str]) -> None:
    """Washed is a process of coffee, and a rind of cheese."""
    sheet = Sheet(samples=(SheetSample(id="A"),), category=category)
    said = record("facts", 0, "washed", kind="process", value="washed", sample="A")
    blocks = compose(told(["washed"], said, sheet=sheet)).blocks
    words = [line.label for block in blocks if block.name == "glossary" for line in block.groups[0].lines]
    assert words == explained


@pytest.mark.parametrize(("samples", "columns"), [(MOST_ACROSS, MOST_ACROSS), (MOST_ACROSS + 1, 2)])
def test_many_samples_stand_below_one_another(samples: int, columns: int) -> None:
    """A page has room for so many beside one another; then facets are."""
    ids = [f"S{number}" for number in range(samples)]
    sheet = Sheet(samples=tuple(SheetSample(id=name) for name in ids))
    records = [seen(0, term, facet=facet, sample=name)
               for name in ids for term, facet in (("plum", "aroma"), ("sweet", "flavour"))]  # fmt: skip
    found = board(Story.of(told(["plum sweet"], *records, sheet=sheet)))
    assert found
    assert len(found.boards[0].columns) == columns
    cells = [[written(part) for part in cell] for _, row in found.boards[0].rows for cell in row]
    assert sorted(cells) == sorted([["plum (0:00)"], ["sweet (0:00)"]] * samples)


def test_a_title_that_nobody_sees_is_none() -> None:
    """It would leave an empty heading; the captions' name stands there instead."""
    episode = told(["hello"], sheet=ONE.model_copy(update={"title": "\u200b\u2060 \u3164"}))
    assert title(episode.notes) == "made-up.vtt"


def test_the_time_stands_apart_from_the_word() -> None:
    """In Markdown as in plain text, a space parts them."""
    assert "plum (0:00)" in markdown(told(["plum"], seen(0, "plum"), sheet=ONE))
