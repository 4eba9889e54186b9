"""What the lexicon hears among words, and what it knows of concepts."""

import time
import tomllib
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest

from notesmith.lexicon import Lexicon
from notesmith.lexicon.folders import own_domains, read_folder
from notesmith.lexicon.index import _load
from notesmith.lexicon.merge import merged

CASES = Path(__file__).parents[1] / "cases" / "lexicon"
OURS, USERS = CASES / "ours", CASES / "users"
MATCHES = tomllib.loads((CASES / "matches.toml").read_text("utf-8"))["case"]


@pytest.fixture(scope="module")
def small() -> Lexicon:
    """A lexicon of a few concepts."""
    return Lexicon.read(OURS)


@pytest.fixture(scope="module")
def overlaid() -> Lexicon:
    """The small lexicon with a user's folder laid over it."""
    return Lexicon(merged(read_folder(OURS), read_folder(USERS)))


@pytest.mark.parametrize("case", MATCHES, ids=lambda case: case["name"])
def test_labels_are_heard_among_words(case: dict[str, Any], small: Lexicon) -> None:
    """The longest label at each place is heard, whole words only, whatever its spelling."""
    found = [[hit.start, hit.end, hit.label.concept] for hit in small.match(case["words"])]
    assert found == case["hits"]


def test_an_empty_text_is_no_label(small: Lexicon) -> None:
    """Looking up nothing finds nothing."""
    assert small.look_up("") is None
    assert small.look_up(" - ") is None


def test_a_derived_label_says_so_and_keeps_its_guard(small: Lexicon) -> None:
    """An inflection belongs to its label's concept and is guarded where that is."""
    label = small.look_up("Driest")
    assert label
    assert (label.concept, label.derived, label.guarded) == ("dry", True, True)


def test_misheard_labels_are_kept_apart(small: Lexicon) -> None:
    """What a recogniser prints wrongly is offered for repair and not looked up."""
    assert small.misheard["guy", "one"].concept == "gaiwan"
    assert small.look_up("guy one") is None


def test_labels_of_a_concept_begin_with_the_preferred(small: Lexicon) -> None:
    """Preferred first, then synonyms, then misheard ones; an unknown concept has none."""
    assert [label.kind for label in small.labels("gaiwan")] == ["preferred", "synonym", "misheard"]
    assert [label.text for label in small.labels("lemon")] == ["lemon", "lemony"]
    assert small.labels("unheard-of") == ()


def test_terms_are_the_listed_labels_of_one_sort(small: Lexicon) -> None:
    """Vessels are not descriptors; misheard and derived labels are no terms."""
    assert [label.text for label in small.terms("vessel")] == ["gaiwan", "gai-wán"]
    assert "lemons" not in [label.text for label in small.terms("descriptor")]


def test_ancestors_go_up_to_the_top(small: Lexicon) -> None:
    """Nearest first; a top has none, and neither has an unknown concept."""
    assert small.ancestors("lemon-curd") == ("lemon", "citrus", "fruity")
    assert small.ancestors("fruity") == small.ancestors("unheard-of") == ()


def test_a_concept_is_itself_and_its_ancestors(small: Lexicon) -> None:
    """Lemon is fruity, but what is fruity need not be lemon."""
    assert small.is_a("lemon", "fruity")
    assert small.is_a("lemon", "lemon")
    assert not small.is_a("fruity", "lemon")


def test_a_users_concept_replaces_the_fields_given(overlaid: Lexicon) -> None:
    """A new definition leaves the rest of the concept as it was."""
    dry = overlaid.concepts["dry"]
    assert (dry.definition, dry.broader) == ("The user's own meaning.", "taste")


def test_a_users_label_moves_to_the_users_concept(overlaid: Lexicon) -> None:
    """A label claimed by the user leaves our concept."""
    label = overlaid.look_up("lemony")
    assert label
    assert label.concept == "yuzu"
    assert [label.text for label in overlaid.labels("lemon")] == ["lemon"]


def test_a_user_can_take_a_label_away(overlaid: Lexicon) -> None:
    """A removed label is not heard as such; its parts are."""
    assert [hit.label.concept for hit in overlaid.match(["lemon", "curd"])] == ["lemon"]


def test_a_user_can_take_a_derived_label_away(tmp_path: Path) -> None:
    """An inflection that misleads can be removed too."""
    (tmp_path / "labels.tsv").write_text("concept\tlabel\tkind\tform\tuse\nlemon\tlemons\tremoved\t\t\n", "utf-8")
    assert Lexicon(merged(read_folder(OURS), read_folder(tmp_path))).look_up("lemons") is None


def test_our_own_lexicon_is_loaded_once() -> None:
    """A second load costs nothing: it is the same object."""
    assert Lexicon.load() is Lexicon.load()


@pytest.mark.benchmark
def test_the_lexicon_is_quick_to_load() -> None:
    """Ten thousand labels are ready in 150 milliseconds on idle cores; the bound leaves a busy machine twice that."""
    rows = sum(len(domain.rows) for domain in own_domains())
    assert min(_seconds_to(lambda: _load.__wrapped__(())) for _ in range(3)) < 0.3 * rows / 10_000


@pytest.mark.benchmark
def test_a_long_talk_is_matched_quickly() -> None:
    """A talk of 11,000 words takes less than 40 milliseconds."""
    lexicon = Lexicon.load()
    words = ("this one is a bit drier than the last , with lemon zest and a long sweet finish . " * 600).split()[:11000]
    assert min(_seconds_to(lambda: lexicon.match(words)) for _ in range(3)) < 0.04


def _seconds_to(act: Callable[[], object]) -> float:
    start = time.perf_counter()
    act()
    return time.perf_counter() - start


def test_a_word_of_no_label_is_outside(small: Lexicon) -> None:
    """A word of a label is inside, in whatever spelling; white space and a hyphen part nothing."""
    word = next(iter(small._forms))[0]
    assert not small.is_outside(word)
    assert not small.is_outside(word.upper())
    assert small.is_outside("zzzz")
    assert not small.is_outside("-")
    assert not small.is_outside(" ")
