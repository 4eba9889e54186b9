"""What a client makes of each kind of file: the texts that people are shown. Anything that would run fails here."""

import csv
import html
import io
import json
import re
from collections.abc import Callable, Iterator
from html.parser import HTMLParser
from typing import Any
from xml.etree import ElementTree as ET

from markdown_it import MarkdownIt

from notesmith.transcript.reading import parse_captions

Texts = Iterator[str]
TIMING = re.compile(r"\d{2,}:\d\d:\d\d\.\d{3} --> \d{2,}:\d\d:\d\d\.\d{3}")


def webvtt(content: bytes) -> Texts:
    """Cues, and nothing but cues; an arrow stands only between two times."""
    first, *blocks = content.decode().strip("\n").split("\n\n")
    assert first == "WEBVTT"
    for block in blocks:
        lines = block.split("\n")
        at = next(k for k, line in enumerate(lines) if TIMING.fullmatch(line))
        assert at <= 1
        assert "-->" not in "".join(lines[at + 1 :])
        shown = re.sub(r"^<v ([^<>]*)>", r"\1: ", " ".join(lines[at + 1 :]))
        assert "<" not in shown
        yield html.unescape(shown)


def json_text(content: bytes) -> Texts:
    """Every string of the document."""
    yield from _strings(json.loads(content))


def _strings(value: Any) -> Texts:
    if isinstance(value, str):
        yield value
    elif isinstance(value, dict | list):
        for item in value.values() if isinstance(value, dict) else value:
            yield from _strings(item)


def xml(content: bytes) -> Texts:
    """The text of every element; none of them a script, and no address that runs."""
    assert b"<!ENTITY" not in content
    for element in ET.fromstring(content).iter():
        assert "script" not in str(element.tag).lower()
        _refuse_handlers(dict(element.attrib))
        yield from filter(None, (element.text, element.tail, *element.attrib.values()))


def _refuse_handlers(attributes: dict[str, str | None]) -> None:
    for name, value in attributes.items():
        assert not name.lower().startswith("on"), f"{name} runs"
        assert not (value or "").strip().lower().startswith(("javascript:", "vbscript:")), f"{name}={value} runs"


class _Page(HTMLParser):
    """Gathers the text of a page; a page of ours needs no script that came from a text."""

    def __init__(self) -> None:
        super().__init__()
        self.texts: list[str] = []

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        assert tag not in ("script", "iframe", "object", "embed", "base", "form"), f"<{tag}> came out alive"
        _refuse_handlers(dict(attrs))
        assert dict(attrs).get("src") != "x"
        self.texts += [value for _, value in attrs if value]

    def handle_data(self, data: str) -> None:
        self.texts.append(data)


def page(content: bytes) -> Texts:
    """What a browser shows."""
    parser = _Page()
    parser.feed(content.decode())
    yield " ".join("".join(parser.texts).split())


def markdown(content: bytes) -> Texts:
    """What is shown of it by a renderer that lets HTML through, as some do."""
    yield from page(MarkdownIt("commonmark", {"html": True}).enable("table").render(content.decode()).encode())


def lines(pattern: str) -> Callable[[bytes], Texts]:
    """Lines that all follow a pattern; its first group is the text."""

    def read(content: bytes) -> Texts:
        for line in content.decode().rstrip("\n").split("\n"):
            found = re.fullmatch(pattern, line)
            assert found, line
            yield found[1] or ""

    return read


def ffmetadata(content: bytes) -> Texts:
    """Blocks of five lines; what is escaped is read as ffmpeg does."""
    head, *rest = re.split(r"(?<!\\)\n", content.decode().rstrip("\n"))
    assert head == ";FFMETADATA1"
    for block in zip(*[iter(rest)] * 5, strict=True):
        assert [line.split("=")[0] for line in block] == ["[CHAPTER]", "TIMEBASE", "START", "END", "title"]
        yield re.sub(r"\\(.)", r"\1", block[4].removeprefix("title="))


def rows(content: bytes) -> Texts:
    """Cells; every row as wide as the first."""
    table = list(csv.reader(io.StringIO(content.decode("utf-8-sig"), newline="")))
    assert len({len(row) for row in table}) == 1
    yield from (cell for row in table for cell in row)


def safe_rows(content: bytes) -> Texts:
    """Cells, none of which a spreadsheet takes for a formula."""
    for cell in rows(content):
        number = re.fullmatch(r"-?[\d.]+", cell)
        assert number or not cell.lstrip(" \u00a0").startswith(("=", "+", "-", "@", "\t", "\r", "\n")), cell
        yield re.sub(r"'(?=[=+\-@])", "", cell)


def workbook(content: bytes) -> Texts:
    """Cells of every sheet, none of them a formula."""
    import openpyxl

    for sheet in openpyxl.load_workbook(io.BytesIO(content)).worksheets:
        for row in sheet.iter_rows():
            for cell in row:
                assert cell.data_type != "f", cell.value
                yield str(cell.value)


def parquet(content: bytes) -> Texts:
    """Every string of every column."""
    from pyarrow import parquet as reader

    yield from _strings(reader.read_table(io.BytesIO(content)).to_pylist())


def picture(content: bytes) -> Texts:
    """Nothing to read, but a whole picture of a sane size."""
    from PIL import Image

    with Image.open(io.BytesIO(content)) as image:
        image.load()
        assert max(image.size) < 30_000
    yield from ()


def plain(content: bytes) -> Texts:
    """Text without a sign that steers a terminal or turns the direction of writing."""
    text = content.decode()
    assert not re.search("[\x00-\x08\x0b-\x1f\x7f-\x9f\u202a-\u202e\u2066-\u2069\u200e\u200f\u061c]", text)
    yield " ".join(text.split())


def concat(content: bytes) -> Texts:
    """Only the directives of our own, each with a value of ours."""
    head, *rest = content.decode().rstrip("\n").split("\n")
    assert head == "ffconcat version 1.0"
    for line in rest:
        assert re.fullmatch(r"# .*|file './Ana'\\''s cups\.mp4'|(?:in|out)point [\d.]+", line), line
        yield line


def captions(content: bytes) -> Texts:
    """As many cues as there were."""
    yield from (f"{cue.speaker} {cue.text}" for cue in parse_captions(content, "hostile.json").cues)


BY_SUFFIX: tuple[tuple[str, Callable[[bytes], Texts]], ...] = (
    ("corrected.*", captions),
    (".vtt", webvtt),
    ("chapters.txt", lines(r"\d+:\d\d(?::\d\d)? (.+)")),
    (".comments", lines(r"CHAPTER\d{3}(?:=\d\d:\d\d:\d\d\.\d{3}|NAME=(.+))")),
    (".ffmeta", ffmetadata),
    (".ffconcat", concat),
    (".xml", xml),
    (".svg", xml),
    (".html", page),
    (".md", markdown),
    (".json", json_text),
    (".otio", json_text),
    (".safe.csv", safe_rows),
    (".csv", rows),
    (".xlsx", workbook),
    (".parquet", parquet),
    (".png", picture),
    (".txt", plain),
)
"""How a kind is read, by what its file's name ends in; the first that fits."""
