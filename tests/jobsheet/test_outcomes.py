"""What the repairer found, written down once and mended later."""

import pytest

from tests.firm_builders import make_job_sheet, make_member
from triage.jobsheet.errors import Refused
from triage.jobsheet.outcomes import OutcomeData, record_outcome
from triage.knowledge.library import library
from triage.models import Outcome

pytestmark = pytest.mark.django_db

FOUND = ("fan-element-open", "lamp-failed")


def record(sheet, **changes):
    data = {"found": FOUND[:1], "fixed_first_visit": True, "minutes": 40, "fitted": ("ring element",)}
    return record_outcome(sheet=sheet, data=OutcomeData(**(data | changes)), member=make_member(sheet.firm))


def test_it_is_kept_with_the_pack_it_speaks_of_and_the_sheet_is_done():
    outcome = record(make_job_sheet(), fitted=("ring element", " ring  element ", ""))
    assert (outcome.found, outcome.fitted, outcome.minutes) == (["fan-element-open"], ["ring element"], 40)
    assert outcome.pack_version == library().pack.version
    assert outcome.sheet.status == "done"
    assert outcome.sheet.audit_entries.filter(action="recorded the outcome of").count() == 1


def test_it_can_be_mended_and_stays_one():
    sheet = make_job_sheet()
    record(sheet)
    record(sheet, fixed_first_visit=False, result="end-of-life", barrier="no-parts")
    outcome = Outcome.objects.get()
    assert (outcome.result, outcome.barrier) == ("end-of-life", "no-parts")


@pytest.mark.parametrize(
    ("changes", "field", "sentence"),
    [
        ({"found": ("gremlins",)}, "found", "There is no fault gremlins. Choose from the list."),
        ({"found": ()}, "found", "Choose what was found: at least one, at most 6."),
        ({"fitted": ("x" * 121,)}, "fitted", "Name at most 20 parts, each in at most 120 characters."),
        ({"minutes": 0}, "minutes", "Give the minutes of work, from 1 to 1440."),
        ({"result": "gone"}, "result", "Choose how the oven was left from the list."),
        (
            {"result": "repairable"},
            "result",
            "An oven that was fixed on the first visit was fixed. Correct one of the two.",
        ),
        ({"barrier": "no-parts"}, "barrier", "Give a reason only where the oven was given up."),
    ],
)
def test_what_contradicts_itself_is_refused(changes, field, sentence):
    with pytest.raises(Refused) as refused:
        record(make_job_sheet(), **changes)
    assert [(p.field, p.message) for p in refused.value.problems] == [(field, sentence)]
    assert not Outcome.objects.exists()
