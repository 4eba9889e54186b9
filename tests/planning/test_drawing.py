"""A plan that is drawn: the sheet shows nothing of the key, and says of itself what is so."""

from collections import Counter
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from notesmith.planning.drawing import draw
from notesmith.planning.orders import fairness_of
from notesmith.planning.wishes import Test, WishedPreparation, WishedProduct, Wishes
from notesmith.sheet import read_sheet, sheet_to_toml

NAMES = st.text(st.characters(exclude_categories=["Cs", "Cc"]), min_size=1, max_size=12).filter(str.strip)


@st.composite
def any_wishes(draw_from: st.DrawFn) -> Wishes:
    """Two to twelve cups for one to thirty tasters, in up to two rounds and two preparations."""
    products = draw_from(st.integers(2, 8))
    twice = draw_from(st.integers(0, 4))
    return Wishes(
        tasters=tuple(f"taster {number}" for number in range(draw_from(st.integers(1, 30)))),
        repeats=draw_from(st.integers(1, 2)),
        products=tuple(
            WishedProduct(name=f"product {number}", duplicates=twice * (number == 0)) for number in range(products)
        ),
        preparations=tuple(WishedPreparation(id=f"way {number}") for number in range(draw_from(st.integers(0, 2)))),
    )


@given(wishes=any_wishes(), seed=st.text(max_size=4))
def test_every_plan_is_balanced_as_it_claims(wishes: Wishes, seed: str) -> None:
    """What the sheet claims is counted in its servings, each product and each of its duplicates for itself."""
    plan = draw(wishes, seed)
    orders = [
        tuple([sample.id for sample in each.samples].index(code) for code in serving.order)
        for each in plan.rounds
        for serving in each.servings
    ]
    assert plan.sheet.balance == fairness_of(orders).balance
    ways = max(1, len(wishes.preparations))
    assert len(plan.sheet.servings) == len(orders) == len(wishes.tasters) * wishes.repeats * ways
    assert len(plan.sheet.samples) == wishes.served * wishes.repeats


@given(wishes=any_wishes())
def test_every_sheet_reads_back(wishes: Wishes, tmp_path_factory: pytest.TempPathFactory) -> None:
    """The sheet is one that taking notes reads."""
    path = tmp_path_factory.mktemp("plan") / "a.sheet.toml"
    sheet = draw(wishes).sheet
    path.write_text(sheet_to_toml(sheet), "utf-8")
    assert read_sheet(path) == sheet


def test_a_seed_draws_the_same_plan_again(wishes: Wishes) -> None:
    """The same seed, the same codes, orders and commitment."""
    assert draw(wishes, "seven") == draw(wishes, "seven")


def test_without_a_seed_every_plan_is_another(wishes: Wishes) -> None:
    """Codes are fresh each time."""
    assert len({draw(wishes).sheet.commitment for _ in range(20)}) == 20


def test_the_sheet_shows_nothing_of_the_key(wishes: Wishes) -> None:
    """Neither names nor prices, nor the seed, nor the order in which the products were listed."""
    plan = draw(wishes, "a secret seed")
    text = sheet_to_toml(plan.sheet)
    assert not [word for word in ("Spring", "Winter", "Roasted", "price", "net_weight", "secret") if word in text]
    assert [sample.id for sample in plan.sheet.samples] == sorted(sample.id for sample in plan.sheet.samples)
    assert plan.sheet.blind


def test_a_repeat_comes_under_new_codes(wishes: Wishes) -> None:
    """What was said of a cup in the first round is not remembered by its code."""
    plan = draw(wishes.model_copy(update={"repeats": 2}), "7")
    first, second = ({sample.id for sample in each.samples} for each in plan.rounds)
    assert not first & second


def test_a_duplicate_is_the_same_product_under_another_code(wishes: Wishes) -> None:
    """Poured twice, and nobody can tell from the sheet."""
    products = [sample.product for sample in draw(wishes, "7").key.samples]
    assert products.count("Spring oolong") == 2


def test_repeats_and_tasters_are_balanced_as_one(wishes: Wishes) -> None:
    """Two tasters alone are too few for four samples; twice two are a whole design."""
    assert draw(wishes).sheet.balance == "partial"
    assert draw(wishes.model_copy(update={"repeats": 2})).sheet.balance == "full"


@given(names=st.lists(NAMES, min_size=2, max_size=5, unique_by=lambda name: name.strip().casefold()))
def test_any_name_goes_into_the_key_as_it_is(names: list[str]) -> None:
    """Whatever signs it holds."""
    plan = draw(Wishes(tasters=("Ana",), products=tuple(WishedProduct(name=name) for name in names)))
    assert sorted(sample.product or "" for sample in plan.key.samples) == sorted(names)


def test_a_plan_is_drawn_from_its_file(tmp_path: Path) -> None:
    """The template is a plan of two products."""
    from notesmith.planning.files import plan_template
    from notesmith.planning.wishes import read_wishes

    path = tmp_path / "a.plan.toml"
    path.write_text(plan_template(), "utf-8")
    assert len(draw(read_wishes(path)).sheet.samples) == 2


@pytest.mark.parametrize(("test", "poured"), [("triangle", [1, 2]), ("tetrad", [2, 2]), ("two-out-of-five", [2, 3])])
def test_chance_decides_which_product_a_test_pours_more_often(test: Test, poured: list[int]) -> None:
    """So that whoever planned a test of difference may taste in it, and shopping tells them nothing."""
    wishes = Wishes(
        tasters=("Ana",),
        test=test,
        products=(WishedProduct(name="a"), WishedProduct(name="b")),
        preparations=(WishedPreparation(id="standard", method="iso-3103-small"),),
    )
    plans = [draw(wishes, str(seed)) for seed in range(60)]
    counts = [Counter(sample.product for sample in plan.key.samples) for plan in plans]
    assert all(sorted(count.values()) == poured for count in counts)
    if poured[0] < poured[1]:
        assert 15 < sum(count["a"] > count["b"] for count in counts) < 45
    assert len({plan.needs for plan in plans}) == 1
    assert len({need.amount for need in plans[0].needs if need.unit == "g"}) == 1


@pytest.mark.benchmark
def test_twelve_samples_for_thirty_tasters_take_less_than_a_second() -> None:
    """Drawn, and both pages of cards written."""
    import time

    from notesmith.planning.cards import pouring_page, tasting_page

    wishes = Wishes(
        tasters=tuple(f"taster {number}" for number in range(30)),
        products=tuple(WishedProduct(name=f"product {number}") for number in range(12)),
        preparations=(WishedPreparation(id="cups", method="coffee-cupping"),),
    )
    begun = time.perf_counter()
    plan = draw(wishes)
    assert pouring_page(plan, "A4")
    assert tasting_page(plan, "A4")
    assert time.perf_counter() - begun < 1
