"""The forms a table is written in: what is read back is what was written."""

import csv
import io
import json
import re
import zipfile
from collections.abc import Callable
from typing import Any
from unittest.mock import patch

import openpyxl
import pytest

from notesmith.publishing.episode import Episode
from notesmith.publishing.tables import faithful_csv, forms, parquet, rows_json, spreadsheet_csv, xlsx
from notesmith.publishing.tables.model import Column, Table, Value
from notesmith.publishing.tables.records import records
from notesmith.publishing.tables.samples import samples
from notesmith.records import Notes
from tests.publishing.tables.conftest import HOSTILE

both_tables = pytest.mark.parametrize("table_of", [records, samples], ids=["records", "samples"])
every_text = pytest.mark.parametrize("text", HOSTILE, ids=lambda text: text[:9].encode("unicode_escape").decode())
TableOf = Callable[[Episode], Table]


def workbook(table: Table) -> bytes:
    """A workbook with this table alone."""
    return xlsx.render({"T": table})


RENDER = [faithful_csv.render, spreadsheet_csv.render, rows_json.render, parquet.render, workbook]


def one(value: Value, sort: str = "text", name: str = "said") -> Table:
    """A table of one cell."""
    return Table((Column(name, sort, "…"),), ((value,),))  # type: ignore[arg-type]


def cells(text: str) -> list[list[str]]:
    """What a program that knows CSV reads."""
    return list(csv.reader(io.StringIO(text, newline="")))


def book(table: Table) -> openpyxl.Workbook:
    """What a program that knows workbooks reads."""
    return openpyxl.load_workbook(io.BytesIO(workbook(table)))


@pytest.mark.parametrize("render", RENDER)
@both_tables
def test_a_table_without_rows_can_be_written(
    render: Callable[[Table], str | bytes], table_of: TableOf, empty: Notes
) -> None:
    """Columns alone."""
    assert render(table_of(Episode(empty)))


@pytest.mark.parametrize(
    "write", [forms.of(records, faithful_csv.render), forms.of(samples, parquet.render), forms.workbook]
)
def test_nothing_said_makes_no_file(write: Callable[[Episode], str | bytes | None], empty: Notes) -> None:
    """An empty table is not published."""
    assert write(Episode(empty)) is None


@pytest.mark.parametrize("render", RENDER)
@both_tables
def test_the_same_table_makes_the_same_bytes(
    render: Callable[[Table], str | bytes], table_of: TableOf, episode: Episode
) -> None:
    """Every form."""
    assert render(table_of(episode)) == render(table_of(episode))


def test_a_workbook_holds_no_time_of_writing(episode: Episode) -> None:
    """Neither in its properties nor in the archive that it is."""
    made = forms.workbook(episode)
    assert made is not None
    with zipfile.ZipFile(io.BytesIO(made)) as archive:
        assert {entry.date_time[0] for entry in archive.infolist()} == {1980}
        assert set(re.findall(rb"20\d\d-\d\d-\d\dT", archive.read("docProps/core.xml"))) == set()


@both_tables
def test_parquet_is_read_back_equal(table_of: TableOf, episode: Episode) -> None:
    """Every value, as the type it has."""
    from pyarrow import parquet as reader

    table = table_of(episode)
    read = reader.read_table(io.BytesIO(parquet.render(table)))
    assert tuple(read.column_names) == table.names
    rows = zip(*(column.to_pylist() for column in read.columns), strict=True)
    assert [tuple(tuple(value) if isinstance(value, list) else value for value in row) for row in rows] == list(
        table.rows
    )


def test_parquet_says_what_its_columns_hold(episode: Episode) -> None:
    """In the metadata of each."""
    from pyarrow import parquet as reader

    schema = reader.read_schema(io.BytesIO(parquet.render(records(episode))))
    assert all(schema.field(name).metadata[b"says"] for name in schema.names)


@both_tables
def test_json_is_read_back_equal(table_of: TableOf, episode: Episode) -> None:
    """Lists as lists, nothing as null."""
    table = table_of(episode)
    read = [tuple(map(frozen, row.values())) for row in json.loads(rows_json.render(table))]
    assert read == list(table.rows)


