"""The sealed key: proved where it is unchanged, refused where anything in it is another."""

import json
from pathlib import Path
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from notesmith.errors import SheetError
from notesmith.planning.drawing import Plan, draw
from notesmith.planning.key import Key, commitment, read_key, reveal
from notesmith.planning.wishes import WishedProduct, Wishes
from notesmith.records import SheetSample

PLAN = draw(
    Wishes(
        tasters=("Ana",),
        products=(WishedProduct(name="Hill oolong", price=9.5, currency="EUR"), WishedProduct(name="Lake oolong")),
    ),
    "seven",
)
TEXT = st.text(st.characters(exclude_categories=["Cs"]), max_size=8)
FIELDS = st.sampled_from(["product", "price", "currency", "net_weight", "harvest", "origin", "id", "aliases"])


def test_a_true_key_fills_the_products_in() -> None:
    """Every sample is told what it is, with all the plan knew of it."""
    sheet = reveal(PLAN.sheet, PLAN.key)
    assert {sample.product: sample.price for sample in sheet.samples} == {"Hill oolong": 9.5, "Lake oolong": None}
    assert sheet.servings == PLAN.sheet.servings


@given(place=st.integers(0, 1), field=FIELDS, text=TEXT, number=st.floats(0.01, 1e6))
def test_a_tampered_sample_is_always_detected(place: int, field: str, text: str, number: float) -> None:
    """Whatever is changed of a sample, the key is no longer the one that was sealed."""
    value: Any = {"price": number, "net_weight": number, "aliases": (text,)}.get(field, text)
    samples = list(PLAN.key.samples)
    if getattr(samples[place], field) == value:
        return
    samples[place] = samples[place].model_copy(update={field: value})
    with pytest.raises(SheetError, match="not the one that was sealed"):
        reveal(PLAN.sheet, PLAN.key.model_copy(update={"samples": tuple(samples)}))


@given(salt=TEXT, seed=TEXT)
def test_another_salt_or_seed_is_another_key(salt: str, seed: str) -> None:
    """Not only the products are sealed."""
    changed = PLAN.key.model_copy(update={"salt": salt, "seed": seed})
    assert (commitment(changed) == PLAN.sheet.commitment) == (changed == PLAN.key)


def test_products_changed_about_are_detected() -> None:
    """The commonest fraud: the loser's name for the winner's."""
    one, other = PLAN.key.samples
    samples = (
        one.model_copy(update={"product": other.product}),
        other.model_copy(update={"product": one.product}),
    )
    with pytest.raises(SheetError, match="not the one that was sealed"):
        reveal(PLAN.sheet, PLAN.key.model_copy(update={"samples": samples}))


@given(cut=st.integers(0, 10_000), sign=st.characters(exclude_categories=["Cs"]))
def test_a_sign_changed_in_the_file_changes_nothing_or_is_detected(
    cut: int, sign: str, tmp_path_factory: pytest.TempPathFactory
) -> None:
    """Any one sign of the file: it is no key, or says the same, or is refused."""
    text = PLAN.key.model_dump_json(indent=1)
    place = cut % len(text)
    path = tmp_path_factory.mktemp("key") / "a.key.json"
    path.write_text(text[:place] + sign + text[place + 1 :], "utf-8")
    try:
        key = read_key(path)
        sheet = reveal(PLAN.sheet, key)
    except SheetError:
        return
    assert key == PLAN.key
    assert sheet == reveal(PLAN.sheet, PLAN.key)


def test_spaces_and_the_order_of_fields_are_no_matter(tmp_path: Path) -> None:
    """A key that an editor has laid out anew is still the same key."""
    said = json.loads(PLAN.key.model_dump_json())
    path = tmp_path / "a.key.json"
    path.write_text(json.dumps(dict(reversed(said.items())), indent=8))
    assert reveal(PLAN.sheet, read_key(path))


def test_the_commitment_can_be_computed_without_us() -> None:
    """The same digest from the standard library alone, and what the key does not say is left out."""
    from hashlib import sha256

    key = Key(salt="ab", seed="7", samples=(SheetSample(id="417", product="Thé", price=2.0),))
    text = '{"salt":"ab","samples":[{"id":"417","price":2.0,"product":"Thé"}],"seed":"7"}'
    assert commitment(key) == sha256(text.encode()).hexdigest()


def test_a_sheet_that_was_never_sealed_is_refused() -> None:
    """There is nothing to prove the key by."""
    with pytest.raises(SheetError, match="holds no commitment"):
        reveal(PLAN.sheet.model_copy(update={"commitment": None}), PLAN.key)


def test_a_sheet_with_other_samples_is_refused() -> None:
    """A sample added after the sealing belongs to no key."""
    added = (*PLAN.sheet.samples, SheetSample(id="X"))
    with pytest.raises(SheetError, match="not those of the key"):
        reveal(PLAN.sheet.model_copy(update={"samples": added}), PLAN.key)


def filled(plan: Plan, **fields: Any) -> Any:
    """The sheet, with something written into its first sample."""
    first, *others = plan.sheet.samples
    return plan.sheet.model_copy(update={"samples": (first.model_copy(update=fields), *others)})


def test_what_was_written_into_the_sheet_stays() -> None:
    """An alias added while the captions were looked through is kept."""
    assert reveal(filled(PLAN, aliases=("the chipped cup",)), PLAN.key).samples[0].aliases == ("the chipped cup",)


def test_a_product_guessed_wrongly_in_the_sheet_is_refused() -> None:
    """Which of the two is right is for a person to say."""
    with pytest.raises(SheetError, match="in the sheet and"):
        reveal(filled(PLAN, product="Moor oolong"), PLAN.key)
