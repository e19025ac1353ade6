"""What was found: the likeliest first, the rest by a search, and a clear sentence for what cannot be read."""

import pytest
from django.http import QueryDict

from tests.firm_builders import make_job_sheet
from triage.desk.presenters.outcome_form import NOT_LISTED, initial_data, outcome_form, parse_outcome_form
from triage.jobsheet.errors import Refused
from triage.knowledge.library import library
from triage.models import Outcome

pytestmark = pytest.mark.django_db

GOOD = "found=fan-element-open&result=first-visit&minutes=30"


@pytest.fixture
def sheet():
    return make_job_sheet()


def test_the_causes_come_first_as_ranked_and_the_kit_before_other_parts(sheet):
    form = outcome_form(sheet, QueryDict())
    ranked = [cause["fault"] for cause in sheet.summary["causes"]]
    assert [choice.value for choice in form.found][: len(ranked)] == ranked
    assert form.found[-1].value == NOT_LISTED
    assert [choice.value for choice in form.fitted] == [part["name"] for part in sheet.summary["kit"]["parts"]]
    assert not any(choice.chosen for choice in (*form.found, *form.fitted, *form.result, *form.minutes))


def test_a_first_visit_is_a_fixed_oven(sheet):
    told = parse_outcome_form(sheet, QueryDict(f"{GOOD}&fitted=ring+element&other_parts=clip;+wire%0Ascrew"))
    assert (told.found, told.fixed_first_visit, told.result) == (("fan-element-open",), True, "fixed")
    assert (told.fitted, told.minutes) == (("ring element", "clip", "wire", "screw"), 30)


def test_a_reason_counts_only_for_an_oven_that_was_given_up(sheet):
    assert parse_outcome_form(sheet, QueryDict(f"{GOOD}&barrier=no-parts")).barrier == ""
    given_up = QueryDict("found=fan-element-open&result=end-of-life&minutes=5&barrier=no-parts")
    assert parse_outcome_form(sheet, given_up).barrier == "no-parts"


@pytest.mark.parametrize("typed", ["burnt-out fan oven", "RING (circular) element open", "  ring   (circular)  "])
def test_something_else_is_found_by_part_of_its_name(sheet, typed):
    told = QueryDict(mutable=True)
    told.update({"other_fault": typed, "result": "fixed", "minutes": "5"})
    assert parse_outcome_form(sheet, told).found == ("fan-element-open",)


def test_every_suggestion_is_understood(sheet):
    ids = set()
    for name in outcome_form(sheet, QueryDict()).faults:
        told = QueryDict(mutable=True)
        told.update({"other_fault": name, "result": "fixed", "minutes": "5"})
        ids |= set(parse_outcome_form(sheet, told).found)
    assert ids == set(library().pack.faults)


@pytest.mark.parametrize(
    ("query", "words"),
    [
        ("found=fan-element-open&minutes=30", "Choose a result."),
        ("result=fixed&found=x", "Choose the working time, or enter the minutes as a number such as 40."),
        ("result=fixed&found=x&other_minutes=half+an+hour", "Choose the working time"),
        ("result=fixed&found=x&other_minutes=-5", "Choose the working time"),
        ("result=fixed&found=x&minutes=30&other_fault=goblin", "No fault has that name."),
        ("result=fixed&found=x&minutes=30&other_fault=element", "Several faults match:"),
    ],
)
def test_what_cannot_be_read_is_told(sheet, query, words):
    with pytest.raises(Refused) as refused:
        parse_outcome_form(sheet, QueryDict(query))
    assert words in str(refused.value)


def test_an_outcome_comes_back_as_it_was_written(sheet):
    outcome = Outcome(
        found=["door-seal-worn"], fitted=["seal", "clip"], fixed_first_visit=False, result="end-of-life", minutes=37
    )
    outcome.barrier = "worn-out"
    told = parse_outcome_form(sheet, initial_data(outcome))
    assert (list(told.found), list(told.fitted)) == (outcome.found, outcome.fitted)
    assert (told.result, told.barrier, told.minutes, told.fixed_first_visit) == ("end-of-life", "worn-out", 37, False)
    form = outcome_form(sheet, initial_data(outcome))
    assert [choice.value for choice in form.fitted if choice.chosen] == ["seal", "clip"]
