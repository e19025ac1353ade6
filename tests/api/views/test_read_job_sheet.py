"""`GET /api/v1/firms/<firm>/job-sheets/<reference>`: read back with a key, each time with an audit line."""

import pytest
from jsonschema import Draft202012Validator

from tests.api.asking import address, bearer, firm_with_key, problem_in
from tests.firm_builders import make_job_sheet
from triage.jobsheet.actions import erase
from triage.jobsheet.formats.json import schema
from triage.models import ApiKey, AuditEntry
from triage.models.audit_entry import Actor

pytestmark = pytest.mark.django_db


def test_the_sheet_is_as_its_schema_says_and_the_reading_is_noted(client):
    firm, secret = firm_with_key()
    sheet = make_job_sheet(firm)
    response = client.get(address(firm, sheet.reference), headers=bearer(secret))
    assert response.status_code == 200
    Draft202012Validator(schema()).validate(response.json())
    assert response.json()["contact"]["name"] == "Alex Grey"
    assert response.headers["Cache-Control"] == "no-store, private"
    line = AuditEntry.objects.latest("pk")
    assert (line.actor, line.action, line.key) == (Actor.SYSTEM, "opened", ApiKey.objects.get())


def test_it_may_be_typed_as_people_say_it(client):
    firm, secret = firm_with_key()
    sheet = make_job_sheet(firm)
    response = client.get(address(firm, sheet.reference.lower().replace("-", " ")), headers=bearer(secret))
    assert response.json()["reference"] == sheet.reference


def test_an_erased_sheet_names_nobody(client):
    firm, secret = firm_with_key()
    sheet = make_job_sheet(firm)
    erase(sheet=sheet, actor=Actor.SENDER)
    payload = client.get(address(firm, sheet.reference), headers=bearer(secret)).json()
    assert payload["contact"] == {"name": "", "telephone": "", "email": ""}


@pytest.mark.parametrize("reference", ["KD7MX-4QPTR", "nothing", "%00", "🐢", "a" * 500])
def test_what_is_not_there_is_not_there(client, reference):
    firm, secret = firm_with_key()
    make_job_sheet(firm_with_key()[0])
    response = client.get(address(firm, reference), headers=bearer(secret))
    assert response.status_code == 404
    assert problem_in(response)["errors"] == []
