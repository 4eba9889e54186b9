"""Three-digit codes: none trivial, none near another."""

from itertools import combinations
from random import Random

import pytest
from hypothesis import given
from hypothesis import strategies as st

from notesmith.errors import SheetError
from notesmith.planning.codes import MOST_CODES, draw_codes, is_trivial, spoken


def test_no_codes_are_drawn_where_none_are_needed() -> None:
    """Nothing comes of nothing."""
    assert draw_codes(0, Random(1)) == []


@given(count=st.integers(1, MOST_CODES), seed=st.integers())
def test_codes_never_collide(count: int, seed: int) -> None:
    """Three digits, none trivial, and any two differ in at least two of them."""
    codes = draw_codes(count, Random(seed))
    assert len(codes) == count
    assert all(len(code) == 3 and code.isdecimal() and code[0] != "0" and not is_trivial(code) for code in codes)
    assert all(sum(a != b for a, b in zip(one, other, strict=True)) >= 2 for one, other in combinations(codes, 2))


@given(seed=st.integers())
def test_no_two_codes_are_said_alike(seed: int) -> None:
    """Every way of saying a code is its own."""
    said = [way for code in draw_codes(MOST_CODES, Random(seed)) for way in spoken(code)]
    assert len(said) == len(set(said))


def test_of_900_codes_876_are_neither_thrice_one_digit_nor_a_run() -> None:
    """Nine triples, seven rising runs and eight falling ones are left out (computed); nine hundreds and 911 besides."""
    codes = [str(code) for code in range(100, 1000)]
    plain = [code for code in codes if not code.endswith("00") and code != "911"]
    assert sum(not is_trivial(code) for code in plain) == 876 - 9 - 1


def test_codes_of_an_earlier_tasting_are_not_used_again() -> None:
    """Whoever remembers 417 must not meet it again."""
    earlier = draw_codes(20, Random(1))
    assert not set(earlier) & set(draw_codes(20, Random(1), earlier))


def test_more_codes_than_there_are_is_refused() -> None:
    """In one line that says what to do."""
    with pytest.raises(SheetError, match="61 cups need codes, and only 60 differ enough; plan fewer"):
        draw_codes(61, Random(1))


def test_codes_are_spread_over_all_digits() -> None:
    """Of many draws every hundred has its share."""
    drawn = [draw_codes(1, Random(seed))[0] for seed in range(900)]
    hundreds = [sum(code[0] == str(digit) for code in drawn) for digit in range(1, 10)]
    assert min(hundreds) > 60
