"""Status: one press, one line, and nothing for a status that does not exist."""

import pytest
from django.urls import reverse

from tests.desk.clients import client_of
from tests.firm_builders import make_job_sheet, make_member

pytestmark = pytest.mark.django_db


@pytest.mark.parametrize(
    ("wanted", "kept", "said"),
    [("booked", "booked", "Status: Booked."), ("lost", "new", "There is no such status."), ("", "new", "There is no")],
)
def test_a_status_is_kept_or_refused(wanted, kept, said):
    sheet = make_job_sheet()
    client = client_of(make_member(sheet.firm, "agent"))
    answer = client.post(reverse("desk-status", args=[sheet.reference]), {"status": wanted})
    assert answer.url == reverse("desk-sheet", args=[sheet.reference])
    assert said in client.get(answer.url).content.decode()
    sheet.refresh_from_db()
    assert sheet.status == kept
    assert sheet.audit_entries.filter(action="changed the status of").count() == (kept == "booked")
