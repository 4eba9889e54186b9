"""What a spreadsheet makes of the tables: texts, and nothing that it runs."""

from pathlib import Path
from xml.etree import ElementTree as ET

import pytest

from notesmith.publishing.tables import faithful_csv, spreadsheet_csv, xlsx
from notesmith.publishing.tables.model import Column, Table
from tests.publishing.clients.conftest import run
from tests.publishing.tables.conftest import HOSTILE

TABLE = Table((Column("said", "text", "…"), Column("=1+1", "text", "…")), tuple((text, text) for text in HOSTILE))
BY_SEMICOLON = "--infilter=CSV:59,34,76"
"""How a spreadsheet reads CSV where the comma is a decimal point."""
OFFICE = "{urn:oasis:names:tc:opendocument:xmlns:office:1.0}"
SHEET = "{urn:oasis:names:tc:opendocument:xmlns:table:1.0}"

pytestmark = pytest.mark.client("soffice")


def opened(path: Path, *options: str) -> ET.Element:
    """The document that the spreadsheet makes of a file."""
    home = f"-env:UserInstallation=file://{path.parent / 'home'}"
    run("soffice", home, "--headless", *options, "--convert-to", "fods", "--outdir", path.parent / "out", path)
    return ET.fromstring((path.parent / "out" / f"{path.stem}.fods").read_bytes())


def formulas(document: ET.Element) -> list[str]:
    """Every formula in it."""
    return [cell.attrib[f"{SHEET}formula"] for cell in document.iter() if f"{SHEET}formula" in cell.attrib]


def test_a_workbook_opens_with_texts_alone(tmp_path: Path) -> None:
    """Every cell is a text, also one that looks like a number, an error or a formula."""
    (tmp_path / "a.xlsx").write_bytes(xlsx.render({"T": TABLE}))
    document = opened(tmp_path / "a.xlsx")
    sorts = [cell.attrib[f"{OFFICE}value-type"] for cell in document.iter() if f"{OFFICE}value-type" in cell.attrib]
    assert set(sorts) == {"string"}
    assert formulas(document) == []


def test_the_spreadsheet_does_run_what_is_not_marked(tmp_path: Path) -> None:
    """So that the other tests prove something: the faithful form is not for opening."""
    (tmp_path / "a.csv").write_text(faithful_csv.render(TABLE), "utf-8", newline="")
    assert formulas(opened(tmp_path / "a.csv"))


@pytest.mark.parametrize("options", [(), (BY_SEMICOLON,)], ids=["comma", "semicolon"])
def test_csv_for_spreadsheets_opens_without_a_formula(options: tuple[str, ...], tmp_path: Path) -> None:
    """Whatever it takes for the end of a cell."""
    (tmp_path / "a.csv").write_text(spreadsheet_csv.render(TABLE), "utf-8", newline="")
    assert formulas(opened(tmp_path / "a.csv", *options)) == []
