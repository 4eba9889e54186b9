"""Times read and written."""

import pytest

from notesmith.clock import format_clock, format_clock_exact, parse_clock, seconds_to_ms


@pytest.mark.parametrize(
    ("text", "ms"),
    [("0:07", 7000), ("75:10", 4_510_000), ("1:02:03", 3_723_000), ("00:01.5", 1500), ("00:00:01,0409", 1040)],
)
def test_parse(text: str, ms: int) -> None:
    """Hours and fractions may be missing; minutes may pass 59 without hours."""
    assert parse_clock(text) == ms


@pytest.mark.parametrize("text", ["", "7", "1:7", "0:60", "1:60:00", "-0:01", "1:2:3:4", "0:01.", "٠:٠١x"])
def test_parse_refuses(text: str) -> None:
    """What is no clock time is a ValueError."""
    with pytest.raises(ValueError, match=r"clock time|over 59"):
        parse_clock(text)


@pytest.mark.parametrize("seconds", [-0.1, float("nan"), float("inf"), "soon"])
def test_seconds_refuse(seconds: float | str) -> None:
    """Times are finite and count from zero."""
    with pytest.raises(ValueError):  # noqa: PT011 - float's own message for words
        seconds_to_ms(seconds)


@pytest.mark.parametrize("ms", [0, 999, 59_999, 3_600_000, 86_399_999])
def test_exact_form_reads_back(ms: int) -> None:
    """The exact form keeps every millisecond."""
    assert parse_clock(format_clock_exact(ms)) == ms


def test_short_form_rounds_down() -> None:
    """The short form never names a second that has not come."""
    assert (format_clock(59_999), format_clock(3_599_999), format_clock(3_600_000)) == ("0:59", "59:59", "1:00:00")
