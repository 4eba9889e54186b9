"""The cards to print: what stands on them, and that they fit their paper."""

import re
import subprocess
from html.parser import HTMLParser
from pathlib import Path

import pytest

from notesmith.planning.cards import Paper, pouring_page, tasting_page
from notesmith.planning.drawing import draw
from notesmith.planning.wishes import WishedPreparation, WishedProduct, Wishes

PAPERS: tuple[Paper, ...] = ("A4", "letter")
SIZES = {"A4": (595, 842), "letter": (612, 792)}
"""Points of a page, as ISO 216 and ANSI have them."""


class Words(HTMLParser):
    """The words of a page, without its style."""

    def __init__(self, page: str) -> None:
        super().__init__()
        self.words, self.skip = list[str](), False
        self.feed(page)

    def handle_starttag(self, tag: str, attrs: object) -> None:
        """Leave out what a style begins."""
        self.skip = tag == "style"

    def handle_data(self, data: str) -> None:
        """Keep the words."""
        if not self.skip:
            self.words += data.split()


def words_of(page: str) -> str:
    """The words of a page on one line."""
    return " ".join(Words(page).words)


def test_the_tasters_cards_show_nothing_of_the_key(wishes: Wishes) -> None:
    """Codes in the order of serving, and no product."""
    plan = draw(wishes, "7")
    page = words_of(tasting_page(plan, "A4"))
    assert not [product.name for product in wishes.products if product.name in page]
    for serving in plan.sheet.servings:
        assert re.search(r"\b.*".join(serving.order), page[page.index(serving.taster) :])


def test_every_taster_has_a_card_for_every_round(wishes: Wishes) -> None:
    """Two tasters, two rounds."""
    plan = draw(wishes.model_copy(update={"repeats": 2}), "7")
    page = words_of(tasting_page(plan, "A4"))
    assert page.count("round 1 of 2") == page.count("round 2 of 2") == 2


def test_rests_are_printed_between_samples_and_not_after_the_last(wishes: Wishes) -> None:
    """After every second of four samples: once."""
    plan = draw(wishes.model_copy(update={"repeats": 1, "rest_after": 2, "tasters": ("Ana",)}), "7")
    assert words_of(tasting_page(plan, "A4")).count("rest 5 min") == 1


def test_the_pourer_is_told_everything(wishes: Wishes) -> None:
    """Amounts, what is needed, the key, the orders, and what to show beforehand."""
    plan = draw(wishes, "7")
    page = words_of(pouring_page(plan, "A4"))
    for words in (
        "No taster may see it",
        "2.8 g ± 0.05",
        "140 ml",
        "100 °C",
        "6 min",
        "pot of 150 ml",
        "ISO 3103:2019",
    ):
        assert words in page
    assert "7 g Spring oolong 1 pack of 10 g" in page
    assert "balanced in part only" in page
    for sample in plan.key.samples:
        assert f"{sample.id} {sample.product}" in page
    assert (plan.sheet.commitment or "")[:4] in page


def test_a_whole_design_is_said_to_be_one(wishes: Wishes) -> None:
    """Two tasters in two rounds fill a design of four."""
    page = words_of(pouring_page(draw(wishes.model_copy(update={"repeats": 2})), "A4"))
    assert "equally often at each place" in page


def test_a_card_of_a_test_says_what_to_do(wishes: Wishes) -> None:
    """And does not say which product came twice."""
    pair = tuple(product.model_copy(update={"duplicates": 0}) for product in wishes.products[:2])
    page = tasting_page(draw(wishes.model_copy(update={"test": "triangle", "products": pair})), "A4")
    assert "Two of the three are the same" in words_of(page)


def test_hostile_names_stay_words(wishes: Wishes) -> None:
    """A name is never read as a tag, nor does it turn the line about."""
    bad = WishedProduct(name='<script>alert("x")</script>\u202e oolong')
    plan = draw(wishes.model_copy(update={"products": (bad, *wishes.products), "tasters": ("<b>Ana</b>",)}))
    for page in (pouring_page(plan, "A4"), tasting_page(plan, "A4")):
        assert "<script" not in page
        assert "<b>" not in page
        assert "\u202e" not in page


def test_a_page_needs_nothing_else(wishes: Wishes) -> None:
    """No address, no script: it prints the same without a network."""
    for page in (pouring_page(draw(wishes), "A4"), tasting_page(draw(wishes), "A4")):
        assert not re.search(r"https?:|src=|<link|<script|@import|url\(", page)


@pytest.mark.slow
@pytest.mark.client("chromium", "pdfinfo", "pdftotext")
@pytest.mark.parametrize("paper", PAPERS)
@pytest.mark.parametrize(("products", "tasters"), [(2, 1), (4, 3), (12, 30)])
def test_cards_print_one_to_a_page(paper: Paper, products: int, tasters: int, tmp_path: Path) -> None:
    """Each card is one page of the paper asked for, from the first code to the last."""
    plan = draw(
        Wishes(
            title="A tasting with a title that is too long to stand on a single line of any card",
            tasters=tuple(f"taster {number}" for number in range(tasters)),
            products=tuple(WishedProduct(name=f"product {number}") for number in range(products)),
            preparations=(WishedPreparation(id="cups", method="coffee-cupping"),),
        ),
        "7",
    )
    pages = printed(tasting_page(plan, paper), tmp_path)
    assert len(pages) == tasters
    for page, serving in zip(pages, plan.sheet.servings, strict=True):
        assert serving.taster in page
        assert [word for word in page.split() if word in serving.order] == list(serving.order)
    assert size(tmp_path / "cards.pdf") == SIZES[paper]


def printed(page: str, folder: Path) -> list[str]:
    """The words of each page as the browser prints it."""
    source, target = folder / "cards.html", folder / "cards.pdf"
    source.write_text(page, "utf-8")
    command = ["chromium", "--headless", "--no-sandbox", "--disable-gpu", "--no-pdf-header-footer"]
    subprocess.run(
        [*command, f"--print-to-pdf={target}", source.as_uri()], check=True, capture_output=True, timeout=120
    )
    text = subprocess.run(["pdftotext", "-layout", target, "-"], check=True, capture_output=True, text=True).stdout
    return text.removesuffix("\f").split("\f")


def size(pdf: Path) -> tuple[int, int]:
    """Width and height of the pages in points."""
    told = subprocess.run(["pdfinfo", pdf], check=True, capture_output=True, text=True).stdout
    width, height = re.search(r"Page size: +([\d.]+) x ([\d.]+)", told).groups()  # type: ignore[union-attr]
    return round(float(width)), round(float(height))
