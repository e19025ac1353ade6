"""A person gets all that is kept about them, and nothing of the firm's secrets or of its people's names."""

import base64
import json

import pytest

from tests.firm_builders import make_booking, make_firm, make_job_sheet, make_member
from tests.jobsheet.pictures import jpeg
from triage.jobsheet.actions import add_note, erase
from triage.jobsheet.outcomes import OutcomeData, record_outcome
from triage.jobsheet.personal_data import export_personal_data
from triage.models import JobSheet
from triage.models.audit_entry import Actor

pytestmark = pytest.mark.django_db

# Columns of a sheet that say nothing about its person, each with the reason.
NOT_ABOUT_THEM = {
    "id": "a row's number",
    "idempotency_key": "made up for one request",
    "request_hash": "a print of what is told here",
    "token_hash": "of the link they have",
    "pack_version": "told inside the check",
    "summary": "told as the check",
    "band": "told inside the check",
    "leading_fault": "told inside the check",
    "taken_by": "a member of staff; told as taken by telephone",
}


@pytest.fixture
def sheet():
    firm = make_firm()
    sheet = make_job_sheet(firm, booking=make_booking(photo=jpeg(80, 60)))
    member = make_member(firm, username="kim.oakley")
    add_note(sheet=sheet, text="Rang twice.", member=member)
    record_outcome(sheet=sheet, data=OutcomeData(("fan-element-open",), True, 40), member=member)
    return sheet


def test_every_column_and_every_row_about_them_is_told(sheet):
    result = json.dumps(export_personal_data(sheet), ensure_ascii=False)
    for field in JobSheet._meta.concrete_fields:
        value = getattr(sheet, field.attname)
        if field.name not in NOT_ABOUT_THEM and isinstance(value, str) and value:
            assert value in result, field.name
    related = {relation.name for relation in JobSheet._meta.related_objects}
    assert related == {"photo", "notes", "outcome", "deliveries", "audit_entries"}
    kept = export_personal_data(sheet)
    assert kept["notes_of_the_firm"][0]["text"] == "Rang twice."
    assert kept["outcome"]["found"] == ["fan-element-open"]
    assert [row["channel"] for row in kept["sent_to_the_firm"]] == ["webhook", "email"]
    assert [row["did"] for row in kept["who_looked"]] == [
        "handed over",
        "wrote a note on",
        "recorded the outcome of",
    ]
    assert base64.b64decode(kept["photo"]["jpeg_in_base64"]).startswith(b"\xff\xd8")
    assert dict(kept["answers"])["complaint"] == "no-heat"


def test_it_says_nothing_of_the_firms_secrets_and_names_no_staff(sheet):
    result = json.dumps(export_personal_data(sheet))
    secrets = (sheet.firm.webhook_secret, sheet.firm.webhook_url, sheet.token_hash, sheet.idempotency_key, "kim.oakley")
    assert [secret for secret in secrets if secret in result] == []


def test_of_an_erased_sheet_it_tells_what_is_left(sheet):
    erase(sheet=sheet, actor=Actor.SENDER)
    kept = export_personal_data(sheet)
    assert kept["erased"]
    assert (kept["photo"], kept["notes_of_the_firm"]) == (None, [])
    result = json.dumps(kept)
    assert not any(text in result for text in ("Alex", "7946", "Mill Lane", "Rang twice"))
