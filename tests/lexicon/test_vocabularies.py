"""Whether the lexicon hears the names that standards and published vocabularies use.

The names come from outside the project; definitions are not taken from there. Rows marked `memory` were written
down from general knowledge and should be checked against the text; rows marked `seen` were read in it or in an
open abstract or glossary of it. Where no class or facet is given, the source gives none that holds here as well.
"""

import csv
import re
from collections.abc import Callable, Iterator
from pathlib import Path

import pytest

from notesmith.lexicon import Hit, Lexicon

FILES = sorted((Path(__file__).parents[1] / "cases" / "lexicon").glob("published-*.tsv"))
# Words that join or grade: the lexicon names what is perceived, not how much of it.
JOINING = frozenset({"and", "/", "fairly", "very", "overall"})
# Words that stand for no perception by themselves, or for too many things in everyday talk.
LEFT_OUT = "left out"

Row = dict[str, str]


def rows_of(path: Path) -> list[Row]:
    """The names of one vocabulary."""
    return list(csv.DictReader(path.read_text("utf-8").splitlines(), delimiter="\t"))


def every_row() -> Iterator[Row]:
    """The names of all vocabularies."""
    for path in FILES:
        yield from rows_of(path)


def heard(lexicon: Lexicon, name: str) -> list[Hit]:
    """The descriptors heard in a name, or none where a word of it is left over."""
    words = re.findall(r"[\w'-]+|/", name.lower())
    hits = [hit for hit in lexicon.match(words) if lexicon.concepts[hit.label.concept].sort == "descriptor"]
    covered = {place for hit in hits for place in range(hit.start, hit.end)}
    left_over = [word for place, word in enumerate(words) if place not in covered and word not in JOINING]
    return [] if left_over else hits


@pytest.fixture(scope="module")
def lexicon() -> Lexicon:
    """The lexicon we ship."""
    return Lexicon.load()


@pytest.mark.parametrize("path", FILES, ids=lambda path: path.stem.removeprefix("published-"))
def test_every_published_name_is_heard(
    path: Path, lexicon: Lexicon, record_property: Callable[[str, object], None]
) -> None:
    """All names of a vocabulary are heard, save those left out on purpose."""
    rows = rows_of(path)
    missing = [row["attribute"] for row in rows if not heard(lexicon, row["attribute"])]
    record_property("share heard", f"{1 - len(missing) / len(rows):.3f} of {len(rows)} names")
    assert missing == [row["attribute"] for row in rows if row["class"] == LEFT_OUT]


@pytest.mark.parametrize(
    "row", [row for row in every_row() if row["class"] not in ("", LEFT_OUT)], ids=lambda row: row["attribute"]
)
def test_a_published_name_stands_in_its_class(row: Row, lexicon: Lexicon) -> None:
    """Sour is a taste and astringent is none: a name stands where its source puts it."""
    concept = heard(lexicon, row["attribute"])[-1].label.concept
    assert lexicon.is_a(concept, row["class"]), lexicon.ancestors(concept)


@pytest.mark.parametrize("row", [row for row in every_row() if row["facet"]], ids=lambda row: row["attribute"])
def test_a_published_name_can_be_said_of_its_facet(row: Row, lexicon: Lexicon) -> None:
    """A taste is tasted, a shape is seen."""
    assert row["facet"] in lexicon.concepts[heard(lexicon, row["attribute"])[-1].label.concept].facets


def test_the_basic_tastes_and_astringency_are_kept_apart(lexicon: Lexicon) -> None:
    """Speakers confuse sour, bitter and astringent (ISO 5492 keeps them apart): none is another, or a kind of it."""
    concepts = {heard(lexicon, name)[0].label.concept for name in ("sour", "bitter", "salty", "sweet", "umami")}
    assert len(concepts) == 5
    assert not lexicon.is_a(heard(lexicon, "astringent")[0].label.concept, "taste")


def test_the_first_tier_of_beer_terms_counts_44() -> None:
    """The published count of first-tier terms (Meilgaard et al. 1979)."""
    assert len(rows_of(FILES[[path.stem for path in FILES].index("published-beer-1979")])) == 44


def test_the_green_tea_lexicon_has_its_thirty_names() -> None:
    """28 attributes are named in the abstract of Lee & Chambers 2007, and two groups that are terms themselves."""
    assert len(rows_of(FILES[[path.stem for path in FILES].index("published-green-tea-2007")])) == 30


def test_the_lexicon_is_broad(lexicon: Lexicon) -> None:
    """At least 900 concepts, 250 of them tea's own, and 3,000 listed labels."""
    listed = {label.text for concept_id in lexicon.concepts for label in lexicon.labels(concept_id)}
    assert len(lexicon.concepts) >= 900
    assert sum(concept.domain == "tea" for concept in lexicon.concepts.values()) >= 250
    assert len(listed) >= 3000
