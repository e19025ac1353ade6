"""The thermometer test: rows, units, and what the temperatures say."""

from triage.check_pages.presenters.readings.thermometer import (
    read_thermometer,
    thermometer_groups,
    thermometer_told,
    write_thermometer,
)
from triage.check_pages.presenters.readings.typed import Typed

ROWS = {"time-1": "30", "shown-1": "176", "time-3": "40", "shown-3": "186"}


def typed(visit, raw, region="gb-eng"):
    found = Typed({f"read-{name}": text for name, text in raw.items()})
    seen = visit(f"/?region={region}")
    read_thermometer(seen, found)
    return seen, found


def test_rows_grow_as_they_are_filled_and_an_empty_one_between_is_passed_over(visit):
    seen, found = typed(visit, {"set": "180", **ROWS})
    assert write_thermometer(seen, found) == "c180~r30-176_40-186"
    assert len(thermometer_groups(seen, found)[1].fields) == 2 * 6
    seen, found = typed(visit, {"time-9": "30", "shown-9": "176"})
    assert len(thermometer_groups(seen, found)[1].fields) == 2 * 11


def test_half_a_row_says_what_is_missing_beside_it(visit):
    _, found = typed(visit, {"time-1": "30", "shown-2": "180"})
    assert found.problems == {
        "shown-1": "This is still missing: Temperature of reading.",
        "time-2": "This is still missing: Minutes of reading.",
    }


def test_a_forged_row_beyond_the_last_is_not_read(visit):
    seen, found = typed(visit, {"set": "180", "time-99": "30", "shown-99": "176"})
    assert write_thermometer(seen, found) == "c180"


def test_too_few_readings_say_how_many_more(visit):
    lines = thermometer_told(visit("/?region=gb-eng"), "c180~r30-176_40-186").lines
    assert any(line.endswith("after the first half hour would make this surer.") for line in lines)


def test_cold_and_hot_are_told_apart_in_the_unit_of_the_place(visit):
    cold, hot = "c180~r30-150_40-150", "c180~r30-210_40-210"
    assert thermometer_told(visit("/?region=gb-eng"), cold).lines[0].startswith("The mean is 30 °C below")
    assert thermometer_told(visit("/?region=us"), hot).lines[0].startswith("The mean is 54 °F above")


def test_the_picture_counts_whole_cycles_in_words(visit):
    text = "c180~r30-168_35-180_40-190_45-178_50-166_55-179_60-191_65-176_70-167"
    assert "1 whole rise and fall shows." in thermometer_told(visit("/"), text).drawing.words
    assert "No whole rise and fall shows yet." in thermometer_told(visit("/"), "c180~r30-176").drawing.words


def test_nobody_says_when_it_was_hot_who_was_not_there(visit):
    early = "c180~r5-90_10-150_15-185_20-178"
    assert any("first came to the set heat" in line for line in thermometer_told(visit("/"), early).lines)
    late = "c180~r30-170_40-190"
    assert not any("first came to the set heat" in line for line in thermometer_told(visit("/"), late).lines)
