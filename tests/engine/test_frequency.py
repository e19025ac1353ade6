"""Frequency words become probabilities by one table."""

import pytest
from hypothesis import given, strategies

from triage.engine.frequency import FREQUENCIES, FrequencyTable, distribution, in_order, mix_with_baseline

NAMES = ("low", "middle", "high")


def test_the_words_fall_from_almost_always_to_never():
    assert list(FREQUENCIES.values()) == sorted(FREQUENCIES.values(), reverse=True)
    assert (min(FREQUENCIES, key=FREQUENCIES.get), max(FREQUENCIES, key=FREQUENCIES.get)) == ("never", "almost-always")


def test_no_word_is_certain():
    assert all(0.0 < value < 1.0 for value in FREQUENCIES.values())


@given(strategies.dictionaries(strategies.sampled_from(NAMES), strategies.sampled_from(list(FREQUENCIES))))
def test_what_is_spread_adds_up_to_one_in_the_order_of_the_names(words):
    spread_out = distribution(in_order(words, NAMES))
    assert sum(spread_out) == pytest.approx(1.0, abs=1e-12)
    said = [FREQUENCIES[words.get(name, "never")] for name in NAMES]
    assert sorted(range(3), key=lambda i: spread_out[i]) == sorted(range(3), key=lambda i: said[i])


def test_a_name_without_a_word_is_never():
    assert in_order({"low": "often"}, NAMES) == ("often", "never", "never")


def test_never_can_be_made_rarer_for_conditions_that_must_not_come_from_nowhere():
    usual, rarer = distribution(("usually", "never", "never")), distribution(("usually", "never", "never"), 0.002)
    assert rarer[1] < usual[1]
    assert rarer == pytest.approx((0.75 / 0.754, 0.002 / 0.754, 0.002 / 0.754))


def test_with_full_trust_an_answer_is_what_was_told_and_with_none_what_anyone_says():
    told, sound = [(0.9, 0.1), (0.2, 0.8)], (0.75, 0.25)
    anyone = (0.75 * 0.9 + 0.25 * 0.2, 0.75 * 0.1 + 0.25 * 0.8)
    assert mix_with_baseline(told, sound, 1.0) == tuple(told)
    assert mix_with_baseline(told, sound, 0.0) == (pytest.approx(anyone), pytest.approx(anyone))
    half = mix_with_baseline(told, sound, 0.5)
    assert half[0] == pytest.approx(((0.9 + anyone[0]) / 2, (0.1 + anyone[1]) / 2))
    assert [sum(row) for row in half] == pytest.approx([1.0, 1.0])


def test_a_table_of_words_is_its_rows_mixed():
    table = FrequencyTable((("usually", "never"), ("never", "often")), 0.85, 0.001)
    rows = [distribution(row, 0.001) for row in table.rows]
    assert table.probabilities((0.8, 0.2)) == mix_with_baseline(rows, (0.8, 0.2), 0.85)
