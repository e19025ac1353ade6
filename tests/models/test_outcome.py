"""What the database itself refuses about outcomes."""

import pytest
from django.db import IntegrityError, transaction
from django.utils import timezone

from tests.firm_builders import make_job_sheet
from triage.models import Outcome

pytestmark = pytest.mark.django_db

FIXED = {
    "found": ["fan-element-open"],
    "fixed_first_visit": True,
    "result": "fixed",
    "minutes": 40,
    "pack_version": "1",
}


@pytest.mark.parametrize(
    ("constraint", "changes"),
    [
        ("outcome_result_is_known", {"result": "gone", "fixed_first_visit": False}),
        ("outcome_barrier_is_known", {"barrier": "rain", "result": "end-of-life", "fixed_first_visit": False}),
        ("outcome_barrier_ends_it", {"barrier": "no-parts"}),
        ("outcome_first_visit_fixed_it", {"result": "repairable"}),
        ("outcome_took_a_day_at_most", {"minutes": 0}),
        ("outcome_took_a_day_at_most", {"minutes": 1441}),
    ],
)
def test_the_database_refuses(constraint, changes):
    sheet = make_job_sheet()
    with pytest.raises(IntegrityError, match=constraint), transaction.atomic():
        Outcome.objects.create(sheet=sheet, recorded=timezone.now(), **(FIXED | changes))


def test_it_has_a_name_to_be_listed_by():
    sheet = make_job_sheet()
    outcome = Outcome.objects.create(sheet=sheet, recorded=timezone.now(), **FIXED)
    assert str(outcome) == f"{sheet.reference}: fixed"
