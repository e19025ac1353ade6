"""The thermometer test: rows, units, and what the temperatures say."""

from tests.check_pages.fragments import caption_of, lines_about
from triage.check_pages.presenters.readings.degrees import degrees_of
from triage.check_pages.presenters.readings.fields import THERMOMETER
from triage.check_pages.presenters.readings.form_input import FormInput, bound_groups
from triage.check_pages.presenters.readings.thermometer import parse_rows, thermometer_drawing, write_thermometer
from triage.engine.readings.thermometer import THERMOMETER_FIELDS

ROWS = {"time-1": "30", "shown-1": "176", "time-3": "40", "shown-3": "186"}
PARAMS = {"unit": "°C", "tolerance": "10 °C"}


def typed(check_request, raw, region="gb-eng"):
    seen = check_request(f"/?region={region}")
    found = FormInput({f"read-{name}": text for name, text in raw.items()}, degrees_of(seen))
    found.parse(THERMOMETER, THERMOMETER_FIELDS)
    parse_rows(found)
    return seen, found


def lines(check_request, text, region="gb-eng"):
    return lines_about(thermometer_drawing(check_request(f"/?region={region}"), text))


def test_rows_grow_as_they_are_filled_and_an_empty_one_between_is_passed_over(check_request):
    seen, found = typed(check_request, {"set": "180", **ROWS})
    assert write_thermometer(seen, found) == "c180~r30-176_40-186"
    assert len(bound_groups(found, THERMOMETER.groups, PARAMS)[1].fields) == 2 * 6
    seen, found = typed(check_request, {"time-9": "30", "shown-9": "176"})
    assert len(bound_groups(found, THERMOMETER.groups, PARAMS)[1].fields) == 2 * 11


def test_half_a_row_says_what_is_missing_beside_it(check_request):
    _, found = typed(check_request, {"time-1": "30", "shown-2": "180"})
    assert {name: (wrong.reason, wrong.label) for name, wrong in found.errors.items()} == {
        "shown-1": ("missing", "Temperature of reading"),
        "time-2": ("missing", "Minutes of reading"),
    }


def test_a_forged_row_that_no_form_has_is_not_read(check_request):
    seen, found = typed(check_request, {"set": "180", "time-62": "30", "shown-62": "176"})
    assert write_thermometer(seen, found) == "c180"


def test_too_few_readings_say_how_many_more(check_request):
    told = lines(check_request, "c180~r30-176_40-186")
    assert any(line.endswith("after the first half hour would make this surer.") for line in told)


def test_cold_and_hot_are_told_apart_in_the_unit_of_the_place(check_request):
    cold, hot = "c180~r30-150_40-150", "c180~r30-210_40-210"
    assert lines(check_request, cold)[0].startswith("The mean is 30 °C below")
    assert lines(check_request, hot, "us")[0].startswith("The mean is 54 °F above")


def test_the_picture_counts_whole_cycles_in_words(check_request):
    text = "c180~r30-168_35-180_40-190_45-178_50-166_55-179_60-191_65-176_70-167"
    assert "1 whole rise and fall shows." in caption_of(thermometer_drawing(check_request("/"), text))
    assert "No whole rise and fall shows yet." in caption_of(thermometer_drawing(check_request("/"), "c180~r30-176"))


# 500 W, and 1000 W, into an oven of 5 kJ/K that loses 4.4 W/K in a room of 20 degrees, read to 2 degrees: by that
# equation (see `preheat.py`) they end at 134 and 247 degrees and have lost half their warmth after 13 minutes.
SHORT = "c180~r5-46_10-68_15-82_20-94_25-104_30-110_35-116_40-120_45-122_50-124_55-128_60-128"
PAST = "c180~r5-72_10-114_15-144_20-168_25-186_30-178_35-188"
UP_AND_DOWN = "It goes up and down by about"


def test_a_warm_up_that_never_fell_is_told_where_it_was_heading_and_no_swing(check_request):
    found = lines(check_request, SHORT)
    told = next(line for line in found if line.startswith("As it warmed up"))
    assert told == (
        "As it warmed up it was heading for 132 °C, give or take 12 °C. That is short of the set heat and speaks for a"
        " weak heater or a leaking door. It would lose half its warmth in about 13 minutes. Far fewer than 13 speak for"
        " a leaking door."
    )
    assert not any(line.startswith(UP_AND_DOWN) for line in found)


def test_a_warm_up_past_the_set_heat_speaks_for_the_thermostat(check_request):
    found = lines(check_request, PAST + "~a2", "us")
    told = next(line for line in found if line.startswith("As it warmed up"))
    assert "°F, give or take" in told
    assert "That is past the set heat, so a mean that is off speaks for the thermostat." in told
    assert any(line.startswith(UP_AND_DOWN) for line in found)


def test_nothing_is_told_of_a_heading_that_nobody_saw(check_request):
    for text in ("c180~r30-176", "c180~r30-168_35-180_40-190_45-178_50-166_55-179"):
        assert not any(line.startswith("As it warmed up") for line in lines(check_request, text))


def test_nobody_says_when_it_was_hot_who_was_not_there(check_request):
    early = "c180~r5-90_10-150_15-185_20-178"
    assert any("first came to the set heat" in line for line in lines(check_request, early))
    late = "c180~r30-170_40-190"
    assert not any("first came to the set heat" in line for line in lines(check_request, late))
