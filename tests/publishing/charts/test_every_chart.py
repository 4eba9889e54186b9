"""What holds of every chart, whatever it shows."""

import io
import re
from xml.etree import ElementTree as ET

import matplotlib.image
import pytest

from notesmith.publishing.charts import CHARTS, PAGE, PHONE, Chart
from notesmith.publishing.charts.files import in_words, png_of, svg_of
from notesmith.publishing.charts.letters import width as width_of
from notesmith.publishing.charts.paper import Paper, Words
from notesmith.publishing.episode import Episode
from notesmith.records import Notes, Section, SheetSample
from tests.publishing.charts.conftest import Make, Said

every_chart = pytest.mark.parametrize("chart", CHARTS, ids=lambda chart: chart.name)
every_width = pytest.mark.parametrize("width", [PAGE, PHONE])
HOSTILE = [
    "<script>alert(1)</script>", "</title><svg onload=x>", "--> ]]>", "$x^2$ and \\frac{1}", "a\u202eb", "x" * 10_000,
    "two\nlines", "🍵 龙井 ñ", "\ufffe\x00", "&amp; \"quoted\" 'so'",
]  # fmt: skip
TERMS = ("sweet", "bitter", "fruity", "floral", "smoky-burnt")


def section(start: float, kind: str, sample: str | None) -> Section:
    """A section of a minute."""
    return Section(
        id=f"s{start}", start=start, end=start + 60, quote="…", span=(int(start), int(start) + 60), confidence=0.9,
        why=(), kind=kind, sample=sample,  # type: ignore[arg-type]
    )  # fmt: skip


def tasted(episode_of: Make, samples: tuple[str, ...]) -> Episode:
    """An episode of which all charts have something to show: everything is said of each sample."""
    said: list[Said] = [
        {"sample": sample, "concept": term, "term": term, "intensity": (None, "low", "high")[(number + place) % 3],
         "presence": "absent" if number == place else "present"}
        for number, sample in enumerate(samples)
        for place, term in enumerate(TERMS)
    ]  # fmt: skip
    sections = (section(0, "opening", None), section(60, "tasting", "A"), section(120, "verdict", None))
    return episode_of(*said, samples=samples, sections=sections)


@pytest.fixture
def full(episode_of: Make) -> Episode:
    """Nine samples, more than there are colours."""
    return tasted(episode_of, tuple("ABCDEFGHI"))


@pytest.fixture
def few(episode_of: Make) -> Episode:
    """Two samples, which are drawn sooner."""
    return tasted(episode_of, ("A", "B"))


def paper(chart: Chart, episode: Episode, width: int) -> Paper:
    """The sheet of a chart that has something to show."""
    drawn = chart.lay_out(episode, width)
    assert drawn is not None
    return drawn


def box(item: Words) -> tuple[float, float, float, float]:
    """Left, top, right and bottom of words."""
    wide = width_of(item.words, item.size, bold=item.bold)
    before = {"start": 0.0, "middle": wide / 2, "end": wide}[item.anchor]
    if item.upright:
        return item.x - item.size * 0.7, item.y - wide, item.x, item.y
    return item.x - before, item.y - item.size * 0.7, item.x - before + wide, item.y


@every_chart
def test_notes_that_say_nothing_make_no_chart(chart: Chart, empty: Notes) -> None:
    """No file, rather than an empty frame."""
    assert chart.draw(Episode(empty), PAGE) is None
    assert chart.png(Episode(empty)) is None


@every_chart
def test_notes_that_say_nothing_are_described_all_the_same(chart: Chart, empty: Notes) -> None:
    """Words and table do not fail where there is no picture."""
    assert chart.describe(Episode(empty))
    assert chart.tabulate(Episode(empty)).rows == ()


@every_chart
@every_width
def test_the_same_notes_make_the_same_svg(chart: Chart, width: int, full: Episode) -> None:
    """Byte for byte."""
    assert chart.draw(full, width) == chart.draw(full, width)


@every_chart
def test_the_same_notes_make_the_same_png(chart: Chart, few: Episode) -> None:
    """Byte for byte, with no word of when or by what it was made."""
    once = chart.png(few)
    assert once == chart.png(few)
    assert once is not None
    assert not re.search(rb"tEXt|tIME|matplotlib", once)


@every_chart
@every_width
def test_a_png_is_as_wide_as_asked_for(chart: Chart, width: int, few: Episode) -> None:
    """Two dots to a pixel."""
    made = chart.png(few, width)
    assert made is not None
    assert matplotlib.image.imread(io.BytesIO(made)).shape[1] == 2 * width


@every_chart
@every_width
def test_svg_holds_nothing_that_runs_or_clashes(chart: Chart, width: int, full: Episode) -> None:
    """No script, no handler, no link, no id that another chart of the page could have, no style of the page's."""
    drawn = chart.draw(full, width)
    assert drawn is not None
    allowed = {"svg", "title", "desc", "rect", "text", "polygon", "polyline"}
    for element in ET.fromstring(drawn).iter():
        assert element.tag.removeprefix("{http://www.w3.org/2000/svg}") in allowed
        assert not {
            name for name in element.attrib if name.startswith("on") or name in ("id", "href", "style", "class")
        }


