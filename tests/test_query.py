"""Every query string can be read."""

import pytest
from hypothesis import given, strategies

from triage.query import MAX_PAIRS, MAX_VALUE_LENGTH, check_query, format_query, parse_pairs, parse_query


def test_the_answers_stand_in_the_order_of_the_address_and_the_place_apart():
    asked = parse_query("complaint=no-heat&region=ie&danger=none")
    assert asked.pairs == (("complaint", "no-heat"), ("danger", "none"))
    assert asked.region == "ie"
    assert not asked.truncated


@pytest.mark.parametrize(
    ("query", "pairs"),
    [
        ("", ()),
        ("&&&", ()),
        ("a", (("a", ""),)),
        ("a=b=c", (("a", "b=c"),)),
        ("a+b=c%20d", (("a b", "c d"),)),
        ("%e2%82%ac=%C3%A9", (("€", "é"),)),
        ("%ff=%c3", (("\ufffd", "\ufffd"),)),
        ("%zz=%", (("%zz", "%"),)),
        ("a=%00", (("a", "\0"),)),
        ("a=\xc3\xa9", (("a", "é"),)),
        ("a=€", (("a", "?"),)),
    ],
)
def test_any_encoding_is_read_without_a_fuss(query, pairs):
    assert parse_query(query).pairs == pairs


def test_more_than_is_ever_read_is_cut_and_said():
    asked = parse_query("&".join(f"a{n}=b" for n in range(10_000)))
    assert len(asked.pairs) == MAX_PAIRS
    assert asked.truncated


def test_a_very_long_value_is_shortened():
    ((name, value),) = parse_query(f"a={'x' * 100_000}").pairs
    assert (name, value) == ("a", "x" * MAX_VALUE_LENGTH)


def test_the_last_of_several_places_counts():
    assert parse_query("region=ie&region=us").region == "us"


@given(strategies.lists(strategies.tuples(strategies.text(max_size=20), strategies.text(max_size=20)), max_size=8))
def test_what_is_written_is_read_back_the_same(pairs):
    pairs = [(name, value) for name, value in pairs if not name.startswith(("region", "firm", "cost-", "read-"))]
    pairs = [pair for pair in pairs if "".join(pair).isprintable()]
    assert parse_query(check_query("ie", pairs)).pairs == tuple(pairs)
    assert parse_query(check_query("ie", pairs)).region == "ie"


def test_what_somebody_pasted_is_read_whole_or_refused():
    assert parse_pairs("region=ie&a=%C3%A9&b=") == (("region", "ie"), ("a", "é"), ("b", ""))
    with pytest.raises(ValueError, match="bad query field"):
        parse_pairs("nonsense")
    with pytest.raises(UnicodeDecodeError):
        parse_pairs("a=%ff")


def test_a_character_may_be_left_as_it_is():
    assert format_query([("a", "b,c/d")]) == "a=b%2Cc/d"
    assert format_query([("a", "b,c/d")], safe=",") == "a=b,c%2Fd"
