"""Who hands over is told the reference and a link of their own, and nothing that only a repairer should read."""

import json

import pytest

from tests.api.presenters.steps import validator
from tests.firm_builders import ORIGIN, make_job_sheet
from triage.api.views.job_sheets import receipt_for

pytestmark = pytest.mark.django_db


def test_what_is_told_is_as_described_and_the_link_opens(client):
    sheet = make_job_sheet()
    receipt = receipt_for(sheet, ORIGIN)
    validator("receipt").validate(receipt)
    assert receipt["href"] == f"{ORIGIN}/api/v1/firms/{sheet.firm.slug}/job-sheets/{sheet.reference}"
    assert client.get(receipt["sender_link"].removeprefix(ORIGIN)).status_code == 200
    assert sheet.summary["causes"][0]["technician_notes"] not in json.dumps(receipt)


def test_a_link_whose_key_is_forgotten_is_empty(settings):
    sheet = make_job_sheet()
    settings.SECRET_KEY = "another key of the site"
    settings.SECRET_KEY_FALLBACKS = []
    assert receipt_for(sheet, ORIGIN)["sender_link"] == ""
