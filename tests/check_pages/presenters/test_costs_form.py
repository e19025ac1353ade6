"""What may be typed about costs: everything is optional, stays as it was typed, and bad input gets one sentence."""

import pytest

from tests.check_pages.fragments import words_of
from tests.household.checks_done import answers_of, at
from triage.check_pages.presenters.costs_form import read_form

SEAL = answers_of("door-seal-worn", "door")


def form(check_request, region="gb-eng", **typed):
    return read_form(check_request(at("/check/costs/", {**SEAL, **{f"cost-{k}": v for k, v in typed.items()}}, region)))


def problems(found):
    fields = (*found.fields, *found.label_fields)
    return {field.name: words_of("costs_error", error=field.error) for field in fields if field.error}


def test_nothing_has_to_be_typed(check_request):
    assert problems(form(check_request)) == {}
    assert form(check_request, use=" ", kwh="").numbers == {}


@pytest.mark.parametrize(
    ("name", "typed", "told"),
    [
        ("use", "500", "A week has 168 hours. Write how many of them the oven is on."),
        ("use", "-4", "This cannot be less than 0. Check the number."),
        ("use", "often", "“often” is not a number we can read. Write it in digits, such as 12.5."),
        ("kwh", "-0.3", "This cannot be less than 0. Check the number."),
        ("kwh", "27", "No kilowatt-hour costs more than £3. If you meant hundredths, write 0.27 instead of 27."),
        ("age", "900", "This cannot be more than 80. Check the number."),
        ("new", "1,200", "“1,200” can be read in two ways. Leave out the sign between thousands, such as 1200."),
        ("new", "0", "This cannot be less than 10. Check the number."),
        ("call", "free", "“free” is not a number we can read. Write it in digits, such as 12.5."),
        ("litres", "7", "This cannot be less than 10. Check the number."),
        ("cycle", "800", "This cannot be more than 5. Check the number."),
        ("class", "E", "Pick one of the classes in the list."),
    ],
)
def test_what_cannot_be_used_is_said_and_stays_as_typed(check_request, name, typed, told):
    found = form(check_request, **{name: typed})
    assert problems(found) == {f"cost-{name}": told}
    assert typed in [field.value for field in (*found.fields, *found.label_fields)]
    assert found.numbers == {}


def test_one_bad_number_leaves_the_others_in_use(check_request):
    found = form(check_request, use="500", kwh="0,30", age="8")
    assert list(problems(found)) == ["cost-use"]
    assert (found.number("cost-kwh"), found.number("cost-age"), found.number("cost-use")) == (0.3, 8.0, None)


def test_a_kilowatt_hour_may_cost_more_of_a_smaller_currency(check_request):
    assert problems(form(check_request, "in", kwh="8")) == {}
    assert "₹" not in problems(form(check_request, "in", kwh="80"))["cost-kwh"]


def test_the_unit_is_the_money_of_the_place(check_request):
    assert "in SEK" in form(check_request, "se").fields[1].label
    assert "in your currency" in form(check_request, "iec").fields[1].label
