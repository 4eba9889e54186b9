"""The search for rubbish, put off."""

import gc

import pytest

from notesmith.collection import collection_put_off


def test_it_is_off_within_and_on_again_after() -> None:
    """Within the work no search runs; after it, it does."""
    with collection_put_off():
        assert not gc.isenabled()
    assert gc.isenabled()


def test_it_is_on_again_after_an_error() -> None:
    """Work that fails leaves the search on."""
    with pytest.raises(ZeroDivisionError), collection_put_off():
        1 / 0  # noqa: B018
    assert gc.isenabled()


def test_who_has_it_off_keeps_it_off() -> None:
    """Where the caller has turned the search off, it stays off."""
    gc.disable()
    try:
        with collection_put_off():
            pass
        assert not gc.isenabled()
    finally:
        gc.enable()
