"""The form's page: everything typed comes back, and each problem leads to its field."""

import pytest

from tests.firm_builders import make_firm
from tests.household.hand_overs import form_address
from triage.check_pages.hand_over_form import Sent
from triage.check_pages.request import read_check_request
from triage.household.presenters.hand_over import hand_over_page
from triage.jobsheet.errors import FieldProblem

pytestmark = pytest.mark.django_db


def page(rf, typed=(), problems=()):
    firm = make_firm()
    return hand_over_page(read_check_request(rf.get(form_address(firm))), firm, Sent(dict(typed)), "state", problems)


def test_what_was_typed_comes_back(rf):
    found = page(rf, {"name": "Alex", "model": "OW-60", "day-2": "2031-05-26", "part-2": "evening", "agreed": "yes"})
    assert found.who[0].value == "Alex"
    assert found.plate_open
    assert found.agreed
    assert found.days[1].value == "2031-05-26"
    assert [part.value for part in found.days[1].parts if part.chosen] == ["evening"]
    assert [part.value for part in found.days[0].parts if part.chosen] == ["any"]


@pytest.mark.parametrize(
    ("field", "href"),
    [
        ("name", "#name"),
        ("consent", "#agreed"),
        ("windows", "#day-1"),
        ("photo", "#photo"),
        ("serial", "#serial"),
        ("answers", ""),
        ("state", ""),
    ],
)
def test_a_problem_leads_to_its_field(rf, field, href):
    (wrong,) = page(rf, problems=[FieldProblem(field, "Say it again.")]).wrong
    assert (wrong.sentence, wrong.href) == ("Say it again.", href)


def test_a_problem_of_the_plate_unfolds_it(rf):
    assert not page(rf).plate_open
    assert page(rf, problems=[FieldProblem("photo", "No photo.")]).plate_open
    assert page(rf, problems=[FieldProblem("serial", "Too long.")]).plate_open


def test_of_two_problems_with_one_field_the_first_stands_beside_it(rf):
    found = page(rf, problems=[FieldProblem("name", "First."), FieldProblem("name", "Second.")])
    assert found.who[0].problem == "First."
    assert len(found.wrong) == 2