@both_tables
def test_faithful_csv_is_read_back_equal(table_of: TableOf, episode: Episode) -> None:
    """Every value by the sort of its column; an empty cell is one that has none."""
    table = table_of(episode)
    head, *rows = cells(faithful_csv.render(table))
    assert tuple(head) == table.names
    assert [tuple(map(read_back, table.columns, row)) for row in rows] == list(table.rows)


def read_back(column: Column, cell: str) -> Value:
    """The value that the cell of a faithful CSV stands for."""
    if not cell:
        return None
    if column.sort == "text":
        return cell
    return frozen(json.loads(cell))


def frozen(value: Any) -> Value:
    """The value with a list as the tuple that it was."""
    made: Value = tuple(value) if isinstance(value, list) else value
    return made


@every_text
def test_faithful_csv_changes_nothing(text: str) -> None:
    """Whatever the text."""
    assert cells(faithful_csv.render(one(text)))[1] == [text]


@every_text
def test_a_spreadsheet_is_given_no_formula_as_csv(text: str) -> None:
    """Not in a cell, not in a heading, not where a semicolon is taken for the end of a cell."""
    written = spreadsheet_csv.render(one(text, name=text)).removeprefix(spreadsheet_csv.MARK)
    for (cell,) in cells(written):
        for part in cell.split(";"):
            assert part.strip(" \t\r\n\u00a0")[:1] not in tuple("=+-@＝＋－＠")


@pytest.mark.parametrize("text", ["plum", "a-b", "née", "x" * 10_000, "🍵 龙井", "no = sign first"])
def test_plain_words_are_not_marked_for_spreadsheets(text: str) -> None:
    """Only what would be run is changed."""
    assert cells(spreadsheet_csv.render(one(text)))[1] == [text]


@pytest.mark.parametrize("number", [-12, -0.5, 0, 1e-9])
def test_numbers_stay_numbers(number: float) -> None:
    """Below zero they begin with a sign, and are no formula."""
    assert cells(spreadsheet_csv.render(one(number, "number")))[1] == [str(number)]
    assert book(one(number, "number")).active["A2"].value == number  # type: ignore[index, union-attr]


def test_csv_for_spreadsheets_tells_its_letters() -> None:
    """Without the mark some spreadsheets take UTF-8 for something else."""
    assert spreadsheet_csv.render(one("龙井")).encode().startswith(b"\xef\xbb\xbf")


@every_text
def test_a_workbook_holds_texts_and_no_formula(text: str) -> None:
    """Every text is one, whole but for signs that XML has no room for, and none is a formula, a number or an error."""
    sheet = book(one(text, name=text)).active
    assert sheet is not None
    for cell in (sheet["A1"], sheet["A2"]):
        assert cell.data_type == "s"
        assert not any(steers in cell.value for steers in "\x00\x1b\u202e\ufffe\uffff")
    letters = [sign for sign in text if sign.isalnum()]
    assert [sign for sign in str(sheet["A2"].value) if sign.isalnum()] == letters


def test_a_text_longer_than_a_cell_is_cut_and_shows_it() -> None:
    """A workbook with more would not open."""
    value = str(book(one("x" * 40_000)).active["A2"].value)  # type: ignore[index, union-attr]
    assert len(value) == xlsx.MOST_LETTERS
    assert value.endswith("…")


def test_a_workbook_has_a_sheet_to_read_one_to_compare_and_one_of_everything(episode: Episode) -> None:
    """In this order, each with a line of headings that stays."""
    read = openpyxl.load_workbook(io.BytesIO(forms.workbook(episode) or b""))
    assert read.sheetnames == ["Terms", "Samples", "Records"]
    assert all(sheet.freeze_panes == "A2" and sheet["A1"].font.bold for sheet in read)


def test_one_value_of_a_list_stands_as_itself() -> None:
    """So that a spreadsheet can count with it."""
    assert book(one((2.5,), "numbers")).active["A2"].value == 2.5  # type: ignore[index, union-attr]
    assert book(one(("low", None), "texts")).active["A2"].value == "low;"  # type: ignore[index, union-attr]


@pytest.mark.parametrize("table_of", [records, samples])
def test_parquet_alone_needs_its_package(table_of: TableOf, episode: Episode) -> None:
    """The other forms are written where it is missing."""
    with patch.dict("sys.modules", {"pyarrow": None}):
        assert faithful_csv.render(table_of(episode))
        with pytest.raises(ImportError):
            parquet.render(table_of(episode))
