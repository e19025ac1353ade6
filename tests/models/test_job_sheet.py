"""What the database itself refuses about job sheets and what hangs on them."""

import pytest
from django.db import IntegrityError, transaction
from django.db.models import F, ProtectedError
from django.utils import timezone

from tests.firm_builders import make_job_sheet, make_member
from triage.models import JobSheet, Note, RatingPlatePhoto

pytestmark = pytest.mark.django_db


@pytest.mark.parametrize(
    ("constraint", "changes"),
    [
        ("sheet_status_is_known", {"status": "lost"}),
        ("sheet_is_not_kept_for_ever", {"erase_after": F("created")}),
        ("sheet_erased_names_nobody", {"erased": F("created")}),
        ("sheet_can_be_answered", {"telephone": "", "email": ""}),
    ],
)
def test_the_database_refuses(constraint, changes):
    sheet = make_job_sheet()
    with pytest.raises(IntegrityError, match=constraint), transaction.atomic():
        JobSheet.objects.filter(pk=sheet.pk).update(**changes)


def test_a_key_serves_once_in_a_firm_and_again_in_another():
    sheet = make_job_sheet(idempotency_key="same-key-here")
    other = make_job_sheet(idempotency_key="same-key-here")
    with pytest.raises(IntegrityError), transaction.atomic():
        JobSheet.objects.filter(pk=other.pk).update(firm=sheet.firm)


def test_a_firm_with_job_sheets_cannot_vanish():
    with pytest.raises(ProtectedError):
        make_job_sheet().firm.delete()


def test_an_empty_note_is_refused():
    with pytest.raises(IntegrityError, match="note_says_something"), transaction.atomic():
        Note.objects.create(sheet=make_job_sheet(), text="", created=timezone.now())


def test_each_has_a_name_to_be_listed_by():
    sheet = make_job_sheet()
    note = Note(sheet=sheet, author=make_member(sheet.firm), text="Bring a long ladder")
    photo = RatingPlatePhoto(sheet=sheet, width=3, height=2)
    names = (str(sheet), str(note), str(photo))
    assert names == (sheet.reference, f"{sheet.reference}: Bring a long ladder", f"{sheet.reference}, 3 x 2")
