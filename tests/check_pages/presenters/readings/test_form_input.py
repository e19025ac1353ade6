"""Each field by itself: kept in the table's unit, told apart from an empty one, and shown as it was typed."""

import pytest

from tests.check_pages.fragments import words_of
from triage.check_pages.presenters.readings.degrees import CELSIUS, FAHRENHEIT
from triage.check_pages.presenters.readings.fields import FieldGroup, FormTexts, InputField
from triage.check_pages.presenters.readings.form_input import FormInput, bound_groups
from triage.engine.readings.encoding import Field

TABLE = {"minutes": Field("m", 1, 240), "flashes": Field("f", 0, 100, whole=True), "heat": Field("h", 0, 100)}
MINUTES = InputField("minutes", "Minutes", "a hint of %(volts)s V", "min")
FLASHES, COLD = InputField("flashes", "Flashes"), InputField("cold", "Cold", tick=True)
HEAT = InputField("heat", "Heat", conversion="temperature")
GROUPS = (
    FieldGroup((MINUTES,), summary="By time", alternative=True),
    FieldGroup((FLASHES,), summary="By light", alternative=True),
    FieldGroup((HEAT, COLD), summary="More"),
)


def found_in(degrees=CELSIUS, **typed):
    found = FormInput({f"read-{name.replace('_', '-')}": text for name, text in typed.items()}, degrees)
    found.parse(FormTexts("", "", GROUPS), TABLE)
    return found


def test_an_empty_field_is_not_there():
    assert found_in(minutes="  ").figures == {}


def test_the_digits_after_the_point_are_kept_as_they_were_typed():
    assert found_in(minutes="12,50").figures == {"minutes": "12.50"}


def test_another_unit_is_turned_into_the_tables_and_its_limits_are_told_in_the_one_typed():
    assert found_in(FAHRENHEIT, heat="212").figures == {"heat": "100.0"}
    wrong = found_in(FAHRENHEIT, heat="213").errors["heat"]
    assert words_of("reading_error", error=wrong) == "This cannot be more than 212. Check the number and its unit."


def test_a_part_of_a_flash_is_refused():
    assert found_in(flashes="2.0").figures == {"flashes": "2.0"}
    assert found_in(flashes="2.5").errors["flashes"].reason == "not-whole"


def test_the_field_comes_back_with_what_was_typed_and_what_is_wrong():
    field = found_in(minutes=" 0 ").bound(MINUTES, {"volts": 230})
    assert (field.name, field.value, field.unit, field.hint) == ("read-minutes", " 0 ", "min", "a hint of 230 V")
    assert (field.error.reason, field.error.low, field.error.label) == ("too-small", "1", "Minutes")


def test_a_box_is_ticked_by_one_and_by_nothing_else():
    assert found_in(cold="1").figures == {"cold": "1"}
    assert found_in(cold="yes").figures == {}
    assert found_in(cold="1").bound(COLD, {}).value == "1"
    assert found_in(cold="yes").bound(COLD, {}).value == ""


def test_a_form_that_was_sent_says_so():
    assert found_in(form="1").is_sent
    assert not found_in(minutes="1").is_sent


@pytest.mark.parametrize(
    ("typed", "opened"),
    [
        ({}, [True, False, False]),
        ({"flashes": "x"}, [False, True, False]),
        ({"minutes": "1", "flashes": "2"}, [True, True, False]),
        ({"cold": "1"}, [True, False, True]),
    ],
)
def test_a_group_is_folded_until_something_stands_in_it_and_the_first_way_only_where_another_is_used(typed, opened):
    assert [group.open for group in bound_groups(found_in(**typed), GROUPS, {"volts": 230})] == opened
