"""A range keeps its two ends together, whatever the unit."""

from triage.engine.repairs import Range


def test_both_ends_of_a_range_are_turned_into_another_unit():
    assert Range(2.0, 5.0).scaled(10) == (20.0, 50.0)
