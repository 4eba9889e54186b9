"""The wide table: samples by terms."""

from notesmith.publishing.episode import Episode
from notesmith.publishing.tables.model import Value
from notesmith.publishing.tables.samples import samples
from notesmith.records import Notes


def rows(episode: Episode) -> list[dict[str, Value]]:
    """The rows, each by the names of its columns."""
    table = samples(episode)
    return [dict(zip(table.names, row, strict=True)) for row in table.rows]


def test_nothing_tasted_no_row(empty: Notes) -> None:
    """Neither sample nor term."""
    table = samples(Episode(empty))
    assert table.rows == ()
    assert table.names == ("transcript", "sample", "product", "preparation", "taster")


def test_one_row_for_each_sample_preparation_and_taster(episode: Episode) -> None:
    """Tasters and preparations are never mixed."""
    cups = [(row["sample"], row["preparation"], row["taster"]) for row in rows(episode)]
    assert cups == [
        ("A", None, "Ana"), ("A", "short", "Ana"), ("A", "short", "Bram"),
        ("B", "short", "Bram"), ("B", "mug", "Ana"), ("B", "mug", "Bram"),
    ]  # fmt: skip


def test_a_term_said_twice_has_two_values(episode: Episode) -> None:
    """In the order of time, each with its strength and its second."""
    row = rows(episode)[1]
    assert row["aroma.plum.presence"] == ("present", "present")
    assert row["aroma.plum.intensity"] == ("low", "low")
    assert row["aroma.plum.start"] == (65.5, 71.0)


def test_what_was_denied_is_there_as_denied(episode: Episode) -> None:
    """Not as nothing."""
    assert rows(episode)[2]["aroma.smoke.presence"] == ("absent",)


def test_what_nobody_spoke_of_is_empty(episode: Episode) -> None:
    """Not as denied."""
    assert rows(episode)[0]["aroma.smoke.presence"] is None


def test_words_of_others_are_left_out(episode: Episode) -> None:
    """A label is no taster."""
    assert not any("honey" in name for name in samples(episode).names)


def test_a_sample_of_which_nothing_was_said_has_a_row(small: Notes) -> None:
    """It was on the table."""
    assert [row["sample"] for row in rows(Episode(small.model_copy(update={"observations": ()})))] == ["A", "B"]


def test_a_sealed_product_is_not_told(small: Notes) -> None:
    """What the recording never made known stays unknown."""
    sheet = small.sheet.model_copy(update={"blind": True})
    sealed = Episode(small.model_copy(update={"sheet": sheet, "reveals": ()}))
    assert {row["product"] for row in rows(sealed)} == {None}
