"""Numbers as people type them: read where there is one meaning, refused where there are none or two."""

from decimal import Decimal

import pytest
from hypothesis import given
from hypothesis import strategies as st

from triage.check_pages.typed_number import ParseFailure, read_number

LOW, HIGH = Decimal(0), Decimal(100_000)


@pytest.mark.parametrize(
    ("typed", "meant"),
    [
        ("0.27", "0.27"),
        ("0,27", "0.27"),
        ("0,275", "0.275"),
        ("450", "450"),
        ("£450", "450"),
        ("1 200", "1200"),
        ("1\u00a0200,50 €", "1200.50"),
        ("1'200", "1200"),
        ("007", "7"),
        ("-0", "0"),
    ],
)
def test_a_number_is_read_as_it_is_written_in_many_places(typed, meant):
    assert read_number(typed, LOW, HIGH) == Decimal(meant)


@pytest.mark.parametrize(
    "typed", ["twelve", "1e5", "nan", "inf", "1,2,3", "--1", "+", ".", "٣", "1/2", "27p", "9" * 200]
)
def test_what_is_no_number_is_not_guessed_at(typed):
    assert read_number(typed, LOW, HIGH) == ParseFailure("not-a-number")


@pytest.mark.parametrize("typed", ["1,200", "1.200", "12,500", "-1,200"])
def test_a_sign_before_three_digits_has_two_meanings(typed):
    assert read_number(typed, LOW, HIGH) == ParseFailure("two-ways")


@pytest.mark.parametrize(("typed", "reason"), [("-1", "too-small"), ("100001", "too-large")])
def test_a_number_beyond_its_limits_is_said_to_be_so(typed, reason):
    assert read_number(typed, LOW, HIGH) == ParseFailure(reason)


@given(st.text(min_size=1, max_size=30))
def test_nothing_that_can_be_typed_breaks_it(typed):
    found = read_number(typed, LOW, HIGH)
    assert isinstance(found, ParseFailure) or LOW <= found <= HIGH