@every_chart
@every_width
def test_svg_says_what_it_shows(chart: Chart, width: int, full: Episode) -> None:
    """A name and a description for those who cannot see it."""
    root = ET.fromstring(chart.draw(full, width) or "")
    assert root.attrib["role"] == "img"
    assert root.attrib["aria-label"]
    assert root.findtext("{http://www.w3.org/2000/svg}desc") == chart.describe(full)


@every_chart
@every_width
def test_words_stay_on_the_sheet(chart: Chart, width: int, full: Episode) -> None:
    """Nothing is cut off at the edge."""
    sheet = paper(chart, full, width)
    for item in sheet.drawn:
        if isinstance(item, Words):
            left, top, right, bottom = box(item)
            assert left >= -1 and right <= sheet.width + 1, item.words  # noqa: PT018
            assert top >= -1 and bottom <= sheet.height + 8, item.words  # noqa: PT018


@every_chart
@every_width
def test_shapes_stay_on_the_sheet(chart: Chart, width: int, full: Episode) -> None:
    """Nothing is drawn outside, but for the edge of a sign in the margin."""
    sheet = paper(chart, full, width)
    points = [point for item in sheet.drawn if not isinstance(item, Words) for point in item.points]
    assert all(-8 <= x <= sheet.width + 8 and -8 <= y <= sheet.height + 8 for x, y in points)


@every_chart
@every_width
def test_words_do_not_lie_on_words(chart: Chart, width: int, full: Episode) -> None:
    """Every word can be read."""
    boxes = [box(item) for item in paper(chart, full, width).drawn if isinstance(item, Words) and item.words != "?"]
    for place, (left, top, right, bottom) in enumerate(boxes):
        for other in boxes[place + 1 :]:
            assert right <= other[0] or other[2] <= left or bottom <= other[1] or other[3] <= top


@every_chart
def test_letters_can_be_read_on_a_telephone(chart: Chart, full: Episode) -> None:
    """None smaller than 12 pixels."""
    assert min(item.size for item in paper(chart, full, PHONE).drawn if isinstance(item, Words)) >= 12


@every_chart
@every_width
@pytest.mark.parametrize("text", HOSTILE)
def test_hostile_names_do_no_harm(chart: Chart, width: int, text: str, few: Episode) -> None:
    """Title, sample, term and preparation: the file stays one that can be read, and nothing leaves the sheet."""
    notes = few.notes
    seen = tuple(at.model_copy(update={"term": text, "preparation": text}) for at in notes.observations)
    samples = tuple(SheetSample(id=one, product=text + one) for one in notes.samples)
    sheet = notes.sheet.model_copy(update={"title": text, "samples": samples})
    hostile = Episode(notes.model_copy(update={"observations": seen, "sheet": sheet}))
    ET.fromstring(chart.draw(hostile, width) or "")
    drawn = paper(chart, hostile, width)
    assert all(box(item)[2] <= drawn.width + 1 for item in drawn.drawn if isinstance(item, Words))


@pytest.mark.parametrize("text", HOSTILE)
def test_hostile_names_are_drawn_as_png(text: str, few: Episode) -> None:
    """No sign is taken for a formula, and none stops the drawing."""
    sheet = few.notes.sheet.model_copy(update={"title": text})
    assert CHARTS[0].png(Episode(few.notes.model_copy(update={"sheet": sheet})), PHONE)


@pytest.mark.parametrize("chart", [chart for chart in CHARTS if chart.name != "timeline"], ids=lambda chart: chart.name)
def test_the_table_has_all_of_a_long_name(chart: Chart, episode_of: Make) -> None:
    """What a picture has to cut stands whole beside it; only chapters have titles of their own, which are short."""
    name = "x" * 10_000
    made = episode_of(
        *({"concept": term, "term": term, "sample": name} for term in TERMS), samples=(name,),
        sections=(section(0, "tasting", name),),
    )  # fmt: skip
    table = chart.tabulate(made)
    assert any(name in cell for row in (table.columns, *table.rows) for cell in row)


@every_chart
def test_every_row_of_the_table_has_all_columns(chart: Chart, full: Episode) -> None:
    """No row is short."""
    table = chart.tabulate(full)
    assert table.rows
    assert {len(row) for row in table.rows} == {len(table.columns)}


def test_what_sounds_like_a_health_claim_is_not_posted(full: Episode) -> None:
    """The files leave out what the show notes leave out, unless it is kept on purpose."""
    claim = {"id": "h", "quote": "it cures your headache", "term": "cures", "concept": None}
    healthy = full.notes.observations[0].model_copy(update=claim)
    notes = full.notes.model_copy(update={"observations": (*full.notes.observations, healthy)})
    assert "cures" not in (svg_of(CHARTS[0])(Episode(notes)) or "")
    assert "cures" in (svg_of(CHARTS[0])(Episode(notes, keep=frozenset("h"))) or "")


def test_files_are_what_the_charts_draw(few: Episode) -> None:
    """As SVG and as PNG."""
    assert svg_of(CHARTS[0])(few) == CHARTS[0].draw(few, PAGE)
    assert png_of(CHARTS[0], PHONE)(few) == CHARTS[0].png(few, PHONE)


def test_all_charts_in_words(full: Episode) -> None:
    """Each has its heading, its description and its table."""
    words = in_words(full) or ""
    assert words.count("\n## ") == len(CHARTS)
    assert words.count("\n| --- |") == len(CHARTS)


def test_nothing_to_draw_nothing_to_tell(empty: Notes) -> None:
    """No file of words either."""
    assert in_words(Episode(empty)) is None
