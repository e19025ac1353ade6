"""The sender's link opens their sheet, and is none once the key that made it is forgotten."""

import pytest

from tests.firm_builders import ORIGIN, make_job_sheet
from triage.jobsheet.sender_link import sender_link, sheet_path
from triage.models import JobSheet

pytestmark = pytest.mark.django_db


def test_it_opens_the_sheet(client):
    sheet = make_job_sheet()
    link = sender_link(sheet, ORIGIN)
    assert link.startswith(f"{ORIGIN}/sheet/{sheet.reference}/?token=")
    assert client.get(link.removeprefix(ORIGIN)).status_code == 200


def test_without_the_key_of_then_there_is_none():
    sheet = make_job_sheet()
    sheet.token_hash = "0" * 64
    assert sender_link(sheet, ORIGIN) == ""


def test_any_token_is_written_so_that_it_comes_back():
    assert sheet_path(JobSheet(reference="AB"), "a&b") == "/sheet/AB/?token=a%26b"
