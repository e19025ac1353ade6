"""An energy label by itself: what it says, what it does not, and danger before either."""

import pytest

from tests.check_pages.fragments import lines_of, words_of
from tests.household.checks_done import at
from triage.check_pages.presenters.energy_label import LabelPage, label_page
from triage.check_pages.presenters.question import DangerPage

ALONE = {"danger": "none"}


def page(check_request, answers=ALONE, **typed):
    return label_page(check_request(at("/check/costs/", {**answers, **{f"cost-{k}": v for k, v in typed.items()}})))


def lines(check_request, **typed):
    return lines_of("energy_label", label=page(check_request, **typed).label)


def test_the_danger_signs_come_first_and_lead_here(check_request):
    signs = page(check_request, {})
    assert isinstance(signs, DangerPage)
    assert signs.none.href == "/check/costs/?region=gb-eng&danger=none"
    assert isinstance(page(check_request), LabelPage)


# Energy class, volume and energy for one cycle as public product sheets print them, with the index they print; seen.
@pytest.mark.parametrize(
    ("litres", "cycle", "index", "name"),
    [
        ("73", "0.81", "94.2", "A"),
        ("70", "0,68", "81.0", "A+"),
        ("73", "0,82", "95.3", "A"),
    ],
)
def test_two_numbers_of_a_public_product_sheet_give_its_index(check_request, litres, cycle, index, name):
    (line,) = lines(check_request, litres=litres, cycle=cycle)
    assert line == f"These numbers give an energy index of {index}, which is class {name} (EU rules)."


def test_a_label_that_contradicts_itself_is_found_out(check_request):
    """A public product sheet prints A+ beside 73 litres and 0.82 kWh, index 95.3; seen."""
    told = lines(check_request, litres="73", cycle="0,82", **{"class": "A+"})
    assert told[1] == "The label says class A+, so one of its numbers is not right."
    assert len(lines(check_request, litres="73", cycle="0,82", **{"class": "A"})) == 1


def test_one_number_alone_says_nothing_and_stays(check_request):
    found = page(check_request, litres="73", cycle="0")
    assert found.label is None
    litres, cycle, _ = found.form.label_fields
    assert (litres.value, litres.error) == ("73", None)
    assert cycle.value == "0"
    assert words_of("costs_error", error=cycle.error) == "This cannot be less than 0.1. Check the number."


def test_nothing_but_the_label_is_asked_and_the_rest_goes_along_unseen(check_request):
    found = page(check_request, use="4", kwh="x")
    assert found.hidden == [("region", "gb-eng"), ("danger", "none"), ("cost-use", "4"), ("cost-kwh", "x")]
    assert found.check_href == "/?region=gb-eng&danger=none"
