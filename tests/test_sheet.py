"""The tasting sheet: what is read, what is refused and with which words."""

import tomllib
from pathlib import Path
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from notesmith.errors import SheetError
from notesmith.records import Sheet, SheetPreparation, SheetSample
from notesmith.sheet import find_sheet, read_sheet, sheet_to_toml, write_template

CASES = tomllib.loads((Path(__file__).parent / "cases" / "sheets.toml").read_text("utf-8"))


def put(folder: Path, text: str, name: str = "tea.sheet.toml") -> Path:
    """Write a sheet to be read."""
    path = folder / name
    path.write_text(text, "utf-8")
    return path


@pytest.mark.parametrize("case", CASES["refused"], ids=lambda case: case["says"][0])
def test_a_wrong_sheet_is_refused_in_one_line_that_names_it(case: dict[str, Any], tmp_path: Path) -> None:
    """The message names the file and says what is wrong and how to mend it."""
    path = put(tmp_path, case["sheet"])
    with pytest.raises(SheetError) as caught:
        read_sheet(path)
    line = str(caught.value)
    assert line.startswith(f"{path}: ")
    assert "\n" not in line
    for words in case["says"]:
        assert words in line


@pytest.mark.parametrize("case", CASES["read"], ids=lambda case: case["why"])
def test_a_sheet_that_comes_near_a_wrong_one_is_read(case: dict[str, Any], tmp_path: Path) -> None:
    """What looks like a fault and is none is let through."""
    assert read_sheet(put(tmp_path, case["sheet"])).samples


def test_json_and_toml_say_the_same(tmp_path: Path) -> None:
    """A sheet reads alike from both forms, null being what TOML leaves out."""
    toml = put(tmp_path, 'blind = true\n[[samples]]\nid = "A"\naliases = ["red"]\n')
    json = put(tmp_path, '{"blind": true, "samples": [{"id": "A", "aliases": ["red"], "product": null}]}', "s.json")
    assert read_sheet(toml) == read_sheet(json)


@pytest.mark.parametrize(
    ("name", "text", "says"),
    [
        ("a.json", "[]", "holds no fields"),
        ("a.json", '{"title": "x", "title": "y", "samples": []}', "the field `title` stands twice"),
        ("a.json", '{"samples": [{"id": "A", "price": NaN}]}', "`price` is no number"),
        ("a.json", "{", "is no JSON"),
        ("a.json", "[" * 100_000, "is no JSON"),
        ("a.yaml", "samples: []", "neither .toml nor .json"),
    ],
)
def test_a_wrong_json_sheet_is_refused(name: str, text: str, says: str, tmp_path: Path) -> None:
    """JSON has faults of its own."""
    with pytest.raises(SheetError, match=says):
        read_sheet(put(tmp_path, text, name))


def test_a_missing_sheet_is_a_sheet_error(tmp_path: Path) -> None:
    """A path that leads nowhere is said in a line."""
    with pytest.raises(SheetError, match="cannot be read"):
        read_sheet(tmp_path / "none.toml")


def test_a_sheet_in_another_encoding_is_a_sheet_error(tmp_path: Path) -> None:
    """Bytes that are no UTF-8 are said in a line."""
    path = tmp_path / "s.toml"
    path.write_bytes('title = "thé"'.encode("latin-1"))
    with pytest.raises(SheetError, match="save it as UTF-8"):
        read_sheet(path)


def test_a_byte_order_mark_is_no_matter(tmp_path: Path) -> None:
    """Some editors begin a file with a mark."""
    assert read_sheet(put(tmp_path, '\ufeff[[samples]]\nid = "A"')).samples[0].id == "A"


def test_the_template_is_a_sheet(tmp_path: Path) -> None:
    """What `sheet new` writes is read without a change."""
    assert [sample.id for sample in read_sheet(put(tmp_path, write_template())).samples] == ["1", "2"]


def test_the_template_mends_into_a_full_sheet(tmp_path: Path) -> None:
    """Every line that is commented out is right once the sign is removed."""
    lines = write_template().splitlines()
    full = [line[2:] if line.startswith("# ") and (" = " in line or "[[" in line) else line for line in lines]
    sheet = read_sheet(put(tmp_path, "\n".join(full)))
    assert sheet.samples[0].model_fields_set == set(SheetSample.model_fields)
    assert sheet.preparations[0].model_fields_set == set(SheetPreparation.model_fields)


def test_the_sheet_beside_the_captions_is_found(tmp_path: Path) -> None:
    """talk.sheet.json belongs to talk.vtt and to no other."""
    path = put(tmp_path, "{}", "talk.sheet.json")
    assert find_sheet(tmp_path / "talk.vtt") == path
    assert find_sheet(tmp_path / "other.vtt") is None


def test_two_sheets_beside_the_captions_are_refused(tmp_path: Path) -> None:
    """Which of them was meant cannot be guessed."""
    put(tmp_path, "{}", "talk.sheet.json")
    put(tmp_path, "", "talk.sheet.toml")
    with pytest.raises(SheetError, match="two sheets lie beside it"):
        find_sheet(tmp_path / "talk.vtt")


TEXT = st.text(st.characters(exclude_categories=["Cs"]))
NUMBER = st.floats(min_value=0.01, max_value=1e6)
SAMPLES = st.lists(
    st.builds(SheetSample, id=st.from_regex("[bcdfg]x[0-9]{1,4}", fullmatch=True), aliases=st.just(()),
              product=st.none(), price=NUMBER | st.none(), currency=st.sampled_from([None, "EUR"]),
              description=TEXT | st.none()),
    min_size=1, max_size=3, unique_by=lambda sample: sample.id,
)  # fmt: skip


@given(samples=SAMPLES, title=TEXT, blind=st.booleans())
def test_a_written_sheet_reads_back(
    tmp_path_factory: pytest.TempPathFactory, samples: list[SheetSample], title: str, blind: bool
) -> None:
    """Writing a sheet and reading it changes nothing, whatever signs the text holds."""
    sheet = Sheet(title=title, samples=tuple(samples), blind=blind)
    assert read_sheet(put(tmp_path_factory.mktemp("sheet"), sheet_to_toml(sheet))) == sheet
