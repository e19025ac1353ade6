"""Erasing takes two steps, and then nothing says whose oven it was."""

import pytest
from django.urls import reverse

from tests.desk.clients import client_of
from tests.firm_builders import make_job_sheet, make_member


@pytest.mark.django_db
def test_it_is_asked_once_more():
    sheet = make_job_sheet()
    owner = client_of(make_member(sheet.firm, "owner"))
    address = reverse("desk-erase", args=[sheet.reference])
    assert owner.get(address).status_code == 200
    unsure = owner.post(address)
    assert (unsure.status_code, "Tick the box to confirm." in unsure.content.decode()) == (400, True)
    sheet.refresh_from_db()
    assert sheet.name == "Alex Grey"
    assert owner.post(address, {"sure": "yes"}).url == reverse("desk-inbox")
    sheet.refresh_from_db()
    assert (sheet.name, sheet.telephone, sheet.erased is None) == ("", "", False)
    assert sheet.audit_entries.filter(action="erased", member__role="owner").count() == 1
