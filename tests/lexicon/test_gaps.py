"""The open descriptors of several notes, and the forms they are written in."""

from pathlib import Path

import pytest

from notesmith.errors import NotesFileError
from notesmith.lexicon import Lexicon
from notesmith.lexicon.check import check, check_domains
from notesmith.lexicon.folders import own_domains, read_domain
from notesmith.lexicon.gaps import find_gaps
from notesmith.notes_file import read_notes
from notesmith.publishing.gaps import rows, table
from notesmith.records import Notes, Observation, Sheet, Why

HEADER = "concept\tlabel\tkind\tform\tuse\n"


def said(term: str, start: float | None = 65.0, concept: str | None = None) -> Observation:
    """A term perceived, open unless a concept is given."""
    return Observation(
        id=f"o-{term}-{start}", start=start, end=start, quote=f"like {term}", span=(0, 9), confidence=0.9,
        why=(Why(rule="likened to"),), term=term, term_span=(5, 9), concept=concept, facet="aroma", presence="present",
        intensity=None, sample="A", taster=None, preparation=None, voice="taster", after_reveal=False,
    )  # fmt: skip


def noted(name: str, *observations: Observation) -> Notes:
    """The notes of one recording."""
    return Notes(
        transcript=name, sheet=Sheet(), sheet_drafted=True, samples=("A",), observations=observations, comparisons=(),
        preferences=(), facts=(), reveals=(), sections=(), repairs=(), ignored=(), warnings=(),
    )  # fmt: skip


@pytest.fixture(scope="module")
def ours() -> Lexicon:
    """Our own lexicon."""
    return Lexicon.load()


def test_no_notes_have_no_gaps(ours: Lexicon) -> None:
    """Neither without files nor without observations."""
    assert find_gaps([], ours) == find_gaps([noted("a.vtt")], ours) == []


def test_gaps_are_counted_over_all_files(ours: Lexicon) -> None:
    """In whatever spelling, the most frequent first, the rest by their letters."""
    first = noted("a.vtt", said("old piano"), said("bus seat"), said("astrigent"))
    second = noted("b.vtt", said("Old-piano", 3600.0))
    gaps = find_gaps([first, second], ours)
    assert [(gap.count, gap.term) for gap in gaps] == [(2, "old piano"), (1, "astrigent"), (1, "bus seat")]
    assert [(quote.transcript, quote.start) for quote in gaps[0].quotes] == [("a.vtt", 65.0), ("b.vtt", 3600.0)]


def test_three_different_quotes_are_enough(ours: Lexicon) -> None:
    """The first ones, the same words at the same time only once."""
    times = [1.0, 1.0, 2.0, 3.0, 4.0]
    (gap,) = find_gaps([noted("a.vtt", *(said("old piano", time) for time in times))], ours)
    assert gap.count == 5
    assert [quote.start for quote in gap.quotes] == [1.0, 2.0, 3.0]


@pytest.mark.parametrize("term", ["Lovely", "aftertaste", "-", "lemon"])
def test_what_can_be_no_label_is_no_gap(term: str, ours: Lexicon) -> None:
    """Liking, the place of a perception, a mere sign, and what the lexicon knows by now."""
    assert find_gaps([noted("a.vtt", said(term))], ours) == []


def test_what_has_a_concept_is_no_gap(ours: Lexicon) -> None:
    """Whatever the words are."""
    assert find_gaps([noted("a.vtt", said("old piano", concept="wood"))], ours) == []


def test_the_table_tells_all(ours: Lexicon) -> None:
    """Count, term, likeness, file and time; a term without a near concept shows none."""
    notes = noted("a.vtt", said("astrigent", None), said("old piano"), said("old piano", 3725.0))
    lines = [" ".join(line.split()) for line in table(find_gaps([notes], ours)).splitlines()[2:]]
    assert lines == [
        "2 old piano - a.vtt 1:05 like old piano",
        "a.vtt 1:02:05 like old piano",
        "1 astrigent astringent 0.86 a.vtt like astrigent",
    ]


def test_a_table_without_gaps_says_so() -> None:
    """Not an empty heading."""
    assert table([]) == "No open descriptors.\n"


def test_signs_that_steer_a_terminal_are_replaced(ours: Lexicon) -> None:
    """In the term and in the words quoted; a tab makes no new column."""
    gaps = find_gaps([noted("a\x1b.vtt", said("old\x1b[31m\tpiano"))], ours)
    assert "\x1b" not in table(gaps) + rows(gaps)
    assert rows(gaps) == HEADER + "\told�[31m piano\tsynonym\tphrase\t\n"


def test_rows_are_a_lexicon_that_passes_the_check(ours: Lexicon, tmp_path: Path) -> None:
    """What has a near concept is loaded as it stands, everyday words guarded, and is no gap any more."""
    notes = noted("a.vtt", said("astrigent"), said("Smokey Bacon"), said("smokey-bacon"))
    (tmp_path / "labels.tsv").write_text(rows(find_gaps([notes], ours)), "utf-8")
    assert check([tmp_path]) == []
    assert find_gaps([notes], Lexicon.load(tmp_path)) == []


def test_only_the_concept_has_to_be_chosen(ours: Lexicon, tmp_path: Path) -> None:
    """The check asks for it, and for nothing once it is there; `medium` is an everyday word."""
    labels = tmp_path / "labels.tsv"
    labels.write_text(rows(find_gaps([noted("a.vtt", said("old piano"), said("medium"))], ours)), "utf-8")
    assert [finding.what for finding in check([tmp_path])] == ["a row needs a concept and a label"] * 2
    labels.write_text(labels.read_text("utf-8").replace("\n\t", "\nslate\t"), "utf-8")
    assert check_domains([read_domain(tmp_path)], own_domains()) == []


def test_rows_can_be_pasted_with_their_header(ours: Lexicon, tmp_path: Path) -> None:
    """A header among the rows is passed over."""
    pasted = rows(find_gaps([noted("a.vtt", said("astrigent"))], ours))
    (tmp_path / "labels.tsv").write_text(HEADER + "slate\told blackboard\tsynonym\tnoun\t\n" + pasted, "utf-8")
    assert check([tmp_path]) == []


@pytest.mark.parametrize(
    ("content", "says"),
    [
        (b"", "holds no notes: invalid json: eof"),
        (b"WEBVTT\n", "holds no notes: invalid json"),
        (b"\xff\xfe{\x00}\x00", "holds no notes: invalid json"),
        (b"[]", "holds no notes: input should be an object"),
        (b'{"transcript": "a.vtt"}', "holds no notes: sheet: field required"),
    ],
)
def test_a_file_that_holds_no_notes_is_refused(content: bytes, says: str, tmp_path: Path) -> None:
    """File, what is wrong, and how to mend it."""
    path = tmp_path / "a.notes.json"
    path.write_bytes(content)
    with pytest.raises(NotesFileError) as caught:
        read_notes(path)
    assert str(caught.value).startswith(f"{path}: {says}")
    assert str(caught.value).endswith("; write them with notesmith notes --format json")


def test_notes_with_a_byte_order_mark_are_read(tmp_path: Path) -> None:
    """As some editors save them."""
    path = tmp_path / "a.notes.json"
    path.write_text("\ufeff" + noted("a.vtt").model_dump_json(), "utf-8")
    assert read_notes(path) == noted("a.vtt")
